import { stated } from "../../calculations/shared/maybe.ts";
import { tyreSize } from "../../calculations/shared/tyre-size.ts";
import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, type Known, type Maybe, optional, slot } from "../../model/need.ts";
import { greaterThan, lessThan } from "../../values/compare.ts";
import { showInterval, showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { lacksHalf } from "../shared/half-mating.ts";
import { both } from "../shared/sentence.ts";
import { excessWidth } from "../shared/straight-side.ts";
import { swaps } from "../shared/swaps.ts";
import { widthTables } from "../shared/tyre-rim-tables.ts";
import { unknowns } from "../shared/unknowns.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "wheel/tyre-rim-width",
  title: "Tyre and rim suit each other in width",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    tyre: slot(ofWheel(wheel, "tyre")),
    size: fact(ofWheel(wheel, "tyre"), "size"),
    rim: slot(ofWheel(wheel, "rim")),
    inner: fact(ofWheel(wheel, "rim"), "inner-width"),
    narrowestRim: optional(fact(ofWheel(wheel, "tyre"), "narrowest-rim")),
    widestRim: optional(fact(ofWheel(wheel, "tyre"), "widest-rim")),
    narrowestTyre: optional(fact(ofWheel(wheel, "rim"), "narrowest-tyre")),
    widestTyre: optional(fact(ofWheel(wheel, "rim"), "widest-tyre")),
    kind: optional(fact(ofWheel(wheel, "rim"), "rim-kind")),
    construction: optional(fact(ofWheel(wheel, "tyre"), "construction")),
  }),
  test({ tyre, size, rim, inner, narrowestRim, widestRim, narrowestTyre, widestTyre, kind, construction }, { wheel }) {
    if (stated(construction) === "tubular")
      return notApplicable(`${tyre.subject} has no beads that the rim's edges hold`);
    const width = tyreSize(size.value)?.width;
    if (width === undefined) return cannotTell(lacksHalf(size, "section-width"));
    const straightSide = kind.state === "known" ? excessWidth(kind.value, width, inner.value) : "enough";
    if (straightSide === "few") return notApplicable("the tyre is found too narrow for that kind of rim");
    const swap = swaps(ofWheel(wheel, "tyre"), ofWheel(wheel, "rim"));
    const is = showQuantity(width, "length");
    const on = showQuantity(inner.value, "length");
    const limits = [
      limit(narrowestRim, inner, "least", "rims"),
      limit(widestRim, inner, "most", "rims"),
      limit(narrowestTyre, { ...size, value: width }, "least", "tyres"),
      limit(widestTyre, { ...size, value: width }, "most", "tyres"),
    ].filter((one) => one !== undefined);
    const passed = limits.filter(({ broken }) => broken);
    const [first] = passed;
    if (first) {
      return fails(
        `${tyre.subject} is ${is} and ${rim.subject} ${on} wide inside, but ${both(passed.map(({ said }) => said))}: fit a tyre or a rim that both makers allow.`,
        tyre,
        [size, inner, ...passed.map(({ known }) => known)],
        swap,
      );
    }
    // Where makers limit both how wide and how narrow a rim may be for the tyre, their word is the whole answer.
    const wideRim = widestRim.state === "known" || narrowestTyre.state === "known";
    const narrowRim = narrowestRim.state === "known" || widestTyre.state === "known";
    if (wideRim && narrowRim) {
      return holds(
        `${is} on a rim of ${on}, within what ${both([...new Set(limits.map(({ known }) => known.subject))])} allow.`,
      );
    }
    if (straightSide === "disputed")
      return notApplicable("the kind of rim asks for its own width, which is found as such");
    const rows = widthTables.flatMap(({ edition, widths }) => {
      const row = widths(inner.value);
      return row ? [{ edition, row }] : [];
    });
    if (rows.length === 0) {
      const unknown = unknowns(
        ...(narrowRim ? [] : [narrowestRim, widestTyre]),
        ...(wideRim ? [] : [widestRim, narrowestTyre]),
      );
      return unknown.length > 0
        ? cannotTell(...unknown)
        : holds(`${is} on a rim of ${on}, for which no table says anything and neither maker sets a limit.`);
    }
    const outside = rows.filter(
      ({ row }) => (!wideRim && lessThan(width, row.least)) || (!narrowRim && greaterThan(width, row.greatest)),
    );
    const range = ({ edition, row }: (typeof rows)[number]): string =>
      `${showInterval(row, "length", { digits: 1 })} (${edition})`;
    if (outside.length === 0) {
      return holds(`${is} on a rim of ${on}, inside every table: ${both(rows.map(range))}.`);
    }
    const inside = rows.filter((row) => !outside.includes(row));
    const newer = outside.some(({ row }) => lessThan(width, row.least))
      ? "Tables disagree, and newer ones, from 2020 on, allow wider rims"
      : "Tables disagree";
    return fails(
      `${tyre.subject} is ${is} wide and ${rim.subject} ${on} inside. For such a rim one reads ${both(outside.map(range))}${inside.length > 0 ? `, but also ${both(inside.map(range))}` : ""}. ${newer}: ask what the makers of tyre and rim allow, and state it.`,
      tyre,
      [size, inner],
      [
        ...(["narrowest-rim", "widest-rim"] as const).map(
          (name) => ({ kind: "state-fact", slot: ofWheel(wheel, "tyre"), fact: name }) as const,
        ),
        ...swap,
      ],
      { severity: "warning" },
    );
  },
  explanation:
    "A tyre on a rim that is too narrow for it leans and folds in corners; on one that is too wide its sides stand straight, " +
    "the tread becomes square and the beads are drawn off their seats more easily. The makers of tyre and rim state what " +
    "they allow, and that decides. Where they are silent there are only tables, which changed much over the years: a " +
    "combination inside all of them is good, and one outside is a question to the makers, not a fault. What the shape of " +
    "a straight-side rim asks for is another question.",
  source:
    "makers' limits; tables: the ratio rule of 1.4 to 2.4 as listed in a trade glossary (common practice, no source), and ranges quoted between 2010 and 2020 (from memory)",
  caution: "A tyre that its rim does not hold can come off in a bend.",
  examples: {
    holds: `
part tyre example.tyre "Tyre" { size: 32-622 }
part rim example.rim "Rim" { inner-width: 19 mm }

build example "Inside every table" {
  front-wheel { tyre: example.tyre; rim: example.rim }
  rear-wheel { tyre: none; rim: none }
}
`,
    fails: `
part tyre example.tyre "Tyre" { size: 32-622 }
part rim example.rim "Rim" { inner-width: 25 mm; narrowest-tyre: 38 mm }

build example "Narrower than the rim's maker allows" {
  front-wheel { tyre: example.tyre; rim: example.rim }
  rear-wheel { tyre: none; rim: none }
}
`,
  },
});

/** A maker's limit, and whether what it is about breaks it. */
interface Limit {
  readonly known: Known<number>;
  readonly said: string;
  readonly broken: boolean;
}

function limit(
  maker: Maybe<number>,
  { value }: Known<number>,
  which: "least" | "most",
  what: "rims" | "tyres",
): Limit | undefined {
  if (maker.state !== "known") return undefined;
  const [, figure] = showPair(value, maker.value, "length");
  return {
    known: maker,
    said: `${maker.subject} takes ${what} of ${figure} at ${which}`,
    broken: which === "least" ? lessThan(value, maker.value) : greaterThan(value, maker.value),
  };
}
