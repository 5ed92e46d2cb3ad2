/** The encodings in which suppliers' files come, by their names in the WHATWG Encoding Standard. */
export const encodings = ["utf-8", "utf-16le", "utf-16be", "windows-1252"] as const;
export type Encoding = (typeof encodings)[number];

export interface DecodedText {
  readonly text: string;
  readonly encoding: Encoding;
  /** Set when some bytes are none of that encoding: U+FFFD stands in their place. */
  readonly isDamaged?: true;
}

/**
 * The text of bytes that came from elsewhere, without a byte order mark. What has none and is no UTF-8 is taken for
 * Windows-1252, of which Latin-1 is the printable part: any bytes are sound in it, so this is a guess that a person
 * should see. A few stray bytes among letters that are UTF-8 do not make the rest another encoding.
 * @param wanted an encoding that somebody stated; then nothing is guessed.
 */
export function decode(bytes: Uint8Array, wanted?: Encoding): DecodedText {
  const encoding = wanted ?? guess(bytes);
  // The decoder drops the mark itself.
  const text = new TextDecoder(encoding).decode(bytes);
  return { text, encoding, ...(isSound(bytes, encoding) ? {} : { isDamaged: true }) };
}

function guess(bytes: Uint8Array): Encoding {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return "utf-16le";
  if (first === 0xfe && second === 0xff) return "utf-16be";
  const zeros = zerosAt(bytes);
  // Latin letters in UTF-16 have a zero in every second byte; no other encoding of text has zeros at all.
  if (zeros.odd > zeros.even * 4 && zeros.odd > bytes.length / 8) return "utf-16le";
  if (zeros.even > zeros.odd * 4 && zeros.even > bytes.length / 8) return "utf-16be";
  return isSound(bytes, "utf-8") || isMostlyUtf8(bytes) ? "utf-8" : "windows-1252";
}

function zerosAt(bytes: Uint8Array): { readonly even: number; readonly odd: number } {
  let even = 0;
  let odd = 0;
  for (let index = 0; index < bytes.length; index++) {
    if (bytes[index] !== 0) continue;
    if (index % 2 === 0) even++;
    else odd++;
  }
  return { even, odd };
}

/** Letters beyond ASCII that are UTF-8 hardly come about by chance: texts of Windows-1252 have next to none. */
function isMostlyUtf8(bytes: Uint8Array): boolean {
  const text = new TextDecoder("utf-8").decode(bytes);
  const strays = text.match(/\ufffd/g)?.length ?? 0;
  const letters = (text.match(/[^\0-\x7f]/gu)?.length ?? 0) - strays;
  return letters > 0 && letters >= strays;
}

function isSound(bytes: Uint8Array, encoding: Encoding): boolean {
  try {
    new TextDecoder(encoding, { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}
