import type { Duplicates, Likeness } from "../library/duplicates.ts";
import type { NeverFittingParts } from "../library/never-fit.ts";
import type { UnusedPart } from "../library/unused.ts";
import { type Declaration, headerPlace } from "../model/declaration.ts";
import { locate, type ReportedWorkshop } from "./collect.ts";
import type { Paint } from "./paint.ts";
import { paragraph, printable } from "./printable.ts";
import { counted } from "./words.ts";

/** How lists of parts are written. */
export interface LibraryTextOptions {
  readonly width: number;
  readonly paint: Paint;
  readonly workshop: ReportedWorkshop;
}

/** Parts that no build names. */
export function unusedText(unused: readonly UnusedPart[], options: LibraryTextOptions): string {
  if (unused.length === 0) return "Every part is named by a build.\n";
  return `${[
    ...unused.flatMap(({ declaration, baseOf, namedBy }) => [
      heading(declaration, options),
      ...(baseOf.length > 0 ? paragraph(`derived from it: ${baseOf.join(", ")}`, options.width, "    ") : []),
      ...(namedBy.length > 0 ? paragraph(`named by: ${namedBy.join(", ")}`, options.width, "    ") : []),
    ]),
    `${counted(unused.length, "part")} that no build names.`,
  ].join("\n")}\n`;
}

const likenesses: Readonly<Record<Likeness, (shared: string) => string>> = {
  name: (shared) => `One name, ${shared}, declared more than once; the first one counts`,
  "like-name": () => "Names that differ in capitals, dots and dashes alone",
  title: (shared) => `One title for several parts: ${shared}`,
  "order-number": (shared) => `One order number: ${shared}`,
  facts: () => "All that is stated of them is the same, but for price, supplier and remarks",
};

/** Parts that may be one and the same. */
export function duplicatesText(groups: readonly Duplicates[], options: LibraryTextOptions): string {
  if (groups.length === 0) return "No two parts look like one and the same.\n";
  return `${[
    ...groups.flatMap(({ likeness, shared, parts }) => [
      ...paragraph(likenesses[likeness](shared), options.width, ""),
      ...parts.map((declaration) => heading(declaration, options)),
      "",
    ]),
    `${counted(groups.length, "group")} of parts that may be one and the same.`,
  ].join("\n")}\n`;
}

/** Parts that go with nothing, and by what they were judged. */
export function neverFitText({ parts, builds, asked }: NeverFittingParts, options: LibraryTextOptions): string {
  const { width } = options;
  const lines = parts.flatMap(({ declaration, lonely, fitsNone }) => [
    heading(declaration, options),
    ...lonely.flatMap(({ fact, written, joints, others }) =>
      paragraph(
        `no counterpart for ${fact} ${written} (${joints.join("; ")}): of ${counted(others, "part")} in the libraries that ${others === 1 ? "states" : "state"} an interface there, none goes with it, nor any adapter`,
        width,
        "      ",
        "    ",
      ),
    ),
    ...(fitsNone
      ? paragraph(
          `fits none of ${counted(fitsNone.builds, "build")}; nearest as ${fitsNone.slot} of ${fitsNone.build}: ${fitsNone.reason}`,
          width,
          "      ",
          "    ",
        )
      : []),
  ]);
  const judged =
    asked < builds
      ? `Only ${asked} of ${counted(builds, "build")} were asked before the time was up; --seconds gives more.`
      : `${counted(builds, "build")} asked.`;
  return `${[
    ...lines,
    ...(lines.length > 0 ? [""] : []),
    ...paragraph(
      `${counted(parts.length, "part")} without a counterpart in the libraries or a build that it fits. ${judged}`,
      width,
      "",
    ),
  ].join("\n")}\n`;
}

function heading(declaration: Declaration, { paint, workshop }: LibraryTextOptions): string {
  const { path, range } = locate(workshop, headerPlace(declaration));
  const title = declaration.title === undefined ? "" : `  ${printable(declaration.title)}`;
  const where = printable(`${path}:${range.start.line + 1}`);
  return `  ${paint.strong(printable(declaration.name))}${title}  ${paint.quiet(where)}`;
}

/** Where a part is declared, for JSON. */
export function placeJson(
  declaration: Declaration,
  workshop: ReportedWorkshop,
): {
  readonly name: string;
  readonly kind?: string;
  readonly title?: string;
  readonly file: string;
  readonly line: number;
} {
  const { name, kind, title } = declaration;
  const { path, range } = locate(workshop, headerPlace(declaration));
  return {
    name,
    ...(kind === undefined ? {} : { kind }),
    ...(title === undefined ? {} : { title }),
    file: path,
    line: range.start.line,
  };
}
