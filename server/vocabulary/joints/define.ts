import type { FamilyName } from "../families/index.ts";
import type { FactField, SettingField, SlotPath } from "../index.ts";

/** One end of a joint: the fact by which a part mates, and the torque that it asks for or bears. */
export interface JointEnd {
  readonly slot: SlotPath;
  /** The fact: a code of the joint's family, a size, or a word. */
  readonly field: string;
  /** The fact that stands in where `field` is not stated. */
  readonly otherwise?: string;
  /** A setting of the slot that, when stated, says which of several codes it is. */
  readonly setting?: string;
  /** Which half of a composite code mates here. */
  readonly half?: string;
  /** The end states a size, which is compared with this dimension of the other end's standard. */
  readonly sizeOf?: string;
  /** Torque window that this part states for the joint. */
  readonly torque?: string;
}

/** One side of an adapter: the fact that mates with that end of the joint, and its torque window there. */
export interface AdapterEnd {
  readonly field: string;
  readonly torque?: string;
}

/** Where two parts of a bicycle meet. */
export interface Joint {
  readonly name: string;
  /** For a sentence: "the hanger on the frame". */
  readonly title: string;
  /**
   * - `fastened`: screwed, clamped or pressed together; torque windows have to overlap.
   * - `running`: one moves on the other, as a chain on its teeth.
   * - `signal`: a cable, fluid or radio message passes between them.
   * - `covers`: parts that are made for one another to hide hoses and wires.
   */
  readonly nature: "fastened" | "running" | "signal" | "covers";
  /** The part that is fitted first, then what it is fitted to. */
  readonly ends: readonly [JointEnd, JointEnd];
  /** Family of the codes; absent where both ends state sizes or words, which have to be equal. */
  readonly family?: FamilyName;
  /** With lists of codes: `any` one in common is enough (the usual case), or `every` code of the first end is needed. */
  readonly match?: "every";
  /** Slot of the part that may stand between them. */
  readonly adapter?: SlotPath;
  /** Facts of that part: the mates on either side of it, in the order of the ends, and the torques of both. */
  readonly adapterEnds?: readonly [AdapterEnd, AdapterEnd];
  /** Further parts in the same clamp, whose torque windows count too. */
  readonly alsoTorque?: readonly { readonly slot: SlotPath; readonly field: string }[];
  /** Slot whose settings say how the joint is made. */
  readonly settingsOwner?: SlotPath;
  /**
   * A setting of the first end that names the slot whose part takes the second end's place, with the list of codes
   * that such a part offers. What is offered can be used once.
   */
  readonly shared?: { readonly setting: string; readonly offers: string };
  /**
   * Another joint by which the same part may be held. Where an end of this one is absent (`none`, or a fact that the
   * part's kind does not have), that one is asked in its place; where both have an absent end, nothing holds the part.
   */
  readonly orElse?: string;
  /** What goes on threads and faces where no maker says otherwise: common practice, no source. */
  readonly compound?: string;
  /** Said wherever the joint is made, when a mistake with it can hurt someone. */
  readonly caution?: string;
}

/** An end, with its names checked against the vocabulary by the compiler. */
export function end<P extends SlotPath>(
  slot: P,
  field: FactField<P>,
  options: {
    readonly otherwise?: FactField<P>;
    readonly setting?: SettingField<P>;
    readonly half?: string;
    readonly sizeOf?: string;
    readonly torque?: FactField<P>;
  } = {},
): JointEnd {
  return { slot, field, ...options };
}
