import { decimalText } from "../../values/write-number.ts";

/** A length as a person would write it into a build: to half a millimetre, rounded as the limit asks. */
export function millimetres(value: number, round: "up" | "down" | "near" = "near"): string {
  const halves = { up: Math.ceil, down: Math.floor, near: Math.round }[round];
  // What is a half millimetre but for the noise of adding up is not pushed over to the next one.
  const steps = round === "near" ? value * 2 : Number((value * 2).toFixed(6));
  return `${decimalText(halves(steps) / 2, 1)} mm`;
}
