import { paragraph } from "../reports/printable.ts";
import { commonOptions } from "./arguments.ts";
import type { CommandRow } from "./command.ts";
import { commands } from "./commands.ts";

/** Help for all commands. */
export function generalHelp(width: number): string {
  const longest = Math.max(...commands.map(({ name }) => name.length));
  return [
    ...paragraph("Ferrule proves that the parts of a bicycle build fit and works out its set-up numbers.", width, ""),
    "",
    "Usage: ferrule COMMAND [ARGUMENT...]",
    "",
    ...commands.flatMap(({ name, summary }) =>
      paragraph(summary, width, " ".repeat(longest + 4), `  ${name.padEnd(longest)}  `),
    ),
    "",
    "  ferrule COMMAND --help   help for one command",
    "  ferrule --version        the version of this program",
    "",
  ].join("\n");
}

/** Help for one command. */
export function commandHelp(command: CommandRow, width: number): string {
  const options = [...command.options, ...commonOptions].map((row) => ({
    written: `--${row.name}${row.value === undefined ? "" : ` ${row.value}`}`,
    said:
      row.words && row.value !== row.words.join("|") ? `${row.description}: ${row.words.join(", ")}` : row.description,
  }));
  const longest = Math.min(24, Math.max(...options.map(({ written }) => written.length)));
  return [
    ...command.usage.map((line, index) =>
      `${index === 0 ? "Usage:" : "      "} ferrule ${command.name} ${line}`.trimEnd(),
    ),
    "",
    ...paragraph(`${command.summary.slice(0, 1).toUpperCase()}${command.summary.slice(1)}.`, width, ""),
    "",
    ...options.flatMap(({ written, said }) =>
      written.length > longest
        ? [`  ${written}`, ...paragraph(said, width, " ".repeat(longest + 4))]
        : paragraph(said, width, " ".repeat(longest + 4), `  ${written.padEnd(longest)}  `),
    ),
    ...command.details.flatMap((text) => ["", ...paragraph(text, width, "")]),
    "",
  ].join("\n");
}
