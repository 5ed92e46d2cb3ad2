import { ofWheel } from "../../calculations/shared/wheels.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { isOtherSize, thruAxleNeeds } from "../shared/thru-axle.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

const shapes = {
  flat: "a flat seat",
  conical: "a conical seat",
  insert: "an insert of its maker",
} as const;

type Seat = keyof typeof shapes;

export default defineCheck({
  code: "wheel/axle-seat",
  title: "The head of the thru axle seats in the fork or frame",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => thruAxleNeeds<Seat>(place, "axle-seat", "axleSeat"),
  test({ axle, own, asked, made, takes }, place) {
    if (isOtherSize(made, takes)) return notApplicable("the axle is of another size, which is found as such");
    if (own.value === asked.value) {
      return holds(`${axle.subject} has ${shapes[own.value]} under its head, as ${asked.subject} asks for.`);
    }
    return fails(
      `${axle.subject} is made for ${shapes[own.value]}, but ${asked.subject} has ${shapes[asked.value]}: fit an axle for ${shapes[asked.value]}.`,
      axle,
      [own, asked],
      swaps(ofWheel(place.wheel, "axle"), place.holder),
    );
  },
  explanation:
    "The head of a thru axle presses on the dropout by a flat shoulder or by a cone, and the two never interchange. A flat " +
    "head in a conical recess bears on its rim only, and a cone on a flat face on a line: either is tight to the torque " +
    "wrench and works loose on the road, and marks the frame. Some frames and forks have an insert of their own that " +
    "turns one into the other; then the axle that its maker supplies belongs in it. It is one of the things for which " +
    "shops send axles back most often.",
  source: "common practice, no source",
  caution: "An axle that does not seat comes loose although it was tightened to torque.",
  examples: {
    holds: `
part fork example.fork "Fork" { axle-seat: conical }
part thru-axle example.axle "Axle" { axle-seat: conical }

build example "A cone in its recess" {
  fork: example.fork
  front-wheel.axle: example.axle
  rear-wheel.axle: none
}
`,
    fails: `
part fork example.fork "Fork" { axle-seat: conical }
part thru-axle example.axle "Axle" { axle-seat: flat }

build example "A flat head in a conical recess" {
  fork: example.fork
  front-wheel.axle: example.axle
  rear-wheel.axle: none
}
`,
  },
});
