const inch = 25.4;

/** A screw thread by its nominal diameter and pitch, both in millimetres; a bare `M10` leaves the pitch open. */
export interface ScrewThread {
  readonly diameter: number;
  readonly pitch: number | undefined;
}

const number = String.raw`\d+(?:\.\d+)?`;
/** `M10 x 1`, `10x1 mm`, `M10`; a second number of ten or more counts threads to the inch. */
const metric = new RegExp(`^m?(${number})(?:mm)?(?:[x×*](${number})(mm|tpi)?)?$`, "i");
/** `3/8 x 26 tpi`, `3/8"-24`, `5/16 in x 24`. */
const imperial = new RegExp(`^(${number})/(${number})(?:in|inch|")?(?:[x×*-](${number})(?:tpi)?)?$`, "i");

/** Reads a thread as the trade writes it; `undefined` when it is written in another way. */
export function screwThread(text: string): ScrewThread | undefined {
  const bare = text.replace(/\s+/g, "").replace(/,/g, ".");
  const fraction = imperial.exec(bare);
  if (fraction) {
    const [, over, under, count] = fraction.map(Number);
    if (!over || !under) return undefined;
    return { diameter: (inch * over) / under, pitch: count ? inch / count : undefined };
  }
  const found = metric.exec(bare);
  if (!found) return undefined;
  const [diameter, second] = [Number(found[1]), found[2] === undefined ? undefined : Number(found[2])];
  if (diameter <= 0 || second === 0) return undefined;
  const byCount = second !== undefined && (found[3]?.toLowerCase() === "tpi" || second >= fewestPerInch);
  return { diameter, pitch: byCount ? inch / second : second };
}

/** No pitch of a bicycle's axle is as coarse as this many millimetres. */
const fewestPerInch = 10;
