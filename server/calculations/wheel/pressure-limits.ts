import { type Facts, fact, optional } from "../../model/need.ts";
import { quantity } from "../../vocabulary/fields.ts";
import { type BuildInputs, defineCalculation, impossible, input, known, lacking, optionalInput } from "../define.ts";
import { negative, notPositive } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";
import { ofWheel, type Wheel, wheels } from "../shared/wheels.ts";

const inputs = {
  "tyre-greatest": input(quantity("pressure", "Greatest pressure printed on the tyre.")),
  "rim-greatest": optionalInput(quantity("pressure", "Greatest tyre pressure that the rim bears.")),
  "rim-kind-greatest": optionalInput(
    quantity(
      "pressure",
      "Greatest pressure for any tyre on this kind of rim, such as 5 bar for tubeless straight side.",
    ),
  ),
  "tyre-least": optionalInput(quantity("pressure", "Least pressure printed on the tyre.")),
};

function needsOf(wheel: Wheel) {
  return {
    tyreGreatest: fact(ofWheel(wheel, "tyre"), "greatest-pressure"),
    tyreLeast: optional(fact(ofWheel(wheel, "tyre"), "least-pressure")),
    rimGreatest: optional(fact(ofWheel(wheel, "rim"), "greatest-pressure")),
    rimKind: fact(ofWheel(wheel, "rim"), "rim-kind"),
  };
}

function feed(facts: Facts<ReturnType<typeof needsOf>>): BuildInputs<typeof inputs> {
  const { rimGreatest } = facts;
  if (rimGreatest.state === "unknown") return lacking(rimGreatest.missing);
  const kind = facts.rimKind.value.standard?.dimensions.get("greatest-pressure");
  return known(
    {
      "tyre-greatest": facts.tyreGreatest.value,
      "rim-greatest": stated(rimGreatest),
      "rim-kind-greatest": kind?.state === "stated" && typeof kind.value === "number" ? kind.value : undefined,
      "tyre-least": stated(facts.tyreLeast),
    },
    { "least-pressure": missingOf(facts.tyreLeast) },
  );
}

/** Between which pressures a tyre may be ridden on its rim. */
export default defineCalculation({
  name: "pressure-limits",
  title: "Limits of tyre pressure",
  description:
    "The greatest pressure is the least of what tyre, rim and kind of rim bear; the least is what the tyre prints.",
  inputs,
  results: {
    "greatest-pressure": { unit: "bar", digits: 2, description: "Never above this." },
    "least-pressure": { unit: "bar", digits: 2, description: "Never below this, where the tyre prints one." },
    "pressure-limited-by": {
      unit: "",
      digits: 0,
      description: "What sets the greatest pressure: `tyre`, `rim` or `rim-kind`.",
    },
  },
  formula: "greatest = least of tyre, rim and rim kind",
  source:
    "definition of the maximum inflation pressure in TBIS 4210-1:2018, clause 2.27, the adoption of ISO 4210-1; 5 bar on tubeless straight-side rims by ETRTO (from memory)",
  compute(given, working) {
    const wrong =
      notPositive({
        "tyre-greatest": given["tyre-greatest"],
        "rim-greatest": given["rim-greatest"],
        "rim-kind-greatest": given["rim-kind-greatest"],
      }) ?? negative({ "tyre-least": given["tyre-least"] });
    if (wrong) return wrong;
    const limits = [
      { name: "tyre", value: given["tyre-greatest"] },
      { name: "rim", value: given["rim-greatest"] },
      { name: "rim-kind", value: given["rim-kind-greatest"] },
    ].filter((limit): limit is { name: string; value: number } => limit.value !== undefined);
    const greatest = Math.min(...limits.map(({ value }) => value));
    const by = limits.find(({ value }) => value === greatest)?.name ?? "tyre";
    const least = given["tyre-least"];
    working?.step(
      `Greatest: least of ${limits.map(({ name, value }) => `${name} ${say(value, "bar")}`).join(", ")} = ${say(greatest, "bar")}`,
    );
    if (least !== undefined) working?.step(`Least: ${say(least, "bar")}, as printed on the tyre`);
    if (least !== undefined && least > greatest) {
      return impossible(
        `The tyre asks for ${say(least, "bar")} or more, and no more than ${say(greatest, "bar")} is allowed.`,
      );
    }
    return {
      "greatest-pressure": greatest,
      "pressure-limited-by": by,
      ...(least === undefined ? {} : { "least-pressure": least }),
    };
  },
  inBuild: wheels.map((wheel) => ({ assembly: wheel, needs: needsOf(wheel), inputs: feed })),
  examples: [
    {
      inputs: { "tyre-greatest": 6, "rim-greatest": 5.5, "rim-kind-greatest": 5, "tyre-least": 3.5 },
      results: { "greatest-pressure": 5, "least-pressure": 3.5, "pressure-limited-by": "rim-kind" },
      source: "TBIS 4210-1:2018, clause 2.27: the lower limit governs; 5 bar of ETRTO from memory",
    },
    {
      inputs: { "tyre-greatest": 8, "rim-greatest": 9 },
      results: { "greatest-pressure": 8, "pressure-limited-by": "tyre" },
      source: "TBIS 4210-1:2018, clause 2.27: the lower limit governs",
    },
  ],
});
