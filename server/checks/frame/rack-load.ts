import type { Installed } from "../../model/assembly.ts";
import type { Known, Maybe, Need } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anyFact, anySetting, anySlot } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

type LoadNeeds = {
  readonly rack: Need<Installed, true>;
  readonly load: Need<number, true>;
  readonly byRack: Need<number, true>;
  readonly byHolder: Need<number, true>;
};

export default defineCheck({
  code: "frame/rack-load",
  title: "A rack carries no more than rack and frame or fork allow",
  severity: "error",
  since: 1,
  safety: true,
  instances: [
    { name: "front", slot: "carrying.front-rack", holder: "fork", limit: "rack-load" },
    { name: "rear", slot: "carrying.rear-rack", holder: "frame", limit: "rear-rack-load" },
  ] as const,
  needs: ({ slot: path, holder, limit }): LoadNeeds => ({
    rack: anySlot(path),
    load: anySetting(path, "load"),
    byRack: anyFact(path, "load-limit"),
    byHolder: anyFact(holder, limit),
  }),
  test(facts, { slot: path, holder }) {
    const { rack, load, byRack, byHolder } = facts as {
      [K in keyof LoadNeeds]: LoadNeeds[K] extends Need<infer Value, true> ? Maybe<Value> : never;
    };
    if (rack.state === "none") return notApplicable(`${path} is none`);
    const limits = [byRack, byHolder].filter((one): one is Known<number> => one.state === "known");
    const [least] = [...limits].sort((a, b) => a.value - b.value);
    if (rack.state === "known" && load.state === "known" && least && greaterThan(load.value, least.value)) {
      const [carries, most] = showPair(load.value, least.value, "mass");
      // Another rack bears no more where fork or frame do not.
      const tooWeak = limits.filter((limit) => greaterThan(load.value, limit.value));
      const allow = tooWeak.map(
        (limit) => `${limit === byRack ? "it" : limit.subject} allows ${showQuantity(limit.value, "mass")}`,
      );
      const isRackAlone = tooWeak.every((limit) => limit === byRack);
      return fails(
        `${rack.subject} is to carry ${carries}, but ${allow.join(" and ")}: load ${most} or less${isRackAlone ? ", or fit a stronger rack" : ""}.`,
        load,
        [load, ...limits],
        [{ kind: "set-setting", slot: path, setting: "load", value: most }, ...swaps(isRackAlone ? path : holder)],
      );
    }
    const unknown = unknowns(rack, load, byRack, byHolder);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (load.state !== "known" || rack.state !== "known" || !least)
      return notApplicable("no load or no limit is stated");
    const [carries, most] = showPair(load.value, least.value, "mass");
    return holds(
      `${rack.subject} carries ${carries}, and ${least.subject} allows ${most}.`,
      (least.value - load.value) / least.value,
    );
  },
  explanation:
    "A rack has a greatest load, and so have the eyelets it is bolted to. The smaller of the two counts. An overloaded rack " +
    "breaks at its feet or tears an eyelet off, and then falls into the wheel. A heavy load high up or far back also makes " +
    "the bicycle shimmy. What the rack itself weighs is not part of the load. The whole mass of bicycle, rider and load has " +
    "limits of its own.",
  source: "common practice, no source; the limits are the makers' own figures",
  caution: "A rack that breaks can lock the wheel. The makers' limits come first.",
  examples: {
    holds: `
part frame example.town "Town" { rear-rack-load: 20 kg }
part rack example.rack "Rack" { load-limit: 27 kg }

build example "As much as the eyelets bear" {
  frame: example.town
  carrying.rear-rack: example.rack { load: 20 kg }
}
`,
    fails: `
part fork example.fork "Fork" { rack-load: 10 kg }
part rack example.rack "Low rack" { load-limit: 16 kg }

build example "Too much for the fork" {
  fork: example.fork
  carrying.front-rack: example.rack { load: 14 kg }
}
`,
  },
});
