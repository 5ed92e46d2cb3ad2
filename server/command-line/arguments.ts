import { parseArgs } from "node:util";
import { nearest } from "../values/near.ts";
import type { CommandRow, Invocation, OptionRow } from "./command.ts";
import { UsageProblem } from "./problem.ts";

type Given = Pick<Invocation, "positionals" | "values" | "value" | "has">;

/** Options that every command has. */
export const commonOptions: readonly OptionRow[] = [{ name: "help", description: "show this help" }];

/**
 * Reads the words after a command's name.
 * @throws UsageProblem for an option that there is not, or a value that is missing or not one of those it takes.
 */
export function readArguments(command: CommandRow, words: readonly string[]): Given {
  const rows = new Map([...command.options, ...commonOptions].map((row) => [row.name, row]));
  const { tokens } = parseArgs({
    args: [...words],
    options: Object.fromEntries(
      [...rows].map(([name, row]) => [name, { type: row.value === undefined ? "boolean" : "string" } as const]),
    ),
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const positionals: string[] = [];
  const values = new Map<string, string[]>();
  for (const token of tokens) {
    if (token.kind === "positional") positionals.push(token.value);
    if (token.kind !== "option") continue;
    const name = token.name === "h" && token.rawName === "-h" ? "help" : token.name;
    const row = token.rawName.startsWith("--") || name === "help" ? rows.get(name) : undefined;
    if (!row) throw unknownOption(command, token.rawName, [...rows.keys()]);
    const read = readOption(command, row, token.value);
    values.set(row.name, row.several ? [...(values.get(row.name) ?? []), ...read] : read);
  }
  return {
    positionals,
    values: (option) => values.get(option) ?? [],
    value: (option) => values.get(option)?.at(-1),
    has: (option) => values.has(option),
  };
}

function unknownOption(command: CommandRow, written: string, names: readonly string[]): UsageProblem {
  const near = nearest(written.replace(/^-+/, ""), names);
  return new UsageProblem(
    `${command.name} has no option ${written}.${near === undefined ? "" : ` Did you mean --${near}?`}`,
    [`ferrule ${command.name} --help lists its options.`],
  );
}

function readOption(command: CommandRow, row: OptionRow, written: string | undefined): string[] {
  if (row.value === undefined) {
    if (written === undefined) return [""];
    throw new UsageProblem(`--${row.name} of ${command.name} takes no value; ${written} was given.`);
  }
  const expected = row.words === undefined ? row.value : `one of ${row.words.join(", ")}`;
  if (written === undefined || written === "") {
    throw new UsageProblem(`--${row.name} needs a value: ${expected}.`);
  }
  const parts = row.several ? written.split(",") : [written];
  for (const part of parts) {
    if (!row.words || row.words.includes(part)) continue;
    const near = nearest(part, row.words);
    throw new UsageProblem(
      `--${row.name} takes ${expected}; ${part === "" ? "nothing" : part} was given.${near === undefined ? "" : ` Did you mean ${near}?`}`,
    );
  }
  return parts;
}
