import type { TextChange } from "../../grammar/tree.ts";
import type { Assembly } from "./assembly.ts";
import type { Place } from "./declaration.ts";

export type Severity = "error" | "warning" | "information";

/** What came of a question put to a build. Silence is never an answer. */
export type Outcome = "holds" | "fails" | "unknown" | "waived" | "notApplicable";

/** A place with what it has to do with a finding. */
export interface Related {
  readonly message: string;
  readonly place: Place;
}

/**
 * What would mend a finding. Repairs that name text are applied as they stand; the others are worked out against the
 * libraries when somebody asks for them, so that a result never grows stale with the library.
 */
export type Repair =
  /** Text to change at a place. */
  | {
      readonly kind: "change-text";
      readonly title: string;
      readonly place: Place;
      readonly changes: readonly TextChange[];
    }
  /** Another part in a slot, such that the check holds and nothing else begins to fail; perhaps together with a setting. */
  | { readonly kind: "swap-part"; readonly slot: string; readonly set?: WrittenSetting }
  /** A part for a slot that has none, such that the check holds. */
  | { readonly kind: "insert-part"; readonly slot: string }
  /** Another value for a setting of a slot, written as a person would write it. */
  | ({ readonly kind: "set-setting" } & WrittenSetting)
  /** Another value for a fact where the part states it. */
  | { readonly kind: "set-fact"; readonly slot: string; readonly fact: string; readonly value: string }
  /** A field of the build itself, such as `category`. */
  | { readonly kind: "set-field"; readonly field: string; readonly value: string }
  /** Nothing in this slot. */
  | { readonly kind: "leave-empty"; readonly slot: string }
  /** A fact nobody stated yet: opens a line for it where the part is declared. */
  | { readonly kind: "state-fact"; readonly slot: string; readonly fact: string }
  /** A setting nobody stated yet: the number that was worked out for it, or a line to be filled in. */
  | { readonly kind: "state-setting"; readonly slot: string; readonly setting: string }
  /** Another name that is near the one written. */
  | {
      readonly kind: "near-name";
      readonly place: Place;
      readonly name: string;
      readonly keyword: "part" | "build" | "standard";
      readonly kinds: readonly string[];
    };

/** A setting of a slot with its value, written as a person would write it. */
export interface WrittenSetting {
  readonly slot: string;
  readonly setting: string;
  readonly value: string;
}

/** Something a person should know about a declaration: a problem of its text, its values, its names, or its fit. */
export interface Finding {
  /** Stable, such as `drivetrain/largest-cog`; nothing matches on the message. */
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  /** The path in the build or part that it is about, such as `drivetrain.cassette`; empty for none. */
  readonly path: string;
  readonly related: readonly Related[];
  readonly repairs: readonly Repair[];
  /** `fails` for what is wrong, `unknown` for what cannot be checked, `waived` for what somebody took on themselves. */
  readonly outcome: "fails" | "unknown" | "waived";
  /** The bike it is about, where that is not the one of a build's first-named parts. */
  readonly bike?: Assembly;
  /** Said beside the message where a mistake can hurt someone. */
  readonly caution?: string;
  /** True when it stays a warning however well it is waived, since it endangers somebody. */
  readonly safety?: true;
  /** Why it was waived and until when, for a waived one. */
  readonly waiver?: { readonly reason: string; readonly until?: string };
}
