/** Zero-based line and UTF-16 unit in it, as the language server protocol counts. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface Range {
  readonly start: Position;
  readonly end: Position;
}

/** Turns offsets into lines and back. Lines end with LF, CR LF or CR, as the protocol has it. */
export class LineIndex {
  readonly #starts: readonly number[];
  readonly #length: number;

  constructor(text: string) {
    const starts = [0];
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      if (code === 10) starts.push(i + 1);
      else if (code === 13) {
        if (text.charCodeAt(i + 1) === 10) i++;
        starts.push(i + 1);
      }
    }
    this.#starts = starts;
    this.#length = text.length;
  }

  get lineCount(): number {
    return this.#starts.length;
  }

  position(offset: number): Position {
    const wanted = Math.max(0, Math.min(offset, this.#length));
    let low = 0;
    let high = this.#starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.#starts[middle] ?? 0) <= wanted) low = middle;
      else high = middle - 1;
    }
    return { line: low, character: wanted - (this.#starts[low] ?? 0) };
  }

  offset(position: Position): number {
    if (position.line >= this.#starts.length) return this.#length;
    const start = this.#starts[Math.max(0, position.line)] ?? 0;
    const next = this.#starts[position.line + 1] ?? this.#length;
    return Math.max(start, Math.min(start + position.character, next, this.#length));
  }

  /** Where the line starts, in UTF-16 units. */
  lineStart(line: number): number {
    return this.#starts[line] ?? this.#length;
  }
}
