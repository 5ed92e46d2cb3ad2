import type { Assembly, AssemblyContext, Installed, Waiver } from "./assembly.ts";
import { LayerReader, type SlotDraft } from "./build-layer.ts";
import { type Declaration, declarationKey } from "./declaration.ts";
import type { Finding } from "./finding.ts";
import { install } from "./install.ts";
import { longestDerivation } from "./part.ts";
import { problemFinding, textFinding } from "./read-fields.ts";
import type { Statement } from "./stated.ts";
import type { Workshop } from "./workshop.ts";

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
  // What derives from a template is a whole bike, unless it says that it is one too.
  if (fields.get("template")?.place.declaration !== declaration) fields.delete("template");

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
          ? `${declaration.name} derives from itself${declaration.from === declaration.name ? "" : `, by way of ${declaration.from}`}.`
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
