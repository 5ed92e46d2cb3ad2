import { showNumber } from "../../calculations/show.ts";
import { buildField, slot, worked } from "../../model/need.ts";
import { atLeast } from "../../values/compare.ts";
import { showQuantity } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

/** Share on the front wheel, in per cent, below which steering and braking suffer. */
const least = 25;

export default defineCheck({
  code: "fit/weight-share",
  title: "Enough of the weight is on the front wheel",
  severity: "warning",
  since: 1,
  safety: true,
  needs: () => ({
    frame: slot("frame"),
    height: buildField("rider.height"),
    share: worked<number>("bike.front-share"),
    forward: worked<number>("bike.centre-forward"),
    wheelbase: worked<number>("geometry.wheelbase"),
    wanted: worked<number>("bike.centre-for-quarter"),
  }),
  test({ frame, height, share, forward, wheelbase, wanted }) {
    const said = `${showNumber(share.value, 1)} % of bicycle and rider rests on the front wheel (their centre is ${showQuantity(forward.value, "length", { digits: 0 })} in front of the rear axle, of ${showQuantity(wheelbase.value, "length", { digits: 0 })} of wheelbase)`;
    if (atLeast(share.value, least)) {
      return holds(`${said}, and at least ${least} % is asked for.`, (share.value - least) / least);
    }
    const missing = showQuantity(wanted.value - forward.value, "length", { digits: 0 });
    return fails(
      `${said}, and at least ${least} % is asked for: the centre would have to lie ${missing} farther forward. Bring the saddle forward or the bar lower and farther away, or fit a frame with a longer chainstay or a steeper seat tube.`,
      frame,
      [height],
      swaps("cockpit.stem", "frame"),
    );
  },
  explanation:
    "With too little weight in front the wheel skips and wanders, and lifts on a climb; with much of it in front the rear " +
    "wheel lifts under braking. The centre of mass is worked out from the contact points and the usual proportions of a " +
    "body, seated with both hands on the bar; luggage is left out. It is an estimate, good to a few per cent. The limit is " +
    "asked of a bicycle with rider and saddle as far back as they go. Riders of ordinary bicycles come to 35 to 50 %.",
  source:
    "25 % on the front wheel: TBIS 4210-2:2018, clause 4.7.5, the adoption of ISO 4210-2; the usual shares: common practice, no source",
  caution: "A front wheel with little weight on it neither steers nor brakes as the rider expects.",
  examples: {
    holds: `
${bike("Between the wheels", "chainstay: 440 mm; seat-angle: 73°", 90)}
`,
    fails: `
${bike("Far back", "chainstay: 360 mm; seat-angle: 58°", 35)}
`,
  },
});

/** All that the share follows from, with the numbers that make the difference. */
function bike(name: string, rearEnd: string, stem: number): string {
  return `part frame example.fell "Fell" {
  reach: 380 mm
  stack: 610 mm
  head-angle: 71°
  head-tube-length: 160 mm
  bottom-bracket-drop: 60 mm
  seat-tube-offset: 0 mm
  seat-tube-length: 520 mm
  ${rearEnd}
  mass: 2400 g
}
part fork example.fork "Fork" { axle-to-crown: 390 mm; fork-offset: 47 mm; mass: 900 g }
part headset example.bearings "Bearings" { lower-stack: 4 mm; upper-stack: 12 mm; mass: 120 g }
part stem example.stem "Stem ${stem}" { length: ${stem} mm; angle: 6°; clamp-height: 40 mm; mass: 150 g }
part handlebar example.bar "Bar" { bar: flat; rise: 0 mm; back-sweep: 0°; mass: 300 g }
part seatpost example.post "Post" { overall-length: 350 mm; setback: 10 mm; mass: 280 g }
part saddle example.saddle "Saddle" { height: 50 mm; clamp-to-sitting: 20 mm; mass: 300 g }
part crankset example.crank "Crank 175" { crank-length: 175 mm; mass: 800 g }
part tyre example.tyre "Tyre" { size: 40-622; measured-width: 40 mm; measured-height: 40 mm; mass: 500 g }

build example "${name}" {
  rider { height: 1850 mm; mass: 90 kg }
  frame: example.fell
  fork: example.fork
  headset: example.bearings
  cockpit { stem: example.stem { spacers-below: 20 mm }; handlebar: example.bar }
  seat { post: example.post { insertion: 120 mm }; saddle: example.saddle { rail-position: 0 mm } }
  drivetrain.crankset: example.crank
  front-wheel.tyre: example.tyre
  rear-wheel.tyre: example.tyre
}`;
}
