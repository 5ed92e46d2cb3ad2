import { dimensions } from "../../grammar/units.ts";
import type { Range } from "../engine/positions.ts";
import type { Outcome } from "../model/finding.ts";
import type { BuiltTo } from "../records/built-to.ts";
import type { RecordRow } from "../records/judge.ts";
import type { RecordEntry } from "../records/read-record.ts";
import type { AnyValue, FieldType } from "../values/types.ts";
import type { ReportedRecord } from "./collect.ts";
import { rowText } from "./record-row.ts";

/** A record as other programs read it. */
export interface JsonRecord<Finding> {
  readonly serial: string;
  /** The build that it is of; absent where it names none. */
  readonly build?: string;
  readonly range: Range;
  readonly date?: string;
  readonly by?: string;
  readonly occasion?: string;
  readonly note?: string;
  /** Which specification it was built to; absent where there is no such build. */
  readonly spec?: JsonSpec;
  /** Comparisons by outcome. */
  readonly counts: Readonly<Record<Outcome, number>>;
  readonly findings: readonly Finding[];
  readonly measurements: readonly JsonMeasurement[];
}

export interface JsonSpec {
  readonly state: BuiltTo["state"];
  readonly stated?: string;
  readonly today: string;
}

export interface JsonMeasurement {
  readonly path: string;
  readonly written: string;
  /** In the base unit of its dimension. */
  readonly value: AnyValue;
  /** Empty for anything without one. */
  readonly unit: string;
  readonly comparisons: readonly {
    readonly code: string;
    readonly outcome: RecordRow["outcome"];
    /** What it would come to by the recipe of today, where that has moved on. */
    readonly today?: RecordRow["outcome"];
    readonly expected?: string;
    readonly message: string;
  }[];
}

/** @param findings those of the record, as the report writes them. */
export function jsonRecord<Finding>(
  { declaration, at, report }: ReportedRecord,
  findings: readonly Finding[],
): JsonRecord<Finding> {
  const { text, builtTo, counts } = report;
  const about = Object.fromEntries(
    ["date", "by", "occasion", "note"].flatMap((name) => {
      const statement = text.about.get(name);
      return statement?.state === "stated" ? [[name, String(statement.value)]] : [];
    }),
  );
  return {
    serial: declaration.name,
    ...(declaration.of === undefined ? {} : { build: declaration.of }),
    range: at.range,
    ...about,
    ...(builtTo ? { spec: specJson(builtTo) } : {}),
    counts,
    findings,
    measurements: text.entries.flatMap((entry) => measurement(entry, report.rows)),
  };
}

export function specJson({ state, written, today }: BuiltTo): JsonSpec {
  return { state, ...(written === undefined ? {} : { stated: written }), today };
}

function measurement({ path, field, statement }: RecordEntry, rows: readonly RecordRow[]): JsonMeasurement[] {
  if (statement.state !== "stated") return [];
  return [
    {
      path,
      written: statement.written,
      value: statement.value,
      unit: unitOf(field.type),
      comparisons: rows
        .filter(({ measured }) => measured.path === path)
        .map((row) => ({
          code: row.comparison.code,
          outcome: row.outcome,
          ...(row.outcome === row.verdict.outcome ? {} : { today: row.verdict.outcome }),
          ...(row.expected === undefined ? {} : { expected: row.expected }),
          message: rowText(row),
        })),
    },
  ];
}

function unitOf(type: FieldType): string {
  if (type.type === "quantity" || type.type === "quantities") return dimensions[type.dimension].base;
  if (type.type === "count") return type.unit ?? "";
  return type.type === "teeth" ? "t" : "";
}
