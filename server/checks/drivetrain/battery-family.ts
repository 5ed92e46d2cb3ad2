import { fact, optional, slot } from "../../model/need.ts";
import { mate } from "../../model/standard.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { showCode, showCodes } from "../shared/codes.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/battery-family",
  title: "The battery is made for the derailleur's family",
  severity: "error",
  since: 1,
  needs: () => ({
    battery: slot("drivetrain.battery"),
    serves: fact("drivetrain.battery", "serves-families"),
    derailleur: slot("drivetrain.rear-derailleur"),
    power: fact("drivetrain.rear-derailleur", "power"),
    family: fact("drivetrain.rear-derailleur", "shift-family"),
    type: optional(fact("drivetrain.battery", "battery-type")),
    takes: optional(fact("drivetrain.rear-derailleur", "battery-type")),
  }),
  test({ battery, serves, derailleur, family, type, takes }) {
    if (type.state === "known" && takes.state === "known" && !mate(type.value, takes.value)) {
      return notApplicable("it is of another type, which is found as such");
    }
    if (serves.value.some((one) => mate(one, family.value))) {
      return holds(`${battery.subject} feeds ${showCode(family.value)}, which ${derailleur.subject} is of.`);
    }
    return fails(
      `${battery.subject} is made for ${showCodes(serves.value)}, but ${derailleur.subject} is of ${showCode(family.value)}: that both take its type does not make its maker vouch for it. Fit a battery for that family.`,
      battery,
      [serves, family],
      swaps("drivetrain.battery", "drivetrain.rear-derailleur"),
    );
  },
  explanation:
    "A battery of one type may be made in several versions, each for the parts of one family: the case goes on, and voltage, " +
    "signal or charging differ. Its maker states which families it feeds. Whether its type is that of the derailleur is " +
    "asked apart. A derailleur worked by cable takes no power and is not asked.",
  source: "common practice, no source; which families a battery feeds is its maker's own statement",
  caution: "A damaged or wet lithium battery is not charged, and none is charged unattended.",
  examples: {
    holds: `
standard shift-family example-radio { actuation: electronic }
part rear-derailleur example.arm "Arm" { power: own-battery; shift-family: example-radio }
part battery example.cell "Cell" { serves-families: example-radio }

build example "A cell for that family" {
  drivetrain { rear-derailleur: example.arm; battery: example.cell }
}
`,
    fails: `
standard shift-family example-radio { actuation: electronic }
standard shift-family example-wired { actuation: electronic }
part rear-derailleur example.arm "Arm" { power: own-battery; shift-family: example-radio }
part battery example.cell "Cell" { serves-families: example-wired }

build example "A cell for another family" {
  drivetrain { rear-derailleur: example.arm; battery: example.cell }
}
`,
  },
});
