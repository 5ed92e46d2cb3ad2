import { showNumber, showResult } from "../../calculations/show.ts";
import { calculationOfQuantity } from "../../calculations/table.ts";
import { cannotTell, fails, holds, notApplicable } from "../../checks/define.ts";
import { either } from "../../checks/shared/sentence.ts";
import type { Installed } from "../../model/assembly.ts";
import type { Known, Need } from "../../model/need.ts";
import { isSingle } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import type { AnyValue, FieldType, Interval } from "../../values/types.ts";
import { buildFields, measurementAt, slotByPath, type Tolerance, usualTolerance } from "../../vocabulary/index.ts";
import { defineComparison, judged, type MeasuredInstance } from "../define.ts";
import { parentOf } from "../paths.ts";
import { sameValue } from "../same-value.ts";
import { allowed } from "../tolerance.ts";

/** A value that the build states or comes to under the path that was measured. */
export interface SpecifiedInstance extends MeasuredInstance {
  readonly type: FieldType;
  /** What answers it; absent where the build has nothing to compare with. */
  readonly need?: Need<unknown, true>;
  readonly tolerance: Tolerance;
}

/** Any path at which a record can hold a value, as something to compare. */
export function specifiedInstance(path: string, type: FieldType): SpecifiedInstance {
  const need = needAt(path);
  return { name: path, path, type, tolerance: toleranceOf(path, type), ...(need ? { need } : {}) };
}

function needAt(path: string): Need<unknown, true> | undefined {
  if (slotByPath(path)) return { kind: "slot", slot: path, optional: true };
  if (Object.hasOwn(buildFields, path)) return { kind: "field", field: path, optional: true };
  if (calculationOfQuantity(path)) return { kind: "worked", quantity: path, optional: true };
  const slot = slotByPath(parentOf(path));
  if (!slot) return undefined;
  const name = path.slice(parentOf(path).length + 1);
  return Object.hasOwn(slot.settings, name)
    ? { kind: "setting", slot: slot.path, setting: name, optional: true }
    : { kind: "fact", slot: slot.path, field: name, optional: true };
}

function toleranceOf(path: string, type: FieldType): Tolerance {
  const own = Object.values(measurementAt(path)?.tolerances ?? {})[0];
  if (own) return own;
  if (type.type === "quantity" || type.type === "quantities") return usualTolerance(type.dimension);
  return usualTolerance(type.type === "count" ? "count" : undefined);
}

export default defineComparison({
  code: "record/as-specified",
  title: "What was measured is what the build states or comes to",
  severity: "warning",
  restsOn: "spec",
  // One for each path that nothing else judges.
  instances: [] as readonly SpecifiedInstance[],
  needs: ({ need }): Readonly<Record<string, Need<unknown, true>>> => (need ? { stated: need } : {}),
  test(measured: Known<AnyValue>, { stated }, { path, type, need, tolerance }) {
    if (!stated || !need) return judged(notApplicable("it is kept as it is, with nothing to compare it with"));
    if (stated.state === "unknown") return judged(cannotTell(stated));
    if (stated.state === "none") {
      if (need.kind === "worked") return judged(notApplicable(`${path} means nothing in this build`));
      const { place } = stated;
      const other: Known = { state: "known", value: undefined, written: "none", path, subject: "the build", place };
      return judged(
        fails(`${path} was measured as ${measured.written}, and the build has none.`, measured, [other]),
        "none",
      );
    }
    if (need.kind === "slot") return part(measured, stated as Known<Installed>, path);
    const [is, wanted] = shownPair(type, path, measured, stated);
    const allows = typeof measured.value === "number" ? margin(type, tolerance, stated.value) : "";
    const expected = `${wanted}${allows === "" ? "" : ` ± ${allows}`}`;
    const verb = need.kind === "worked" ? "comes to" : "states";
    const who = need.kind === "worked" ? "it" : stated.subject;
    const said = `${path} was measured as ${is}, and ${who} ${verb} ${wanted}`;
    if (sameValue(type, measured.value, stated.value, tolerance)) return judged(holds(`${said}.`), expected);
    return judged(
      fails(
        `${said}${allows === "" ? "" : `; ${allows} either way is borne`}. Set it as it was specified, or write down in the build what the bicycle is to have.`,
        measured,
        [stated],
      ),
      expected,
    );
  },
  explanation:
    "A record can hold any setting of a build, any fact of a part and any number that is worked out, under its own path. It " +
    "is compared with what the build says there: words, codes and counts have to be the same, numbers within what a " +
    "careful hand repeats, and where a part states a range, inside it. A difference is no reason to change either: somebody " +
    "decides whether the bicycle or its recipe is to follow the other.",
  source: "the build's own values; tolerances by what is measured: common practice, no source",
  examples: {
    holds: `
part stem example.stub "Stub" { length: 50 mm }

build example "Spacers" {
  cockpit.stem: example.stub { spacers-below: 15 mm }
}

record "A-1" of example {
  cockpit.stem.spacers-below: 15.2 mm
}
`,
    fails: `
part stem example.stub "Stub" { length: 50 mm }

build example "Spacers" {
  cockpit.stem: example.stub { spacers-below: 15 mm }
}

record "A-1" of example {
  cockpit.stem.spacers-below: 20 mm
}
`,
  },
});

/** The part that was fitted: the one that the build names, or one of several. */
function part(measured: Known<AnyValue>, stated: Known<Installed>, path: string) {
  const { name, alternates } = stated.value;
  const names = [name, ...alternates.map((alternate) => alternate.name)];
  const expected = either(names);
  if (names.includes(String(measured.value))) {
    return judged(holds(`${String(measured.value)} was fitted as ${path}, as the build names it.`), expected);
  }
  return judged(
    fails(
      `${String(measured.value)} was fitted as ${path}, and the build names ${expected}: what else was measured is compared with that part.`,
      measured,
      [stated],
    ),
    expected,
  );
}

function isStatedRange(value: unknown): boolean {
  return typeof value === "object" && value !== null && "least" in value && !isSingle(value as Interval);
}

function shownPair(type: FieldType, path: string, measured: Known<AnyValue>, stated: Known): readonly [string, string] {
  const single = isStatedRange(stated.value) ? undefined : singleOf(stated.value);
  if (type.type === "quantity" && typeof measured.value === "number" && single !== undefined) {
    return showPair(measured.value, single, type.dimension, type.unit === undefined ? {} : { unit: type.unit });
  }
  const quantity = calculationOfQuantity(path);
  const result = quantity?.calculation.results[quantity.result];
  return [measured.written, result && single !== undefined ? showResult(result, single) : stated.written];
}

function singleOf(value: unknown): number | undefined {
  if (typeof value === "number") return value;
  return typeof value === "object" && value !== null && "least" in value ? (value as Interval).least : undefined;
}

/** How much either way is borne, in words; empty for what has to be the same. */
function margin(type: FieldType, tolerance: Tolerance, stated: unknown): string {
  const single = isStatedRange(stated) ? undefined : singleOf(stated);
  const much = single === undefined ? 0 : allowed(tolerance, single);
  if (much === 0) return "";
  return type.type === "quantity" ? showQuantity(much, type.dimension) : showNumber(much, 3);
}
