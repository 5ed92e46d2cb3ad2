import { cosine, degrees, sine } from "../../calculations/shared/angles.ts";
import { say } from "../../calculations/shared/say.ts";
import type { Interval } from "../../values/types.ts";
import type { FactField } from "../../vocabulary/index.ts";

/**
 * What of a frame's chart follows from the rest of it: by plane geometry, where the frame stands as its maker drew it,
 * both axles higher than the crank axis by the bottom-bracket drop; and its travel by the leverage on its shock.
 * Millimetres and degrees; forward and up positive.
 */

export type FrameFact = FactField<"frame">;

/**
 * Reads a fact of the chart in its base unit; of the shock's size its stroke. The chainstay, which may be a range, is
 * handed over by itself.
 */
export type ReadChart = (fact: FrameFact) => number;

/** What a figure comes to, between two ends where something in it is a range, and how. */
export interface WorkedFigure extends Interval {
  readonly working: string;
}

/** One way of working a figure out; of some charts there are two readings. */
export interface ChartWay {
  readonly needs: readonly FrameFact[];
  /** Ends that are no numbers for figures of which no frame can be drawn. */
  work(read: ReadChart, chainstay: Interval): WorkedFigure;
}

export interface ChartRelation {
  readonly name: string;
  /** The figure that the others come to. */
  readonly claim: FrameFact;
  /** Figures that a chart states or does not: where it does not, nobody is asked for them. */
  readonly besides?: readonly FrameFact[];
  readonly dimension: "length" | "angle";
  /** How far apart the two may lie. */
  readonly tolerance: number;
  /** Whether it rests on both axles being equally high, which wheels of two sizes need not have. */
  readonly onLevelAxles: boolean;
  /** Ways of working it out. The claim has to agree with one of them. */
  readonly ways: readonly ChartWay[];
}

/**
 * Rounding an angle to half a degree moves a point 600 mm away by some 3 mm, and rounding four lengths to a millimetre
 * by 2 mm more.
 */
const lengthTolerance = 5;

/** Saddles are clamped at different heights, and the angle is rounded to half a degree. */
const angleTolerance = 1;

/** Stacks of lower bearings: next to nothing where they lie in the tube, some 15 mm outside of it. From memory. */
const lowerStack: Interval = { least: 0, greatest: 15 };

const effectiveTopTube: ChartRelation = {
  name: "effective top tube",
  claim: "top-tube-effective",
  dimension: "length",
  tolerance: lengthTolerance,
  onLevelAxles: false,
  ways: [
    {
      needs: ["reach", "stack", "effective-seat-angle"],
      work: (read) => topTube(read, read("effective-seat-angle"), 0),
    },
    {
      needs: ["reach", "stack", "seat-angle", "seat-tube-offset"],
      work: (read) => topTube(read, read("seat-angle"), read("seat-tube-offset")),
    },
  ],
};

const effectiveSeatAngle: ChartRelation = {
  name: "effective seat angle",
  claim: "effective-seat-angle",
  besides: ["effective-seat-angle-height"],
  dimension: "angle",
  tolerance: angleTolerance,
  onLevelAxles: false,
  ways: [
    {
      needs: ["seat-angle", "seat-tube-offset", "effective-seat-angle-height"],
      work: (read) => {
        const height = read("effective-seat-angle-height");
        const behind = behindCrankAxis(height, read("seat-angle"), read("seat-tube-offset"));
        const angle = degrees(Math.atan2(height, behind.distance));
        return exactly(
          angle,
          `${behind.working} = ${say(behind.distance, "mm", 1)} behind the crank axis at ${say(height, "mm")}, and arctangent of ${say(height)} ÷ ${say(behind.distance, "", 1)} = ${say(angle, "°", 1)}`,
        );
      },
    },
  ],
};

const bottomBracketDrop: ChartRelation = {
  name: "bottom-bracket drop",
  claim: "bottom-bracket-drop",
  besides: ["fork-axle-to-crown"],
  dimension: "length",
  tolerance: lengthTolerance,
  onLevelAxles: true,
  ways: [
    {
      needs: ["stack", "head-angle", "head-tube-length", "fork-axle-to-crown", "fork-offset"],
      work: (read) => {
        const [stack, angle, headTube] = [read("stack"), read("head-angle"), read("head-tube-length")];
        const [crown, offset] = [read("fork-axle-to-crown"), read("fork-offset")];
        const fork = Math.sqrt(crown ** 2 - offset ** 2);
        const height = (bearing: number): number =>
          stack - (headTube + bearing + fork) * sine(angle) + offset * cosine(angle);
        return {
          least: height(lowerStack.greatest),
          greatest: height(lowerStack.least),
          working: `stack ${say(stack)} − (head tube ${say(headTube)} + lower bearing ${lowerStack.least} to ${lowerStack.greatest} + fork √(${say(crown)}² − ${say(offset)}²)) × sin ${say(angle, "°")} + offset ${say(offset)} × cos ${say(angle, "°")}`,
        };
      },
    },
  ],
};

const frontCentre: ChartRelation = {
  name: "front centre",
  claim: "front-centre",
  dimension: "length",
  tolerance: lengthTolerance,
  onLevelAxles: true,
  ways: [
    {
      needs: ["reach", "stack", "head-angle", "fork-offset", "bottom-bracket-drop"],
      work: (read) => {
        const front = frontAxle(read);
        const drop = read("bottom-bracket-drop");
        const straight = Math.hypot(front.forward, drop);
        return exactly(
          straight,
          `${front.working}; √(${say(front.forward, "", 1)}² + drop ${say(drop)}²) = ${say(straight, "mm", 1)}`,
        );
      },
    },
  ],
};

