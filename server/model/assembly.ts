import type { Slot } from "../vocabulary/define.ts";
import { LayerReader, type SlotDraft } from "./build-layer.ts";
import { type Declaration, declarationKey, type Place } from "./declaration.ts";
import type { Finding } from "./finding.ts";
import { install } from "./install.ts";
import { longestDerivation, type Part } from "./part.ts";
import { problemFinding, textFinding } from "./read-fields.ts";
import type { Statement } from "./stated.ts";
import type { Workshop } from "./workshop.ts";

/** What a build has in one slot. */
export interface Installed {
  readonly slot: Slot;
  /**
   * - `part`: a declared part.
   * - `none`: stated to be absent.
   * - `unknown-part`: a name that no declaration has (yet).
   */
  readonly state: "part" | "none" | "unknown-part";
  /** The part's name as written; the word `none` for none. */
  readonly name: string;
  readonly part?: Part;
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

/** Lays a build and its bases together. Never fails: what cannot be read is a finding and counts as unstated. */
export function assemble(declaration: Declaration, context: AssemblyContext): Assembly {
  const { workshop } = context;
  const lookups: string[] = [];
  const findings: Finding[] = declaration.tree.problems.map((problem) => problemFinding(declaration, problem));
  const layers = derivation(declaration, workshop, lookups, findings);
  const drafts = new Map<string, SlotDraft>();
  const fields = new Map<string, Statement>();
  const waivers: Waiver[] = [];

  for (const layer of layers) {
    const own = layer === declaration;
    const layerFindings: Finding[] = [];
    const reader = new LayerReader(layer, drafts, fields, waivers, layerFindings, layers[0] !== layer);
    if (layer.tree.block) reader.readBlock(layer.tree.block, "");
    if (own) findings.push(...layerFindings);
  }

  const slots = new Map<string, Installed>();
  for (const [path, draft] of drafts) {
    const installed = install(path, draft, context, lookups, draft.declaration === declaration ? findings : []);
    if (installed) slots.set(path, installed);
  }
  return { declaration, layers, fields, slots, waivers, lookups, findings };
}

/** The build's bases, furthest first, then the build; cycles and missing bases are findings. */
function derivation(
  declaration: Declaration,
  workshop: Workshop,
  lookups: string[],
  findings: Finding[],
): readonly Declaration[] {
  const layers = [declaration];
  let current = declaration;
  while (current.from !== undefined) {
    const key = declarationKey("build", current.from);
    lookups.push(key);
    const base = workshop.lookup(key);
    const span = declaration.tree.header.from?.span;
    if (!base) {
      if (current === declaration && span && workshop.complete) {
        findings.push(
          textFinding(declaration, span, "model/unknown-build", `No build is declared with the name ${current.from}.`, {
            repairs: [
              { kind: "near-name", place: { declaration, span }, name: current.from, keyword: "build", kinds: [] },
            ],
          }),
        );
      }
      break;
    }
    if (layers.includes(base) || layers.length >= longestDerivation) {
      if (span && (current === declaration || base === declaration || layers.length >= longestDerivation)) {
        const why = layers.includes(base)
          ? `${declaration.name} derives from itself, by way of ${declaration.from}.`
          : `The chain of builds after from is longer than ${longestDerivation}.`;
        findings.push(textFinding(declaration, span, "model/derivation", why));
      }
      break;
    }
    layers.unshift(base);
    current = base;
  }
  return layers;
}
