import type { Installed } from "../../model/assembly.ts";
import { fact, type Maybe, optional, setting } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anySlot } from "../shared/end.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

const other = { left: "right", right: "left" } as const;

export default defineCheck({
  code: "brake/side",
  title: "Each brake has its hand",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    front: anySlot("front-brake.lever"),
    frontSide: optional(setting("front-brake.lever", "side")),
    frontHand: optional(fact("front-brake.lever", "hand")),
    rear: anySlot("rear-brake.lever"),
    rearSide: optional(setting("rear-brake.lever", "side")),
    rearHand: optional(fact("rear-brake.lever", "hand")),
  }),
  test({ front, frontSide, frontHand, rear, rearSide, rearHand }) {
    const levers: readonly Lever[] = [
      { place: wheelPlaces[0], part: front, side: frontSide, hand: frontHand },
      { place: wheelPlaces[1], part: rear, side: rearSide, hand: rearHand },
    ];
    if (levers.every(({ part }) => part.state === "none")) return notApplicable("there is no lever");
    if (frontSide.state === "known" && rearSide.state === "known" && frontSide.value === rearSide.value) {
      const side = other[frontSide.value];
      // A lever made for one hand stays there; the other one goes over.
      const movable = [...levers]
        .reverse()
        .filter(({ hand }) => hand.state !== "known" || hand.value !== frontSide.value);
      const [only, ...more] = movable;
      const advice =
        only === undefined
          ? `Both are made for it: fit one for the ${side}.`
          : more.length === 0
            ? `Put the lever of the ${only.place.name} brake on the ${side}.`
            : `Put one of them on the ${side}.`;
      return fails(
        `The levers of both brakes are at the ${frontSide.value} hand (side: ${frontSide.value}): one hand cannot work two brakes. ${advice}`,
        rearSide,
        [frontSide],
        only === undefined
          ? (["rear-brake.lever", "front-brake.lever"] as const).map((slot) => ({
              kind: "swap-part",
              slot,
              set: { slot, setting: "side", value: side },
            }))
          : movable.map(({ place }) => ({
              kind: "set-setting",
              slot: ofBrake(place.brake, "lever"),
              setting: "side",
              value: side,
            })),
      );
    }
    for (const { place, part, side, hand } of levers) {
      if (side.state !== "known" || hand.state !== "known" || part.state !== "known") continue;
      if (hand.value === "either" || hand.value === side.value) continue;
      return fails(
        `${part.subject} is a lever for the ${hand.value} hand, but the build has it on the ${side.value} (side: ${side.value}): its blade and hose point the wrong way. Fit one for the ${side.value}, or let the other hand work the ${place.name} brake.`,
        part,
        [hand, side],
        swaps(ofBrake(place.brake, "lever")),
      );
    }
    const unknown = unknowns(
      ...levers.flatMap(({ part, side, hand }) => (part.state === "none" ? [] : [part, side, hand])),
    );
    if (unknown.length > 0) return cannotTell(...unknown);
    const said = levers.flatMap(({ place, side }) =>
      side.state === "known" ? [`the ${side.value} hand works the ${place.name} brake`] : [],
    );
    if (said.length === 0) return notApplicable("no lever says which hand works it");
    return holds(
      `Here ${both(said)}. Law and habit differ by country: ask the rider, and say it when the bicycle is handed over.`,
    );
  },
  explanation:
    "Which hand works which brake is a matter of law in some countries and of habit in all: where traffic keeps left the right " +
    "hand usually works the front brake, and where it keeps right the left hand. A rider used to the other way round pulls " +
    "the wrong brake in fright. So the build states each side, and the sheet repeats it. One hand cannot work both, and a " +
    "lever made for one hand does not go on the other side.",
  source: "common practice, no source; the law where it is ridden decides",
  caution: "A rider who pulls the wrong brake in fright can go over the bar.",
  examples: {
    holds: `
part brake-lever example.left "Left lever" { hand: left }
part brake-lever example.right "Right lever" { hand: right }

build example "A hand for each" {
  front-brake.lever: example.right { side: right }
  rear-brake.lever: example.left { side: left }
}
`,
    fails: `
part brake-lever example.left "Left lever" { hand: left }
part brake-lever example.right "Right lever" { hand: right }

build example "Left lever on the right" {
  front-brake.lever: example.left { side: right }
  rear-brake.lever: example.right { side: left }
}
`,
  },
});

interface Lever {
  readonly place: (typeof wheelPlaces)[number];
  readonly part: Maybe<Installed>;
  readonly side: Maybe<"left" | "right">;
  readonly hand: Maybe<"left" | "right" | "either">;
}
