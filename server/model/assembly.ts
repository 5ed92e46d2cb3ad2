import type { Slot } from "../vocabulary/define.ts";
import type { Declaration, Place } from "./declaration.ts";
import type { Finding } from "./finding.ts";
import type { Part } from "./part.ts";
import type { Statement } from "./stated.ts";
import type { Workshop } from "./workshop.ts";

/** What a build has in one slot. */
export interface Installed {
  readonly slot: Slot;
  /**
   * - `part`: a declared part.
   * - `none`: stated to be absent.
   * - `unknown-part`: a name that no declaration has (yet), or that of a part which does not go there.
   */
  readonly state: "part" | "none" | "unknown-part";
  /** The part's name as written; the word `none` for none. */
  readonly name: string;
  readonly part?: Part;
  /** What the name is declared as, "a handlebar", where no such thing goes into the slot. */
  readonly declaredAs?: string;
  /** Where the name stands. */
  readonly place: Place;
  readonly settings: ReadonlyMap<string, Statement>;
  /** Further names after `or`, in order. */
  readonly alternates: readonly { readonly name: string; readonly place: Place; readonly part?: Part }[];
}

export interface Waiver {
  readonly code: string;
  /** The path it is limited to; absent for the whole build. */
  readonly at?: string;
  readonly reason: string;
  /** The last day on which it counts, `2027-03-31`; absent for no end. */
  readonly until?: string;
  readonly place: Place;
}

/** A build with everything it derives from laid together: one concrete bike, the first alternate of each slot. */
export interface Assembly {
  readonly declaration: Declaration;
  /** From the furthest base to the build itself. */
  readonly layers: readonly Declaration[];
  /** Fields of the build itself, such as `category` and `rider.mass`. */
  readonly fields: ReadonlyMap<string, Statement>;
  /** Slots that something was said about. */
  readonly slots: ReadonlyMap<string, Installed>;
  readonly waivers: readonly Waiver[];
  /** The keys looked up, found or not. */
  readonly lookups: readonly string[];
  /** Problems of the build's own text. */
  readonly findings: readonly Finding[];
}

/** What the assembly asks of its surroundings. */
export interface AssemblyContext {
  readonly workshop: Workshop;
  /** Reads a part, with its base; kept by the caller. */
  part(declaration: Declaration): Part;
}
