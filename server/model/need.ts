import type { AnyValue, CodesType, CodeType, ValueOf } from "../values/types.ts";
import type {
  BuildFieldName,
  BuildFieldType,
  FactField,
  FactType,
  SettingField,
  SettingType,
  SlotPath,
  WorkshopFieldName,
  WorkshopFieldType,
} from "../vocabulary/index.ts";
import type { Installed } from "./assembly.ts";
import type { Place } from "./declaration.ts";
import type { ResolvedCode } from "./standard.ts";

/**
 * What a check or a calculation needs to know of a build, declared as data.
 *
 * Because the needs are data, one table answers: which facts are missing (all of them at once), which checks read a
 * slot (for ranking candidates and alternates), and what a reference page says.
 */

/** Something known, with where it was stated and what to call it. */
export interface Known<Value = unknown> {
  readonly state: "known";
  readonly value: Value;
  /** As written by a person, or as shown for a worked-out number. */
  readonly written: string;
  /** `drivetrain.cassette.cogs`. */
  readonly path: string;
  /** What states it, for a sentence: "Corrie wide 10-52". */
  readonly subject: string;
  readonly place: Place;
}

/** Something not known: which fact, in words a person can act on. */
export interface Missing {
  readonly path: string;
  /** "the cogs of Corrie wide 10-52" or "which cassette is fitted". */
  readonly what: string;
  /** Where it would be stated. */
  readonly place: Place;
  /** Something is written, but of no use, and a finding of its own says so where it stands. */
  readonly spoilt?: true;
}

/** What is to be said of facts that are not known: that nobody stated them, unless what is stated is of no use. */
export function missingWords(missing: readonly Missing[]): "not stated" | "not known" {
  return missing.some(({ spoilt }) => spoilt) ? "not known" : "not stated";
}

export interface Unknown {
  readonly state: "unknown";
  readonly missing: readonly Missing[];
}

/** Stated to be absent, or absent by what omission means. */
export interface Absent {
  readonly state: "none";
  readonly path: string;
  readonly place: Place;
}

export type Maybe<Value = unknown> = Known<Value> | Unknown | Absent;

/** How a code looks once resolved. */
type Resolved<Type> = Type extends CodeType
  ? ResolvedCode
  : Type extends CodesType
    ? readonly ResolvedCode[]
    : ValueOf<Type>;

interface NeedBase<Value, Optional extends boolean> {
  readonly optional: Optional;
  /** Carries the value's type; never present at run time. */
  readonly value?: Value;
}

export type Need<Value = unknown, Optional extends boolean = boolean> = NeedBase<Value, Optional> &
  (
    | { readonly kind: "fact"; readonly slot: string; readonly field: string }
    | { readonly kind: "setting"; readonly slot: string; readonly setting: string }
    | { readonly kind: "slot"; readonly slot: string }
    | { readonly kind: "field"; readonly field: string }
    /** A field of the workshop that the build belongs to. */
    | { readonly kind: "workshop-field"; readonly field: string }
    /** A fact of the part in the slot that a setting names. */
    | { readonly kind: "fact-of-named"; readonly slot: string; readonly setting: string; readonly field: string }
    /** A number worked out for the build. */
    | { readonly kind: "worked"; readonly quantity: string }
    /** One fact of every slot that has a part. */
    | { readonly kind: "every-fact"; readonly field: string }
    /** One setting of every slot that states it. */
    | { readonly kind: "every-setting"; readonly setting: string }
    /** Every slot that something was said about. */
    | { readonly kind: "every-slot" }
  );

/** A fact of the part in a slot. */
export function fact<P extends SlotPath, F extends FactField<P>>(
  slot: P,
  field: F,
): Need<Resolved<FactType<P, F>>, false> {
  return { kind: "fact", slot, field, optional: false };
}

/** How a slot's part is installed. */
export function setting<P extends SlotPath, F extends SettingField<P>>(
  slot: P,
  name: F,
): Need<Resolved<SettingType<P, F>>, false> {
  return { kind: "setting", slot, setting: name, optional: false };
}

