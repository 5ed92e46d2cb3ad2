import { greaterThan } from "../../values/compare.ts";

/**
 * Means that a Japanese standard asks for, in newtons.
 * Source: JIS D 9301:2019 as described by the Japan Bicycle Promotion Institute.
 */
const leastTight = 400;
const leastOther = 300;
/** Wheels of a nominal 22 inches and less may be slacker; the largest bead seat that is called so, in millimetres. */
const smallWheel = 501;

/**
 * The least mean tension of a side of a wheel, in newtons.
 * @param beadSeat diameter in millimetres; `undefined` where it is not known, which asks for less.
 * @param isTighter whether it is the side of the flatter spokes.
 */
export function leastMeanTension(beadSeat: number | undefined, isTighter: boolean): number {
  const isLarge = beadSeat !== undefined && greaterThan(beadSeat, smallWheel);
  return isTighter && isLarge ? leastTight : leastOther;
}