const wheelbase: ChartRelation = {
  name: "wheelbase",
  claim: "wheelbase",
  dimension: "length",
  tolerance: lengthTolerance,
  onLevelAxles: true,
  ways: [
    {
      needs: ["reach", "stack", "head-angle", "fork-offset", "bottom-bracket-drop", "chainstay"],
      work: (read, chainstay) => {
        const { forward, working } = frontAxle(read);
        return betweenAxles(forward, working, chainstay, read("bottom-bracket-drop"));
      },
    },
    {
      needs: ["front-centre", "bottom-bracket-drop", "chainstay"],
      work: (read, chainstay) => {
        const [straight, drop] = [read("front-centre"), read("bottom-bracket-drop")];
        const forward = Math.sqrt(straight ** 2 - drop ** 2);
        const working = `front √(${say(straight)}² − ${say(drop)}²) = ${say(forward, "mm", 1)}`;
        return betweenAxles(forward, working, chainstay, drop);
      },
    },
  ],
};

/**
 * How far along from the one end to the other the average of a leverage may lie. It is the middle where leverage changes
 * evenly, and a third from either end where it bends as a parabola that is level at the other.
 */
const bend: Interval = { least: 1 / 3, greatest: 2 / 3 };

const rearTravel: ChartRelation = {
  name: "rear travel",
  claim: "rear-travel",
  besides: ["leverage-start", "leverage-end"],
  dimension: "length",
  // Leverage rounded to a tenth moves the travel by some 3 mm, a stroke to half a millimetre by 1 mm more.
  tolerance: lengthTolerance,
  onLevelAxles: false,
  ways: [
    {
      needs: ["shock-size", "leverage-start", "leverage-end"],
      work: (read) => {
        const [stroke, start, end] = [read("shock-size"), read("leverage-start"), read("leverage-end")];
        const average = (share: number): number => start + (end - start) * share;
        const ends = [average(bend.least), average(bend.greatest)].sort((a, b) => a - b);
        const [low, high] = [ends[0] ?? start, ends[1] ?? start];
        const between = low === high ? say(low) : `${say(low, "", 2)} to ${say(high, "", 2)}`;
        return {
          least: stroke * low,
          greatest: stroke * high,
          working: `stroke ${say(stroke)} × average leverage ${between} (${say(start)} at the start, ${say(end)} at the end)`,
        };
      },
    },
  ],
};

export const chartRelations: readonly ChartRelation[] = [
  effectiveTopTube,
  effectiveSeatAngle,
  bottomBracketDrop,
  frontCentre,
  wheelbase,
  rearTravel,
];

function exactly(value: number, working: string): WorkedFigure {
  return { least: value, greatest: value, working };
}

/** How far behind the crank axis a seat tube's axis lies at a height. */
function behindCrankAxis(
  height: number,
  angle: number,
  offset: number,
): { readonly distance: number; readonly working: string } {
  const less = offset === 0 ? "" : ` − offset ${say(offset)} ÷ sin ${say(angle, "°")}`;
  return {
    distance: (height * cosine(angle) - offset) / sine(angle),
    working: `${say(height)} ÷ tan ${say(angle, "°")}${less}`,
  };
}

function topTube(read: ReadChart, angle: number, offset: number): WorkedFigure {
  const reach = read("reach");
  const behind = behindCrankAxis(read("stack"), angle, offset);
  const length = reach + behind.distance;
  return exactly(length, `reach ${say(reach)} + stack ${behind.working} = ${say(length, "mm", 1)}`);
}

/**
 * How far the front axle lies in front of the crank axis. From the head tube's top the steering axis comes down to the
 * height of the axles, and the fork's offset leads on from there: no length of head tube, bearing or fork is needed.
 */
function frontAxle(read: ReadChart): { readonly forward: number; readonly working: string } {
  const [reach, stack, drop] = [read("reach"), read("stack"), read("bottom-bracket-drop")];
  const [angle, offset] = [read("head-angle"), read("fork-offset")];
  const forward = reach + ((stack - drop) * cosine(angle) + offset) / sine(angle);
  return {
    forward,
    working: `front: reach ${say(reach)} + (stack ${say(stack)} − drop ${say(drop)}) ÷ tan ${say(angle, "°")} + offset ${say(offset)} ÷ sin ${say(angle, "°")} = ${say(forward, "mm", 1)}`,
  };
}

function betweenAxles(front: number, working: string, chainstay: Interval, drop: number): WorkedFigure {
  const behind = (length: number): number => Math.sqrt(length ** 2 - drop ** 2);
  const [shortest, longest] = [behind(chainstay.least), behind(chainstay.greatest)];
  const ends = (one: number, other: number): string =>
    one === other ? say(one, "", 1) : `${say(one, "", 1)} to ${say(other, "", 1)}`;
  const [least, greatest] = [shortest + front, longest + front];
  return {
    least,
    greatest,
    working: `${working}; rear: √(chainstay ${ends(chainstay.least, chainstay.greatest)}² − drop ${say(drop)}²) = ${ends(shortest, longest)} mm; together ${ends(least, greatest)} mm`,
  };
}
