import type { InlayHint, Range } from "vscode-languageserver-types";
import { showResult } from "../calculations/show.ts";
import { type BuildReport, workedQuantities } from "../engine/build-report.ts";
import type { Engine } from "../engine/engine.ts";
import type { Declaration } from "../model/declaration.ts";
import { assemblyNames } from "../vocabulary/index.ts";
import { bullets, code, paragraphs, plain } from "./shared/markdown.ts";
import type { ClientOptions } from "./shared/options.ts";
import { touch } from "./shared/place.ts";

/** Characters of numbers that stand behind one line. */
const longestHint = 72;

/** The worked-out numbers of each assembly, behind the line on which it opens. Needs the resolved model. */
export function inlayHints(engine: Engine, uri: string, range: Range, client: ClientOptions): InlayHint[] {
  const hints: InlayHint[] = [];
  for (const declaration of engine.file(uri)?.declarations ?? []) {
    const isInRange = touch(engine.range({ declaration, span: declaration.tree.span }), range);
    const report = isInRange ? engine.report(declaration) : undefined;
    if (report) hints.push(...hintsOf(engine, declaration, report, range, client));
  }
  return hints;
}

function hintsOf(
  engine: Engine,
  declaration: Declaration,
  report: BuildReport,
  range: Range,
  client: ClientOptions,
): InlayHint[] {
  const numbers = new Map<string, { path: string; name: string; shown: string; description: string }[]>();
  for (const worked of workedQuantities(report)) {
    // A list has its own place, in hover and on the sheet.
    if (worked.state !== "known" || Array.isArray(worked.value)) continue;
    const { path, calculation, result } = worked.row;
    const row = calculation.results[result];
    const assembly = path.slice(0, path.indexOf("."));
    const known = numbers.get(assembly) ?? [];
    known.push({ path, name: result, shown: showResult(row, worked.value), description: row?.description ?? "" });
    numbers.set(assembly, known);
  }
  return (declaration.tree.block?.entries ?? []).flatMap((entry) => {
    if (entry.form !== "group" || entry.block.oneLine || !assemblyNames.includes(entry.path.text)) return [];
    const known = numbers.get(entry.path.text) ?? [];
    const start = entry.block.span.start + 1;
    const { start: position } = engine.range({ declaration, span: { start, end: start } });
    if (known.length === 0 || !touch({ start: position, end: position }, range)) return [];
    return [
      {
        position,
        label: labelOf(known),
        paddingLeft: true,
        tooltip: client.helpText(
          paragraphs(
            `Worked out for ${plain(entry.path.text)}:`,
            bullets(
              known.map(({ path, shown, description }) => `${code(path)} = ${plain(shown)}: ${plain(description)}`),
            ),
          ),
        ),
      },
    ];
  });
}

function labelOf(numbers: readonly { readonly name: string; readonly shown: string }[]): string {
  let label = "";
  let count = 0;
  for (const { name, shown } of numbers) {
    const next = `${label === "" ? "" : ", "}${name} ${shown}`;
    if (count > 0 && label.length + next.length > longestHint) break;
    label += next;
    count++;
  }
  return count < numbers.length ? `${label}, …` : label;
}
