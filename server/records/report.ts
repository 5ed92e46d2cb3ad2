import type { Assembly } from "../model/assembly.ts";
import { type Declaration, declarationKey } from "../model/declaration.ts";
import type { Finding, Outcome } from "../model/finding.ts";
import { textFinding } from "../model/read-fields.ts";
import type { Workshop } from "../model/workshop.ts";
import { aboutFindings } from "./about.ts";
import { asFitted } from "./as-fitted.ts";
import type { Bike } from "./bike.ts";
import { type BuiltTo, builtTo, builtToFindings } from "./built-to.ts";
import { rowFindings } from "./findings.ts";
import { judgeRecord, type RecordRow } from "./judge.ts";
import { recordsKey } from "./keys.ts";
import { type RecordText, readRecord } from "./read-record.ts";
import { specDigest } from "./spec-digest.ts";

/** Everything there is to say of one record. */
export interface RecordReport {
  readonly declaration: Declaration;
  readonly text: RecordText;
  /** The bike it is compared with; absent where no build of that name is declared. */
  readonly bike?: Bike;
  readonly builtTo?: BuiltTo;
  /** One row for every comparison of what was measured. */
  readonly rows: readonly RecordRow[];
  /** Rows by outcome. */
  readonly counts: Readonly<Record<Outcome, number>>;
  readonly findings: readonly Finding[];
  /** Names looked up, found or not. */
  readonly lookups: readonly string[];
}

/** What a record asks of its surroundings. */
export interface RecordContext {
  readonly workshop: Workshop;
  /** `2026-11-25`; an input, never read from a clock here. */
  readonly today: string;
  /** The build laid together with what answers questions about it, and the names that were looked up for it. */
  build(declaration: Declaration): { readonly bike: Bike; readonly lookups: readonly string[] } | undefined;
  /** The bike that differs from a build's first-named parts in alternates that it names. */
  bike(assembly: Assembly): Bike;
}

/** Reads a record and compares it with its build. Nothing of the build is changed by it. */
export function reportRecord(declaration: Declaration, context: RecordContext): RecordReport {
  const { workshop, today } = context;
  const { of } = declaration;
  const lookups: string[] = [declaration.key, "workshop"];
  if (of !== undefined) lookups.push(declarationKey("build", of), recordsKey(of));
  const build = of === undefined ? undefined : workshop.build(of);
  const known = build && context.build(build);
  if (!known) {
    const text = readRecord(declaration, undefined);
    const about = aboutFindings(text, workshop, today, lookups);
    const findings = [...text.findings, ...unknownBuild(declaration, workshop), ...about];
    return { declaration, text, rows: [], counts: countsOf([]), findings, lookups };
  }
  const { assembly } = known.bike.reader;
  const text = readRecord(declaration, assembly);
  const fitted = asFitted(assembly, text);
  const bike = fitted === assembly ? known.bike : context.bike(fitted);
  const spec = builtTo(text, specDigest(assembly));
  const rows = judgeRecord(text, bike.reader, spec.state !== "moved-on");
  const about = aboutFindings(text, workshop, today, lookups);
  lookups.push(...known.lookups, ...known.bike.reader.lookups, ...bike.reader.lookups);
  return {
    declaration,
    text,
    bike,
    builtTo: spec,
    rows,
    counts: countsOf(rows),
    findings: [...text.findings, ...about, ...builtToFindings(text, spec, rows), ...rowFindings(rows, spec.written)],
    lookups: [...new Set(lookups)],
  };
}

function countsOf(rows: readonly RecordRow[]): Readonly<Record<Outcome, number>> {
  const counts: Record<Outcome, number> = { holds: 0, fails: 0, unknown: 0, waived: 0, notApplicable: 0 };
  for (const { outcome } of rows) counts[outcome]++;
  return counts;
}

function unknownBuild(declaration: Declaration, workshop: Workshop): Finding[] {
  const { of } = declaration.tree.header;
  // A record that names no build at all, or none that can be told for want of a serial, is a problem of its text already.
  if (!of || declaration.of === undefined || !workshop.complete) return [];
  const place = { declaration, span: of.span };
  return [
    textFinding(
      declaration,
      of.span,
      "model/unknown-build",
      `No build is declared with the name ${of.text}, so nothing that was measured can be compared.`,
      { repairs: [{ kind: "near-name", place, name: of.text, keyword: "build", kinds: [] }] },
    ),
  ];
}
