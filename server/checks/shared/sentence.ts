/** "a, b or c" */
export function either(words: readonly string[]): string {
  return joined(words, "or");
}

/** "a, b and c" */
export function both(words: readonly string[]): string {
  return joined(words, "and");
}

function joined(words: readonly string[], last: string): string {
  return words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} ${last} ${words[words.length - 1]}`;
}
