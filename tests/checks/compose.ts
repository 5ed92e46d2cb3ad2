/** What stands in a slot of a composed build. */
export interface Piece {
  readonly kind: string;
  /** Facts of the part, as in Ferrule: `cogs: 11-13 t; speeds: 2`. */
  readonly facts: string;
  /** Settings of the slot, likewise. */
  readonly settings: string;
}

export function part(kind: string, facts: string, settings = ""): Piece {
  return { kind, facts, settings };
}

/** Slot path to what stands there; `none` for a stated absence, and nothing for a slot that is left out. */
export type Pieces = Readonly<Record<string, Piece | "none" | undefined>>;

/**
 * A workshop with one part for each slot and a build named `example` that fits them all. Parts are named after their
 * slots, so that a finding can be told by its subject: the part of `drivetrain.cassette` is called "cassette".
 */
export function compose(pieces: Pieces, more = ""): string {
  const parts: string[] = [];
  const slots: string[] = [];
  for (const [slot, piece] of Object.entries(pieces)) {
    if (piece === undefined) continue;
    if (piece === "none") {
      slots.push(`  ${slot}: none`);
      continue;
    }
    const title = slot.slice(slot.lastIndexOf(".") + 1);
    const name = `test.${slot.replace(".", "-")}`;
    parts.push(`part ${piece.kind} ${name} "${title}" { ${piece.facts} }`);
    slots.push(`  ${slot}: ${name}${piece.settings === "" ? "" : ` { ${piece.settings} }`}`);
  }
  return `${more}\n${parts.join("\n")}\n\nbuild example "Example" {\n${slots.join("\n")}\n}\n`;
}
