import type { Engine } from "../../engine/engine.ts";
import type { Place } from "../../model/declaration.ts";
import type { ClientOptions } from "./options.ts";
import { fileRangeOf } from "./place.ts";

/** Text for Markdown, so that nothing a person wrote is taken for a mark, a link or a tag. */
export function plain(text: string): string {
  return text
    .replace(/\s*[\r\n]+\s*/g, " ")
    .replace(/[\\`*_[\]<>|~&]/g, "\\$&")
    .replace(
      /^(\s*)([-+#]|\d+(?=[.)](?:\s|$)))/,
      (_, blanks: string, mark: string) => `${blanks}${escapedStart(mark)}`,
    );
}

/** What would begin a list or a heading at the start of a line. */
function escapedStart(mark: string): string {
  return /^\d/.test(mark) ? `${mark}\u200b` : `\\${mark}`;
}

/** Words of the language, in the type of code. */
export function code(text: string): string {
  const oneLine = text.replace(/\s*[\r\n]+\s*/g, " ").trim();
  if (oneLine === "") return "";
  const longest = Math.max(0, ...[...oneLine.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = "`".repeat(longest + 1);
  return longest === 0 ? `${fence}${oneLine}${fence}` : `${fence} ${oneLine} ${fence}`;
}

/** Ferrule text, coloured where the client can. */
export function fenced(text: string): string {
  const longest = Math.max(2, ...[...text.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = "`".repeat(longest + 1);
  return `${fence}ferrule\n${text}\n${fence}`;
}

/** A link to where something was stated: `drivetrain.ferrule:12`. */
export function placeLink(engine: Engine, place: Place, client: ClientOptions): string {
  const { uri, range } = fileRangeOf(engine, place);
  const line = range.start.line + 1;
  const file = decoded(uri.slice(uri.lastIndexOf("/") + 1));
  // Unsaved texts have no file that a link could open by its line.
  return `[${plain(file)}:${line}](${client.shownUri(uri).replaceAll("(", "%28").replaceAll(")", "%29")}#L${line})`;
}

function decoded(name: string): string {
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}

/** Paragraphs with blank lines between them; empty ones are left out. */
export function paragraphs(...parts: readonly (string | undefined)[]): string {
  return parts.filter((part) => part !== undefined && part.trim() !== "").join("\n\n");
}

/** A list, one line each. */
export function bullets(items: readonly string[]): string {
  return items.map((item) => `- ${item}`).join("\n");
}

/** A caution, set apart from the rest. */
export function caution(text: string): string {
  return `> **Caution:** ${plain(text)}`;
}

/** Markdown as it reads without its marks, for clients that show plain text. */
export function withoutMarks(markdown: string): string {
  return markdown
    .replace(/^`{3,}.*$\n?/gm, "")
    .replace(/\[((?:[^\]\\]|\\.)*)\]\([^)\s]*\)/g, "$1")
    .replace(/(?<!\\)\*\*/g, "")
    .replace(/(?<!\\)`/g, "")
    .replace(/^> ?/gm, "")
    .replace(/\\([\\`*_[\]<>|~&#+-])/g, "$1")
    .replaceAll("\u200b", "")
    .replace(/\n{3,}/g, "\n\n")
    .trim();
}
