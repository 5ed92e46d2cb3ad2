import { stated } from "../../calculations/shared/maybe.ts";
import { fact, type Known, optional, type Unknown } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dynamoNeeds, dynamoOf } from "../shared/dynamo.ts";
import { anySlot } from "../shared/end.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

const lamps = ["front-lamp", "rear-lamp"] as const;

export default defineCheck({
  code: "wheel/dynamo-load",
  title: "The dynamo gives the power that its lamps draw",
  severity: "warning",
  since: 1,
  needs: () => ({
    ...dynamoNeeds,
    "front-lamp": anySlot("lighting.front-lamp"),
    "rear-lamp": anySlot("lighting.rear-lamp"),
    "power front-lamp": optional(fact("lighting.front-lamp", "power")),
    "power rear-lamp": optional(fact("lighting.rear-lamp", "power")),
    "current front-lamp": optional(fact("lighting.front-lamp", "current")),
    "current rear-lamp": optional(fact("lighting.rear-lamp", "current")),
  }),
  test(facts) {
    const open: Unknown[] = [...unknowns(...lamps.flatMap((lamp) => [facts[lamp], facts[`power ${lamp}`]]))];
    const fed = lamps.filter((lamp) => {
      const power = facts[`power ${lamp}`];
      return stated(power) === "dynamo";
    });
    if (fed.length === 0 && open.length === 0) return notApplicable("no lamp is fed by a dynamo");
    const dynamo = dynamoOf(facts);
    if (dynamo === "none") return notApplicable("there is no dynamo");
    if (dynamo === "unknown") return cannotTell(...unknowns(facts.outside, facts.frontHub, facts.rearHub));
    const currents: Known<number>[] = [];
    for (const lamp of fed) {
      const current = facts[`current ${lamp}`];
      if (current.state === "known") currents.push(current);
      else if (current.state === "unknown") open.push(current);
    }
    const { voltage, power } = dynamo;
    if (voltage.state === "known" && power.state === "known" && currents.length > 0) {
      const drawn = currents.reduce((sum, { value }) => sum + value, 0) * voltage.value;
      const [draw, gives] = showPair(drawn, power.value, "power", { digits: 1 });
      const names = both(currents.map(({ subject }) => subject));
      if (!atMost(drawn, power.value)) {
        return fails(
          `${names} ${currents.length > 1 ? "draw" : "draws"} ${draw} at ${voltage.written}, but ${power.subject} gives ${gives}: fit lamps that draw less, or a stronger dynamo.`,
          dynamo.part,
          [power, ...currents],
          swaps("lighting.front-lamp", "lighting.rear-lamp", dynamo.slot),
        );
      }
      if (open.length === 0) {
        return holds(
          `${names} ${currents.length > 1 ? "draw" : "draws"} ${draw}, and ${power.subject} gives ${gives}.`,
          (power.value - drawn) / power.value,
        );
      }
    }
    const unknown = [...open, ...unknowns(voltage, power)];
    return unknown.length > 0 ? cannotTell(...unknown) : notApplicable("lamps or dynamo state no current");
  },
  explanation:
    "A hub dynamo gives 3 W, small ones 1.5 W, and no more: lamps that draw more between them glow dimly, and at low speed " +
    "flicker. What a lamp draws is its current times the dynamo's voltage, 0.4 A at 6 V for a usual front lamp and 0.1 A " +
    "for a rear one. A charger for a telephone on the same dynamo is switched off at night.",
  source: "power is voltage times current; 3 W and 1.5 W common practice, no source",
  examples: {
    holds: `
part hub example.hub "Small light hub" { dynamo-voltage: 6 V; dynamo-power: 1.5 W }
part lamp example.lamp "Lamp" { power: dynamo; current: 0.2 A }

build example "Enough for one lamp" {
  front-wheel.hub: example.hub
  lighting.front-lamp: example.lamp
}
`,
    fails: `
part hub example.hub "Small light hub" { dynamo-voltage: 6 V; dynamo-power: 1.5 W }
part lamp example.lamp "Lamp" { power: dynamo; current: 0.4 A }

build example "A lamp for twice the dynamo" {
  front-wheel.hub: example.hub
  lighting.front-lamp: example.lamp
}
`,
  },
});
