import type { Statement } from "./layout.ts";
import { report } from "./problems.ts";
import type { SyntaxProblem } from "./tree.ts";

interface WithBlock extends Statement {
  readonly block: NonNullable<Statement["block"]>;
}

/** `stem: a { spacers-below: 20 mm } or b`: the second statement, which goes on where the block of the first ended. */
export function isAlternateAfterBlock(
  text: string,
  before: Statement | undefined,
  statement: Statement,
): before is WithBlock {
  const [first] = statement.tokens;
  if (first?.text !== "or" || before?.block === undefined) return false;
  return !/\n/.test(text.slice(before.block.end, first.span.start));
}

/** Settings belong to the slot and not to one of its parts, so that they stand once, behind the last of them. */
export function reportSettingsBeforeOr(
  text: string,
  before: WithBlock,
  statement: Statement,
  problems: SyntaxProblem[],
): void {
  const { block } = before;
  const [first] = statement.tokens;
  const last = statement.tokens.at(-1);
  if (!first || !last) return;
  const own = statement.block;
  const gap = { start: before.tokens.at(-1)?.span.end ?? block.start, end: first.span.start };
  report(
    problems,
    "settings-before-or",
    first.span,
    own === undefined
      ? "What `or` joins has one block of settings, behind the last part and for all of them, as in `stem: corrie.stub or corrie.long { spacers-below: 15 mm }`."
      : "What `or` joins has one block of settings, behind the last part and for all of them. Parts that are set up differently are two builds: derive one from the other with `from`.",
    own === undefined
      ? {
          title: "Move the block behind the last part",
          changes: [
            { span: gap, text: " " },
            { span: { start: last.span.end, end: last.span.end }, text: ` ${text.slice(block.start, block.end)}` },
          ],
        }
      : undefined,
  );
}
