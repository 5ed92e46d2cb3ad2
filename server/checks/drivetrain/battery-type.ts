import { matingCheck } from "../shared/mating.ts";

export default matingCheck({
  code: "drivetrain/battery-type",
  title: "The battery is of the type that the derailleur takes",
  joints: {
    "derailleur-battery": {
      one: "takes",
      other: "is",
      nothing: "states no type of battery",
      remedy: "fit a battery of that type.",
    },
  },
  explanation:
    "Batteries of electronic derailleurs differ in their shape, their voltage and their contacts, and each maker has types of its " +
    "own. One that clips to a derailleur does not feed one that is wired to a cell in the seatpost. A battery of another type " +
    "does not go on, or harms what it feeds. A derailleur worked by cable has none and is not asked.",
  source: "common practice, no source",
  caution: "A damaged or wet lithium battery is not charged, and none is charged unattended.",
  examples: {
    holds: `
standard battery-type example.clip "Clip-on cell" { voltage: 7.4 V; source: "this example" }
part rear-derailleur example.arm "Arm" { battery-type: example.clip }
part battery example.cell "Cell" { battery-type: example.clip }

build example "The cell of the derailleur" {
  drivetrain { rear-derailleur: example.arm; battery: example.cell }
}
`,
    fails: `
standard battery-type example.clip "Clip-on cell" { voltage: 7.4 V; source: "this example" }
standard battery-type example.stick "Cell for a seatpost" { voltage: 7.4 V; source: "this example" }
part rear-derailleur example.arm "Arm" { battery-type: example.clip }
part battery example.cell "Stick" { battery-type: example.stick }

build example "A cell for a seatpost" {
  drivetrain { rear-derailleur: example.arm; battery: example.cell }
}
`,
  },
});
