import { format } from "../../grammar/format.ts";
import { dimensions } from "../../grammar/units.ts";
import type { Need } from "../model/need.ts";
import { comparisons } from "../records/table.ts";
import type { FieldType } from "../values/types.ts";
import { type Measurement, measurements, recordFields, recordGroups, type Tolerance } from "../vocabulary/index.ts";
import { needPath } from "./checks-page.ts";
import { describeType } from "./field-type.ts";
import { fieldHead, fieldRows } from "./kinds-page.ts";
import { code, fenced, page, table } from "./markdown.ts";

/** The number of a tolerance in the base unit of what is measured. */
function numberText(value: number, type: FieldType): string {
  const unit = type.type === "quantity" || type.type === "quantities" ? ` ${dimensions[type.dimension].base}` : "";
  return `${value}${unit}`;
}

function toleranceText({ of, by, share, most, least }: Tolerance, type: FieldType): string {
  const either = [
    ...(by === undefined ? [] : [numberText(by, type)]),
    ...(share === undefined ? [] : [`${Math.round(share * 1000) / 10} %`]),
  ].join(" or ");
  const limits = [
    ...(either === "" ? [] : [`${either} either way`]),
    ...(most === undefined ? [] : [`at most ${numberText(most, type)}`]),
    ...(least === undefined ? [] : [`more than ${numberText(least, type)}`]),
  ];
  return `${limits.join(", ")} ${of}`;
}

function row(path: string, measurement: Measurement): string[] {
  const { type, description, comparedWith, tolerances, source } = measurement;
  const limits = Object.values(tolerances);
  const sources = new Set([source, ...limits.map((tolerance) => tolerance.source)]);
  return [
    code(path),
    describeType(type),
    description,
    comparedWith,
    limits.map((tolerance) => toleranceText(tolerance, type)).join("; "),
    [...sources].join("; "),
  ];
}

/** Records: what they state, what can be measured and against what, and every comparison. */
export function recordsPage(): string {
  const rows = Object.entries(measurements);
  const head = ["path", "takes", "what it is", "compared with", "tolerance", "source"];
  const isTorque = ([path]: readonly [string, Measurement]): boolean => path.startsWith("torque.");
  const parts = [
    'A record holds what was measured on one bicycle as built: `record "SERIAL" of BUILD { ... }`. It is compared with what the build states and comes to, and never changes it. A serial stands on one record; a build can have many.',
    "Besides the rows below a record takes any setting of a slot (`drivetrain.chain.links: 116`), any fact of a part (`cockpit.stem.length: 50 mm`), any aim of the build and any number that is worked out, each under its own path, and the part that was fitted where the build names several. Numbers are then borne within what a careful hand repeats; where a part states a range, they lie inside it.",
    "`spec` is the digest of the specification that the bicycle was built to: of every value that the build and its parts state, whatever their layout, order and units. `ferrule explain FILE#BUILD`, the build's hover and completion show it. Once the build states something else, only the old digest is left of what the bicycle was built to, so that nothing can be compared with it: what rests on the specification then cannot be checked, a difference from today's is mentioned and never a failure, and what guards somebody's safety stays a warning. What rests on the measurements alone is judged as ever.",
    "## What a record states of itself",
    table(fieldHead, fieldRows(recordFields)),
    "## What is measured",
    table(
      head,
      rows.filter((one) => !isTorque(one)).map(([path, measurement]) => row(path, measurement)),
    ),
    "## Torques as applied",
    recordGroups.torque,
    table(
      head.slice(0, 3),
      rows.filter(isTorque).map(([path, measurement]) => row(path, measurement).slice(0, 3)),
    ),
    "## Comparisons",
    "Each is asked where a record holds what it judges. It holds, fails, cannot be made (the missing facts are named) or does not apply.",
  ];
  for (const comparison of comparisons) {
    const needs = new Set<string>();
    for (const instance of comparison.instances.slice(0, 2)) {
      for (const need of Object.values(comparison.needs(instance)) as Need[]) needs.add(code(needPath(need)));
    }
    const rests = comparison.restsOn === "spec" ? "rests on the specification" : "rests on the measurements alone";
    parts.push(
      `### ${comparison.code}`,
      `**${comparison.title}.** Severity: ${comparison.severity}; ${rests}${comparison.safety ? "; safety" : ""}.`,
      comparison.explanation,
    );
    if (comparison.caution) parts.push(`**Caution.** ${comparison.caution}`);
    if (needs.size > 0) parts.push(`Needs, for one: ${[...needs].slice(0, 8).join(", ")}.`);
    parts.push(`Source: ${comparison.source}`);
    for (const [word, example] of [
      ["Fails:", comparison.examples.fails],
      ["Holds:", comparison.examples.holds],
    ] as const) {
      if (example !== "") parts.push(word, fenced(format(example.trim()).text));
    }
  }
  return page("Records", parts);
}
