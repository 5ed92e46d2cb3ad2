/** How much is read of what no one writes by hand. Each limit is reported where it is met; nothing is passed over silently. */

/** UTF-16 units of one declaration that are read; a longer one is reported. */
export const declarationLimit = 1_000_000;
/** Tokens of one statement that are read; a longer one is reported. */
export const statementLimit = 5_000;
/** Tokens of one expression, and parentheses inside each other: beyond these it is reported and not read. */
export const expressionLimit = 500;
export const parenthesisLimit = 32;
/** Problems listed for one declaration. */
export const problemLimit = 100;

/** Blocks inside blocks, the declaration's own one counted. */
export const nestingLimit = 16;
