import type { Failure } from "../checks/define.ts";
import type { Assembly } from "../model/assembly.ts";
import { type Declaration, headerPlace, type Place } from "../model/declaration.ts";
import type { Finding, Related } from "../model/finding.ts";
import type { Need } from "../model/need.ts";
import { isTouched } from "./reads.ts";

/**
 * A finding of a build is shown in that build's own text: where the part is named, or at the build's base when that is
 * inherited. Where it was stated elsewhere, that place is the first of the related ones. They say too whose fault it
 * is: inherited, with the base that last said something of what was asked, or the build's own, with what it says of it.
 * @param needs what was asked for the answer.
 */
export function placed(
  verdict: Failure,
  assembly: Assembly,
  needs: readonly Need[],
): Pick<Finding, "place" | "related"> {
  const { place, path } = verdict.at;
  const { declaration } = assembly;
  if (place.declaration === declaration) return { place, related: verdict.related };
  const at = inOwnText(assembly, path);
  const base = baseOf(assembly, place, path);
  const source = base && faultOf(assembly, needs);
  const isOwn = source?.declaration === declaration;
  const whose = isOwn ? "taken over" : "inherited";
  const related: Related[] = [];
  if (base?.place === place) related.push({ message: `${whose} from ${base.declaration.name}: stated here`, place });
  else {
    if (base) related.push({ message: `${whose} from ${base.declaration.name}: named here`, place: base.place });
    related.push({ message: "stated here", place });
  }
  const from = isOwn ? "of this build itself" : `inherited from ${source?.declaration.name}`;
  for (const stated of source?.statements ?? []) {
    if (!samePlace(stated.place, base?.place ?? place))
      related.push({ message: `${from}: ${stated.path}`, place: stated.place });
  }
  const isSaid = (other: Place): boolean => related.some((one) => samePlace(one.place, other));
  return { place: at, related: [...related, ...verdict.related.filter((other) => !isSaid(other.place))] };
}

/** Which base says what stands at a path, and where. */
function baseOf(
  { layers, slots, declaration }: Assembly,
  place: Place,
  path: string,
): { readonly declaration: Declaration; readonly place: Place } | undefined {
  if (layers.includes(place.declaration)) return { declaration: place.declaration, place };
  const named = slots.get(path)?.place ?? slots.get(path.slice(0, Math.max(0, path.lastIndexOf("."))))?.place;
  if (!named || named.declaration === declaration || !layers.includes(named.declaration)) return undefined;
  return { declaration: named.declaration, place: named };
}

interface Source {
  readonly declaration: Declaration;
  readonly statements: readonly { readonly path: string; readonly place: Place }[];
}

/** The youngest of the builds laid together that says anything of what was asked: those after it have its answer. */
function faultOf(assembly: Assembly, needs: readonly Need[]): Source | undefined {
  const youngestFirst = [assembly.declaration, ...[...assembly.layers].reverse()];
  for (const declaration of youngestFirst) {
    const statements = statementsOf(declaration, assembly, needs);
    if (statements.length > 0) return { declaration, statements };
  }
  return undefined;
}

/** What one of them says of all that was asked, in the order of the build. */
function statementsOf(
  declaration: Declaration,
  { slots, fields }: Assembly,
  needs: readonly Need[],
): Source["statements"] {
  const found: { readonly path: string; readonly place: Place }[] = [];
  for (const [path, { place, settings }] of slots) {
    const own =
      place.declaration === declaration
        ? place
        : [...settings.values()].find((one) => one.place.declaration === declaration)?.place;
    if (own && needs.some((need) => isTouched(need, path))) found.push({ path, place: own });
  }
  for (const [path, { place }] of fields) {
    if (place.declaration === declaration && needs.some((need) => need.kind === "field" && need.field === path)) {
      found.push({ path, place });
    }
  }
  return found;
}

function samePlace(one: Place, other: Place): boolean {
  return (
    one.declaration === other.declaration && one.span.start === other.span.start && one.span.end === other.span.end
  );
}

/** Where a path of the build is shown in its own text. */
export function inOwnText(assembly: Assembly, path: string): Place {
  const { declaration } = assembly;
  for (let slot = path; slot !== ""; slot = slot.slice(0, Math.max(0, slot.lastIndexOf(".")))) {
    const installed = assembly.slots.get(slot);
    if (installed?.place.declaration === declaration) return installed.place;
  }
  const base = declaration.from === undefined ? undefined : declaration.tree.header.from;
  return base ? { declaration, span: base.span } : headerPlace(declaration);
}
