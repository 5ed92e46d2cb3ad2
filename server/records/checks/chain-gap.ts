import { cannotTell, fails, holds } from "../../checks/define.ts";
import { fact, type Known, optional } from "../../model/need.ts";
import { inside } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { defineComparison, judged } from "../define.ts";

export default defineComparison({
  code: "record/chain-gap",
  title: "The chain gap is the one that the derailleur's maker states",
  severity: "warning",
  restsOn: "spec",
  instances: [{ name: "", path: "drivetrain.chain-gap" }],
  needs: () => ({
    gap: fact("drivetrain.rear-derailleur", "chain-gap"),
    cog: optional(fact("drivetrain.rear-derailleur", "chain-gap-cog")),
    method: optional(fact("drivetrain.rear-derailleur", "chain-gap-method")),
    cogs: optional(fact("drivetrain.cassette", "cogs")),
  }),
  test(measured: Known<number>, { gap, cog, method, cogs }) {
    if (cog.state === "unknown") return judged(cannotTell(cog));
    const where =
      cog.state === "known"
        ? ` on the cog of ${cog.value} t`
        : cogs.state === "known"
          ? ` on the largest cog, ${Math.max(...cogs.value)} t`
          : " on the largest cog";
    const how = method.state === "known" ? `, measured as ${method.written}` : "";
    const [is, asks] = [showQuantity(measured.value, "length"), showInterval(gap.value, "length")];
    const said = `The chain gap is ${is}, and ${gap.subject} asks for ${asks}${where}${how}`;
    if (inside(measured.value, gap.value)) return judged(holds(`${said}.`), asks);
    const isWide = measured.value > gap.value.greatest;
    return judged(
      fails(
        `${said}: ${isWide ? "too wide, so that it shifts late and slackly" : "too close, so that pulley and cog grind and shifts to the largest cog fail"}. Set the gap anew, on a suspended bike at sag.`,
        measured,
        [gap],
      ),
      asks,
    );
  },
  explanation:
    "The gap between the guide pulley and the cogs decides how soon a shift takes. Too close, the pulley runs on the cog; " +
    "too wide, the chain wanders before it climbs. Each maker states his own figure, on which cog it is set and between " +
    "which points it is measured, and only a measurement made that way can be compared with it.",
  source: "the derailleur maker's own figure",
  examples: {
    holds: `
part rear-derailleur example.arm "Arm" { set-up: electronic; chain-gap: 6 to 8 mm }

build example "Gap" {
  drivetrain.rear-derailleur: example.arm
}

record "A-1" of example {
  drivetrain.chain-gap: 7 mm
}
`,
    fails: `
part rear-derailleur example.arm "Arm" { set-up: electronic; chain-gap: 6 to 8 mm }

build example "Gap" {
  drivetrain.rear-derailleur: example.arm
}

record "A-1" of example {
  drivetrain.chain-gap: 11 mm
}
`,
  },
});
