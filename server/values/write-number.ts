import { fromBase, toBase, type Unit } from "../../grammar/units.ts";

/** A number and its unit as one writes them: a blank between, except before the degree sign of an angle. */
export function withUnit(number: string, unit: string): string {
  if (unit === "") return number;
  return unit === "°" ? `${number}°` : `${number} ${unit}`;
}

/** Digits of a number without an exponent, rounded to `digits` decimals and without zeros at the end. */
export function decimalText(value: number, digits: number): string {
  if (!Number.isFinite(value)) return value > 0 ? "∞" : value < 0 ? "-∞" : "?";
  const places = Math.min(Math.max(Math.trunc(digits), 0), 20);
  // Past 1e21 `toFixed` gives an exponent; whole numbers of that size have no decimals to lose.
  const fixed = Math.abs(value) < 1e21 ? value.toFixed(places) : BigInt(Math.trunc(value)).toString();
  const trimmed = fixed.includes(".") ? fixed.replace(/\.?0+$/, "") : fixed;
  return trimmed === "-0" ? "0" : trimmed;
}

/** All digits of a number that mean something: conversion noise in the thirteenth place is not shown. */
export function roundedText(value: number): string {
  if (value === 0 || !Number.isFinite(value)) return decimalText(value, 0);
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  return decimalText(value, 11 - magnitude);
}

/** The shortest digits in `unit` that are read back as exactly this number in the base unit; undefined when none are. */
export function exactText(value: number, unit: Unit): string | undefined {
  const inUnit = fromBase(value, unit);
  for (const text of [roundedText(inUnit), plainDigits(inUnit)]) {
    if (toBase(Number(text), unit) === value) return text;
  }
  return undefined;
}

/** JavaScript's shortest digits for a number, without an exponent. */
export function plainDigits(value: number): string {
  const text = String(value);
  const match = /^(-?)(\d)(?:\.(\d+))?e([+-]\d+)$/.exec(text);
  if (match === null) return text;
  const [, sign = "", first = "", rest = "", exponent = "0"] = match;
  const shift = Number(exponent);
  const digits = first + rest;
  if (shift < 0) return `${sign}0.${"0".repeat(-shift - 1)}${digits}`;
  return sign + digits.padEnd(shift + 1, "0");
}
