import { fact, optional, slot } from "../../model/need.ts";
import { mate } from "../../model/standard.ts";
import { inside } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { showCode } from "../shared/codes.ts";
import { dynamoNeeds, dynamoOf } from "../shared/dynamo.ts";
import { anySlot } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

const instances = [
  { name: "front", lamp: "lighting.front-lamp" },
  { name: "rear", lamp: "lighting.rear-lamp" },
] as const;

export default defineCheck({
  code: "wheel/dynamo-lamp",
  title: "A lamp for a dynamo has one that suits it",
  severity: "error",
  since: 1,
  instances,
  needs: ({ lamp }) => ({
    ...dynamoNeeds,
    lamp: slot(lamp),
    fed: fact(lamp, "power"),
    bears: optional(fact(lamp, "voltage")),
    plug: optional(fact(lamp, "connector")),
    wiring: anySlot("lighting.wiring"),
  }),
  test({ lamp, fed, bears, plug, wiring, ...facts }, { name, lamp: path }) {
    if (fed.value !== "dynamo") return notApplicable(`${lamp.subject} is not fed by a dynamo`);
    const dynamo = dynamoOf(facts);
    if (dynamo === "unknown") return cannotTell(...unknowns(facts.outside, facts.frontHub, facts.rearHub));
    if (dynamo === "none") {
      return fails(
        `${lamp.subject} is fed by a dynamo, but the build has none, neither in a hub nor beside a wheel: fit a hub with a dynamo, or a lamp with a battery.`,
        lamp,
        [fed],
        [...swaps(path, "front-wheel.hub"), { kind: "insert-part", slot: "lighting.dynamo" }],
      );
    }
    const { voltage } = dynamo;
    if (voltage.state === "known" && bears.state === "known" && !inside(voltage.value, bears.value)) {
      return fails(
        `${dynamo.part.subject} gives ${showQuantity(voltage.value, "voltage")}, but ${lamp.subject} bears ${showInterval(bears.value, "voltage")}: fit a lamp for that dynamo.`,
        lamp,
        [voltage, bears],
        swaps(path, dynamo.slot),
      );
    }
    // The rear lamp is usually wired to the front one, and a lead of its own may change the plug.
    const asked = name === "front" && wiring.state === "none";
    if (
      asked &&
      plug.state === "known" &&
      dynamo.connector.state === "known" &&
      !mate(plug.value, dynamo.connector.value)
    ) {
      return fails(
        `${lamp.subject} has the connector ${showCode(plug.value)}, but ${dynamo.part.subject} has ${showCode(dynamo.connector.value)}: fit the connector of the dynamo to the lead.`,
        lamp,
        [plug, dynamo.connector],
        swaps(path, dynamo.slot),
        { severity: "warning" },
      );
    }
    const unknown = unknowns(voltage, bears, ...(asked ? [plug, dynamo.connector] : []));
    if (unknown.length > 0) return cannotTell(...unknown);
    if (voltage.state !== "known" || bears.state !== "known") return notApplicable("lamp or dynamo states no voltage");
    return holds(
      `${dynamo.part.subject} gives ${showQuantity(voltage.value, "voltage")}, and ${lamp.subject} bears ${showInterval(bears.value, "voltage")}.`,
    );
  },
  explanation:
    "A lamp for a dynamo has no battery and is dark without one. Dynamos give 6 V, some 12 V; lamps for motors' batteries " +
    "take more, and bear no dynamo. A lamp of too low a voltage burns out on the first fast descent. Plugs differ between " +
    "makers too, but a lead is soon given another one. Where law asks for lamps it may ask for approved ones.",
  source: "common practice, no source",
  examples: {
    holds: `
part hub example.hub "Light hub" { dynamo-voltage: 6 V; dynamo-power: 1.5 W; connector: tab-2.8 }
part lamp example.lamp "Lamp" { power: dynamo; voltage: 6 to 7.5 V; connector: tab-2.8 }

build example "Fed by its hub" {
  front-wheel.hub: example.hub
  lighting.front-lamp: example.lamp
}
`,
    fails: `
part hub example.hub "Light hub" { dynamo-voltage: 12 V; dynamo-power: 6 W; connector: tab-2.8 }
part lamp example.lamp "Lamp" { power: dynamo; voltage: 6 to 7.5 V; connector: tab-2.8 }

build example "Twice its voltage" {
  front-wheel.hub: example.hub
  lighting.front-lamp: example.lamp
}
`,
  },
});
