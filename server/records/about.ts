import { type Declaration, headerPlace } from "../model/declaration.ts";
import type { Finding } from "../model/finding.ts";
import { textFinding } from "../model/read-fields.ts";
import type { Workshop } from "../model/workshop.ts";
import { dayOfRecord, type RecordText } from "./read-record.ts";

/**
 * What is to be said of when and by whom something was measured.
 * @param lookups receives the keys of the records that a finding points to.
 */
export function aboutFindings(
  text: RecordText,
  workshop: Workshop,
  today: string,
  lookups: string[],
): readonly Finding[] {
  return [...unnamed(text), ...incomplete(text), ...future(text, today), ...outOfOrder(text, workshop, lookups)];
}

function unnamed({ declaration }: RecordText): Finding[] {
  const { name } = declaration.tree.header;
  if (!name || declaration.name.trim() !== "") return [];
  const message =
    'This record has no serial number, so nobody can tell which bicycle was measured: write it in the quotes, as in record "FL-0031".';
  return [textFinding(declaration, name.span, "record/no-serial", message)];
}

function incomplete({ declaration, about }: RecordText): Finding[] {
  const missing = [...(about.has("date") ? [] : ["on which day"]), ...(about.has("by") ? [] : ["by whom"])];
  if (missing.length === 0) return [];
  return [
    {
      ...textFinding(
        declaration,
        declaration.headerSpan,
        "record/incomplete",
        `This record does not say ${missing.join(" and ")} it was measured, so nobody can tell later what it is worth: write ${[...(about.has("date") ? [] : ["date: 2026-11-20"]), ...(about.has("by") ? [] : ['by: "K. P."'])].join(" and ")}, with your own.`,
        { severity: "information" },
      ),
      outcome: "unknown",
    },
  ];
}

function future({ declaration, about }: RecordText, today: string): Finding[] {
  const date = about.get("date");
  if (date?.state !== "stated" || String(date.value) <= today) return [];
  return [
    textFinding(
      declaration,
      date.place.span,
      "record/future-date",
      `This record is dated ${date.written}, and today is ${today}: nothing has been measured on a day to come.`,
      { path: "date", severity: "warning" },
    ),
  ];
}

/** Serials that count up, `FL-0031` and `FL-0032`: what stands round the last number, and the number. */
function serialNumber(serial: string): { readonly series: string; readonly number: number } | undefined {
  const found = /^(.*?)(\d{1,15})(\D*)$/.exec(serial);
  return found ? { series: `${found[1]}#${found[3]}`, number: Number(found[2]) } : undefined;
}

/** Of two bicycles of a build, the one with the higher number was as a rule built no earlier. */
function outOfOrder({ declaration, about }: RecordText, workshop: Workshop, lookups: string[]): Finding[] {
  const own = serialNumber(declaration.name);
  const date = about.get("date");
  if (!own || date?.state !== "stated" || declaration.of === undefined) return [];
  const day = String(date.value);
  let before: { readonly declaration: Declaration; readonly number: number; readonly day: string } | undefined;
  for (const other of workshop.declared("record", declaration.of)) {
    const serial = serialNumber(other.name);
    const otherDay = serial && dayOfRecord(other);
    if (!serial || otherDay === undefined || serial.series !== own.series || serial.number >= own.number) continue;
    // Of a serial that stands twice, which is an error of its own, the first one counts.
    if (workshop.lookup(other.key) !== other) continue;
    if (!before || serial.number > before.number) before = { declaration: other, number: serial.number, day: otherDay };
  }
  if (!before || before.day <= day) return [];
  // The finding points into the other record, which moves with any letter typed there.
  lookups.push(before.declaration.key);
  return [
    textFinding(
      declaration,
      date.place.span,
      "record/date-order",
      `${declaration.name} is dated ${day}, before ${before.declaration.name} of the same build, which is dated ${before.day}. One of the two may be a slip.`,
      {
        path: "date",
        severity: "information",
        related: [{ message: `${before.declaration.name} is here`, place: headerPlace(before.declaration) }],
      },
    ),
  ];
}
