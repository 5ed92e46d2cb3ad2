import type { AnyValue } from "../values/types.ts";
import type { Place } from "./declaration.ts";

/** A value that somebody stated, with what was written and where. */
export interface Stated<Value = AnyValue> {
  readonly state: "stated";
  readonly value: Value;
  /** As written, in canonical spelling, for display. */
  readonly written: string;
  /** The value's place. */
  readonly place: Place;
}

/** The word `none`: somebody stated that there is none. */
export interface StatedNone {
  readonly state: "none";
  readonly place: Place;
}

/** Something stands there that cannot be read; it has a finding of its own. */
export interface Unreadable {
  readonly state: "unreadable";
  readonly place: Place;
}

export type Statement<Value = AnyValue> = Stated<Value> | StatedNone | Unreadable;

/** Field name to what was stated. A name that is not in the map was not stated. */
export type Statements = ReadonlyMap<string, Statement>;
