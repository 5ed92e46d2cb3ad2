/**
 * The 64-bit hash FNV-1a of a text's UTF-8 bytes, as sixteen hexadecimal digits. It tells texts apart that differ by
 * accident and guards against nothing else, which is all that a digest of a specification is for.
 * Source: Eastlake, Fowler, Noll, Vo: The FNV Non-Cryptographic Hash Algorithm (Internet-Draft), with its test vectors.
 */
export function fnv1a64(text: string): string {
  // The hash in four parts of sixteen bits, the lowest first: their products stay exact in a plain number.
  let [a, b, c, d] = [0x2325, 0x8422, 0x9ce4, 0xcbf2];
  for (const byte of new TextEncoder().encode(text)) {
    a ^= byte;
    // The prime is 2^40 + 0x1b3, and 2^40 moves the lowest parts up by forty bits.
    const low = a * 0x1b3;
    const next = b * 0x1b3 + Math.floor(low / 0x10000);
    const third = c * 0x1b3 + (a << 8) + Math.floor(next / 0x10000);
    const high = d * 0x1b3 + (b << 8) + Math.floor(third / 0x10000);
    [a, b, c, d] = [low & 0xffff, next & 0xffff, third % 0x10000, high % 0x10000];
  }
  return [d, c, b, a].map((part) => part.toString(16).padStart(4, "0")).join("");
}
