import { coilRate, coilSag, linkageNeeds, linkageOf } from "../../calculations/shared/coil.ts";
import type { missingOf } from "../../calculations/shared/maybe.ts";
import { fact, type Maybe, optional, setting, slot, worked } from "../../model/need.ts";
import { greaterThan, lessThan } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import type { Interval } from "../../values/types.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { decidingSag } from "../shared/sag-range.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

/** How far the load on the rear wheel may differ from what is worked out, as riders sit: common practice, no source. */
const seating = 0.1;

/** One pound-force per inch, in newtons per millimetre. */
const poundPerInch = 4.4482216152605 / 25.4;

/** Coils are sold in steps of so many pounds-force per inch: common practice, no source. */
const coilStep = 25;

export default defineCheck({
  code: "frame/coil",
  title: "The coil of the rear shock suits the rider",
  severity: "warning",
  since: 1,
  needs: () => ({
    ...linkageNeeds,
    shock: slot("rear-shock"),
    spring: fact("rear-shock", "spring"),
    fitted: optional(setting("rear-shock", "spring-fitted")),
    supplied: optional(fact("rear-shock", "spring-rate")),
    load: optional(worked<number>("suspension.sprung-load")),
    range: optional(fact("frame", "sag-range")),
    own: optional(fact("rear-shock", "sag-range")),
  }),
  test({ shock, spring, fitted, supplied, load, range, own, ...frame }) {
    if (spring.value !== "coil") return notApplicable(`${shock.subject} has no coil`);
    const rate = fitted.state === "none" ? supplied : fitted;
    if (rate.state === "none") {
      const what = `the rate of the coil of ${shock.subject} (spring-rate, or spring-fitted in the build)`;
      return cannotTell({ state: "unknown", missing: [{ path: rate.path, what, place: rate.place }] });
    }
    const linkage = linkageOf(frame);
    if (linkage.state === "none") return notApplicable(linkage.reason);
    const decides = decidingSag(range, own);
    if (decides === undefined) return notApplicable("neither maker states a range of sag");
    const missing = linkage.state === "unknown" ? linkage.missing : [];
    const open = unknowns(...missingAs(missing), rate, load, decides);
    if (
      linkage.state === "unknown" ||
      rate.state !== "known" ||
      load.state === "unknown" ||
      decides.state !== "known"
    ) {
      return cannotTell(...open);
    }
    if (load.state === "none") return notApplicable("nothing says what rests on the rear wheel");

    const { stroke } = linkage.linkage;
    const share = (force: number): number => {
      const sag = coilSag(force, rate.value, linkage.linkage);
      return sag === undefined ? 100 : Math.min(100, (100 * sag) / stroke);
    };
    const likely: Interval = { least: share(load.value * (1 - seating)), greatest: share(load.value * (1 + seating)) };
    const comes = `a coil of ${bothUnits(rate.value)} sags by about ${whole(share(load.value))} of the stroke, ${between(likely)} as one sits, under ${showQuantity(load.value, "force")} on the rear wheel`;
    const asks = `${decides.subject} asks for ${showInterval(decides.value, "ratio")}`;
    const soft = greaterThan(likely.least, decides.value.greatest);
    if (!soft && !lessThan(likely.greatest, decides.value.least)) {
      return holds(`${rate.subject}: ${comes}, and ${asks}.`);
    }
    const wanted = middle(decides.value);
    const needed = coilRate(load.value, (wanted / 100) * stroke, linkage.linkage);
    const steps = Math.round(needed / poundPerInch / coilStep) * coilStep;
    return fails(
      `${rate.subject}: ${comes}, but ${asks}: the coil is too ${soft ? "soft" : "stiff"} for this rider. Fit one of about ${bothUnits(needed)}, which gives ${whole(wanted)}; preload takes up a few millimetres and does not make up for a wrong coil.`,
      fitted.state === "known" ? fitted : shock,
      [rate, load, decides],
      [
        { kind: "set-setting", slot: "rear-shock", setting: "spring-fitted", value: `${steps} lb/in` },
        ...swaps("rear-shock"),
      ],
    );
  },
  explanation:
    "A coil has one rate, and a rider of one mass presses it in by one distance: it is chosen for the rider, not set with a " +
    "pump. What rests on the rear wheel, times the leverage, is the force on the shock; divided by the coil's rate it is " +
    "the sag. Too soft, the bicycle uses up its travel on every bump and strikes its pedals; too stiff, the wheel skips. " +
    "Turning the collar only preloads the coil: beyond a few millimetres it tops out hard. Riders sit differently, so that a " +
    "tenth of the load is left either way, and the sag is measured on the bicycle in the end.",
  source:
    "statics of a lever, re-derived; a tenth of the load for how riders sit, and coils in steps of 25 lb/in: common practice, no source; the range is the makers' own",
  caution: "A coil is changed as the shock's maker says; its stroke has to be at least the shock's, or it binds.",
  examples: {
    holds: `
part frame example.fell "Fell" {
  rear-travel: 140 mm
  leverage-start: 2.8
  leverage-end: 2.3
  sag-range: 25 to 33 %
  mass: 3000 g
}
part rear-shock example.shock "Coil shock" { size: 210x55; spring: coil; spring-rate: 78 N/mm; mass: 850 g }

build example "A coil for 72 kg" {
  rider { mass: 72 kg; kit-mass: 5 kg }
  frame: example.fell
  rear-shock: example.shock
}
`,
    fails: `
part frame example.fell "Fell" { rear-travel: 140 mm; sag-range: 25 to 33 %; mass: 3000 g }
part rear-shock example.shock "Coil shock" { size: 210x55; spring: coil; spring-rate: 78 N/mm; mass: 850 g }

build example "The same coil for a heavy rider" {
  rider { mass: 115 kg; kit-mass: 5 kg }
  frame: example.fell
  rear-shock: example.shock
}
`,
  },
});

function missingAs(missing: ReturnType<typeof missingOf>): readonly Maybe[] {
  return missing.length > 0 ? [{ state: "unknown", missing }] : [];
}

function bothUnits(rate: number): string {
  const [metric, customary] = [
    showQuantity(Math.round(rate), "stiffness", { unit: "N/mm", displayUnits: "metric" }),
    showQuantity(rate, "stiffness", { unit: "lb/in", digits: 0, displayUnits: "metric" }),
  ];
  return `${metric} (${customary})`;
}

function whole(share: number): string {
  return showQuantity(Math.round(share), "ratio");
}

function between({ least, greatest }: Interval): string {
  return showInterval({ least: Math.round(least), greatest: Math.round(greatest) }, "ratio");
}

/** The middle of a range; the end that it has where the other is open. */
function middle({ least, greatest }: Interval): number {
  if (!Number.isFinite(least)) return greatest;
  return Number.isFinite(greatest) ? (least + greatest) / 2 : least;
}
