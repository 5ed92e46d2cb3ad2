/** Numbers that look random and are the same on every run and machine. */
export interface Random {
  /** A whole number from `least` to `greatest`. */
  number(least: number, greatest: number): number;
  pick<Item>(items: readonly Item[]): Item;
}

/** A generator of the family "mulberry", 32 bits of state. */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const number = (least: number, greatest: number): number => least + Math.floor(next() * (greatest - least + 1));
  return { number, pick: (items) => items[number(0, items.length - 1)] as never };
}
