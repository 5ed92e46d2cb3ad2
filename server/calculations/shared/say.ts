import { showNumber } from "../show.ts";

/** A number with its unit in a line of working. */
export function say(value: number, unit = "", digits = 3): string {
  const shown = showNumber(value, digits);
  if (unit === "") return shown;
  return unit === "°" || unit === "%" ? `${shown}${unit === "%" ? " " : ""}${unit}` : `${shown} ${unit}`;
}

/** Tooth counts in a line of working: "50-34 t". */
export function sayTeeth(teeth: readonly number[]): string {
  return `${teeth.join("-")} t`;
}
