import { matingCheck } from "../shared/mating.ts";

export default matingCheck({
  code: "drivetrain/hanger-seat",
  title: "The hanger fits the frame's rear end",
  joints: {
    "hanger-frame": {
      one: "sits on",
      other: "has",
      nothing: "takes no replaceable hanger",
      remedy: "fit the hanger that the frame's maker names for it.",
    },
  },
  explanation:
    "Replaceable hangers come in hundreds of shapes, and most fit one maker's frames only; a few sit round the axle on a " +
    "common seat. A hanger that nearly fits stands crooked, and no set-up of the derailleur makes up for that: the " +
    "pulleys run askew under the cogs, and a bent-in lowest gear ends in the spokes. A frame whose hanger is part of it " +
    "takes no other one.",
  source: "common practice, no source",
  examples: {
    holds: `
part frame example.fell "Fell" { hanger-seat: coaxial-12 }
part hanger example.eye "Eye 12" { seat: coaxial-12 }

build example "A hanger on its seat" {
  frame: example.fell
  drivetrain.hanger: example.eye
}
`,
    fails: `
standard hanger-seat example.blade-2 "Two bolts outside the dropout" { form: outside-face; source: "this example" }
part frame example.fell "Fell" { hanger-seat: coaxial-12 }
part hanger example.blade "Blade" { seat: example.blade-2 }

build example "A hanger of another frame" {
  frame: example.fell
  drivetrain.hanger: example.blade
}
`,
  },
});