/** What stands in a slot. */
export function slot(path: SlotPath): Need<Installed, false> {
  return { kind: "slot", slot: path, optional: false };
}

/** A field of the build itself. */
export function buildField<F extends BuildFieldName>(field: F): Need<ValueOf<BuildFieldType<F>>, false> {
  return { kind: "field", field, optional: false };
}

/** A field of the workshop that the build belongs to; none where there is no workshop or it does not say. */
export function workshopField<F extends WorkshopFieldName>(field: F): Need<ValueOf<WorkshopFieldType<F>>, false> {
  return { kind: "workshop-field", field, optional: false };
}

/** A fact of the part in the slot that a setting names: `factOfNamed("drivetrain.rear-controller", "clamp", ...)`. */
export function factOfNamed<P extends SlotPath, Q extends SlotPath, F extends FactField<Q>>(
  path: P,
  settingName: SettingField<P>,
  ofSlot: Q,
  field: F,
): Need<Resolved<FactType<Q, F>>, false> {
  void ofSlot;
  return { kind: "fact-of-named", slot: path, setting: settingName, field, optional: false };
}

/** A number that a calculation works out for the build, such as `drivetrain.capacity-needed`. */
export function worked<Value = number>(quantity: string): Need<Value, false> {
  return { kind: "worked", quantity, optional: false };
}

export interface OfSlot<Value = AnyValue> {
  readonly slot: string;
  readonly installed: Installed;
  readonly fact: Maybe<Value>;
}

export function everyFact<Value = AnyValue>(field: string): Need<readonly OfSlot<Value>[], false> {
  return { kind: "every-fact", field, optional: false };
}

export function everySetting<Value = AnyValue>(name: string): Need<readonly OfSlot<Value>[], false> {
  return { kind: "every-setting", setting: name, optional: false };
}

export function everySlot(): Need<ReadonlyMap<string, Installed>, false> {
  return { kind: "every-slot", optional: false };
}

/**
 * The same need, but its absence does not decide the outcome by itself: the check is handed known, unknown or none
 * and says what follows.
 */
export function optional<Value>(need: Need<Value, boolean>): Need<Value, true> {
  return { ...need, optional: true } as Need<Value, true>;
}

export type Needs = Readonly<Record<string, Need>>;

/** Equal needs as one object each, by what they ask. */
const shared = new Map<string, Need>();

/** What a need asks, in one line: the same for needs that ask the same. */
function questionOf(need: Need): string {
  const question = need.optional ? `${need.kind}?` : need.kind;
  switch (need.kind) {
    case "fact":
      return `${question} ${need.slot} ${need.field}`;
    case "setting":
      return `${question} ${need.slot} ${need.setting}`;
    case "slot":
      return `${question} ${need.slot}`;
    case "field":
    case "workshop-field":
    case "every-fact":
      return `${question} ${need.field}`;
    case "fact-of-named":
      return `${question} ${need.slot} ${need.setting} ${need.field}`;
    case "worked":
      return `${question} ${need.quantity}`;
    case "every-setting":
      return `${question} ${need.setting}`;
    case "every-slot":
      return question;
  }
}

/**
 * The same needs with equal ones made one object, so that what answers them can keep each answer by identity. Called
 * once for each set of needs, never per build.
 */
export function shareNeeds<N extends Needs>(needs: N): N {
  const same: Record<string, Need> = {};
  for (const name in needs) {
    const need = needs[name] as Need;
    const question = questionOf(need);
    const known = shared.get(question);
    if (!known) shared.set(question, need);
    same[name] = known ?? need;
  }
  return same as N;
}

/** What a check is handed for its needs. */
export type Facts<N extends Needs> = {
  readonly [K in keyof N]: N[K] extends Need<infer Value, infer Optional>
    ? Optional extends true
      ? Maybe<Value>
      : Known<Value>
    : never;
};

/** The slot path a need reads, or `undefined` when it reads all of the build. */
export function slotRead(need: Need): string | undefined {
  return need.kind === "fact" || need.kind === "setting" || need.kind === "slot" ? need.slot : undefined;
}
