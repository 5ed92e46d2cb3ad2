import { date, length, number, quantities, quantity, text, word, yesNo } from "./fields.ts";

/** What a record of a bicycle as built states about itself. */
export const recordFields = {
  date: date("Day on which it was measured.", { essential: true, example: "2026-11-20" }),
  by: text("Who measured it.", { essential: true, example: '"K. P."' }),
  spec: text("Digest of the specification that it was built to; written by the program.", { omitted: "none" }),
  occasion: word(
    {
      built: "When it was built.",
      "first-check": "After the first rides.",
      service: "At a service.",
      inspection: "After a crash or a doubt.",
    },
    "Why it was measured.",
    { omitted: "none" },
  ),
  note: text("A remark.", { omitted: "none" }),
} as const;

/**
 * What can be measured besides the settings of slots, by path in the build. A setting such as
 * `drivetrain.chain.links` is recorded under its own path.
 */
export const measurements = {
  "drivetrain.chain-gap": length("Chain gap, measured as the derailleur's maker says.", { highest: 60 }),
  "drivetrain.chain-wear": quantity("ratio", "Lengthening of the chain.", { highest: 3 }),
  "drivetrain.hanger-run-out": length("Greatest difference of the hanger from the rim's plane, at the rim.", {
    highest: 60,
  }),
  "drivetrain.belt-frequency": number("Natural frequency of the belt's free run, in hertz.", { highest: 200 }),
  "front-wheel.tension.drive-side": quantities("force", "Spoke tensions on the drive side."),
  "front-wheel.tension.non-drive-side": quantities("force", "Spoke tensions on the non-drive side."),
  "rear-wheel.tension.drive-side": quantities("force", "Spoke tensions on the drive side."),
  "rear-wheel.tension.non-drive-side": quantities("force", "Spoke tensions on the non-drive side."),
  "front-wheel.run-out.lateral": length("Sideways run-out of the rim.", { highest: 30 }),
  "front-wheel.run-out.radial": length("Run-out of the rim up and down.", { highest: 30 }),
  "rear-wheel.run-out.lateral": length("Sideways run-out of the rim.", { highest: 30 }),
  "rear-wheel.run-out.radial": length("Run-out of the rim up and down.", { highest: 30 }),
  "front-wheel.tyre-width": length("Width of the tyre as mounted and inflated.", { highest: 150 }),
  "rear-wheel.tyre-width": length("Width of the tyre as mounted and inflated.", { highest: 150 }),
  "front-wheel.circumference": length("Rolling circumference with the rider on.", { lowest: 500, highest: 3000 }),
  "rear-wheel.circumference": length("Rolling circumference with the rider on.", { lowest: 500, highest: 3000 }),
  "front-brake.rotor-thickness": length("Thickness of the rotor where it is thinnest.", { highest: 4 }),
  "rear-brake.rotor-thickness": length("Thickness of the rotor where it is thinnest.", { highest: 4 }),
  "front-brake.static-test": yesNo("Whether it held, squeezed hard for ten seconds alone, without a leak."),
  "rear-brake.static-test": yesNo("Whether it held, squeezed hard for ten seconds alone, without a leak."),
  "fit.saddle-height": length("From the crank axis to the saddle's top along the seat tube.", { highest: 1000 }),
  "whole.mass": quantity("mass", "Mass of the whole bicycle.", { unit: "kg", highest: 300_000 }),
  "whole.test-ride": quantity("time", "Time ridden for trial.", { unit: "min", highest: 36_000 }),
} as const;
