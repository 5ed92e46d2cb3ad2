import { defineSlot } from "../define.ts";
import { code, count, length, quantity, word, yesNo } from "../fields.ts";

/** How spokes are laced. Left and right are as seen from the saddle. */
const lacingSettings = {
  cross: count("How many spokes each one crosses, on both sides; 0 is radial.", {
    essential: true,
    group: "Set-up",
    lowest: 0,
    highest: 5,
    example: "3",
    deed: "Lace the spokes with {} crossings",
  }),
  "cross-drive-side": count("Crossings on the drive side, where the sides differ.", {
    group: "Set-up",
    lowest: 0,
    highest: 5,
    omitted: "none",
    deed: "Lace the drive side with {} crossings",
  }),
  "cross-non-drive-side": count("Crossings on the non-drive side, where the sides differ.", {
    group: "Set-up",
    lowest: 0,
    highest: 5,
    omitted: "none",
    deed: "Lace the non-drive side with {} crossings",
  }),
  lacing: word(
    {
      even: "As many spokes on either side, evenly spaced.",
      "two-to-one": "Twice as many spokes on one side.",
      paired: "Spokes in pairs at the rim.",
      "as-drilled": "As the hub of straight-pull spokes demands.",
    },
    "Pattern; only an even one has its spoke lengths worked out.",
    { group: "Set-up" },
  ),
  "length-drive-side": length("Length of the spokes on the drive side.", {
    group: "Set-up",
    lowest: 50,
    highest: 330,
    deed: "Take spokes of {} on the drive side",
    workedOutAs: "spoke-length-drive-side",
  }),
  "length-non-drive-side": length("Length of the spokes on the non-drive side.", {
    group: "Set-up",
    lowest: 50,
    highest: 330,
    deed: "Take spokes of {} on the non-drive side",
    workedOutAs: "spoke-length-non-drive-side",
  }),
  tension: quantity("force", "Spoke tension aimed at on the tighter side.", {
    group: "Set-up",
    lowest: 200,
    highest: 3000,
    deed: "Build the wheel to a tension of {}",
  }),
} as const;

/** The front wheel. */
export const frontWheelSlots = [
  defineSlot({
    path: "front-wheel.hub",
    kinds: ["hub", "built-wheel"],
    description: "The front hub, or a front wheel bought whole.",
    omitted: "unknown",
    settings: {
      "axle-fitted": code("axle", "Axle that the fitted end caps give, where the hub can have several.", {
        group: "Fit",
        omitted: "none",
        deed: "Fit the end caps for {}",
      }),
    },
  }),
  defineSlot({
    path: "front-wheel.rim",
    kinds: ["rim", "built-wheel"],
    description: "The front rim; a wheel bought whole is named here again.",
    omitted: "unknown",
  }),
  defineSlot({
    path: "front-wheel.spokes",
    kinds: ["spokes"],
    description: "The spokes of the front wheel; `none` for a wheel without spokes to lace, such as one bought whole.",
    omitted: "unknown",
    noneWhen: [[{ slot: "front-wheel.hub", kind: "built-wheel" }]],
    settings: lacingSettings,
  }),
  defineSlot({
    path: "front-wheel.nipples",
    kinds: ["nipples"],
    description: "The nipples of the front wheel.",
    omitted: "unknown",
    noneWhen: [[{ slot: "front-wheel.spokes", is: "none" }]],
    settings: {
      washers: length("Thickness of washers under the nipples.", { group: "Set-up", highest: 5, omitted: "none" }),
    },
  }),
  defineSlot({
    path: "front-wheel.tyre",
    kinds: ["tyre"],
    description: "The front tyre.",
    omitted: "unknown",
    settings: {
      pressure: quantity("pressure", "Pressure, cold.", {
        essential: true,
        group: "Set-up",
        lowest: 0.3,
        highest: 18,
        example: "1.6 bar",
        deed: "Inflate the tyre to {}",
        workedOutAs: "starting-pressure",
      }),
      "mounted-reversed": yesNo("Whether its tread is mounted against its arrow on purpose.", {
        group: "Set-up",
        omitted: "none",
        deed: { no: "Mount the tyre with its arrow", yes: "Mount the tyre against its arrow" },
      }),
    },
  }),
  defineSlot({
    path: "front-wheel.tube",
    kinds: ["tube"],
    description:
      "The inner tube; left out, there is none where a tubeless valve is fitted, in a tubular tyre, which brings its own, or in an airless one.",
    omitted: "unknown",
    noneWhen: [
      [{ slot: "front-wheel.valve", is: "present" }],
      [{ slot: "front-wheel.tyre", fact: "construction", word: "tubular" }],
      [{ slot: "front-wheel.tyre", fact: "construction", word: "airless" }],
    ],
  }),
  defineSlot({
    path: "front-wheel.valve",
    kinds: ["valve"],
    description: "The valve of a tyre without a tube.",
    omitted: "none",
  }),
  defineSlot({
    path: "front-wheel.sealant",
    kinds: ["sealant"],
    description: "Sealant in the tyre.",
    omitted: "none",
    settings: {
      amount: quantity("volume", "Amount in this wheel.", {
        group: "Set-up",
        highest: 500,
        deed: "Put in {} of sealant",
      }),
    },
  }),
  defineSlot({
    path: "front-wheel.rim-tape",
    kinds: ["rim-tape"],
    description: "Tape over the spoke holes; `none` for a rim without holes inside.",
    omitted: "unknown",
    settings: {
      turns: count("Times it is wound round.", { group: "Set-up", lowest: 1, highest: 4 }),
    },
  }),
  defineSlot({
    path: "front-wheel.axle",
    kinds: ["thru-axle", "quick-release", "axle-nuts"],
    description: "What holds the front wheel: a thru axle, a quick-release skewer, or nuts.",
    omitted: "unknown",
  }),
] as const;

/** The rear wheel. */
export const rearWheelSlots = [
  defineSlot({
    path: "rear-wheel.hub",
    kinds: ["hub", "built-wheel"],
    description: "The rear hub, or a rear wheel bought whole.",
    omitted: "unknown",
    settings: {
      "arm-fixed": yesNo(
        "Whether the arm of a coaster brake, or of a gear hub that needs one, is fixed to the frame.",
        { group: "Set-up", deed: { yes: "Fix the arm to the frame" } },
      ),
      "freehub-fitted": code("freehub-body", "Freehub body that is fitted, where the hub can carry several.", {
        group: "Fit",
        omitted: "none",
        deed: "Fit the freehub body {}",
      }),
      "axle-fitted": code("axle", "Axle that the fitted end caps give, where the hub can have several.", {
        group: "Fit",
        omitted: "none",
        deed: "Fit the end caps for {}",
      }),
    },
  }),
  defineSlot({
    path: "rear-wheel.rim",
    kinds: ["rim", "built-wheel"],
    description: "The rear rim; a wheel bought whole is named here again.",
    omitted: "unknown",
  }),
  defineSlot({
    path: "rear-wheel.spokes",
    kinds: ["spokes"],
    description: "The spokes of the rear wheel; `none` for a wheel without spokes to lace, such as one bought whole.",
    omitted: "unknown",
    noneWhen: [[{ slot: "rear-wheel.hub", kind: "built-wheel" }]],
    settings: lacingSettings,
  }),
  defineSlot({
    path: "rear-wheel.nipples",
    kinds: ["nipples"],
    description: "The nipples of the rear wheel.",
    omitted: "unknown",
    noneWhen: [[{ slot: "rear-wheel.spokes", is: "none" }]],
    settings: {
      washers: length("Thickness of washers under the nipples.", { group: "Set-up", highest: 5, omitted: "none" }),
    },
  }),
  defineSlot({
    path: "rear-wheel.tyre",
    kinds: ["tyre"],
    description: "The rear tyre.",
    omitted: "unknown",
    settings: {
      pressure: quantity("pressure", "Pressure, cold.", {
        essential: true,
        group: "Set-up",
        lowest: 0.3,
        highest: 18,
        example: "1.6 bar",
        deed: "Inflate the tyre to {}",
        workedOutAs: "starting-pressure",
      }),
      "mounted-reversed": yesNo("Whether its tread is mounted against its arrow on purpose.", {
        group: "Set-up",
        omitted: "none",
        deed: { no: "Mount the tyre with its arrow", yes: "Mount the tyre against its arrow" },
      }),
    },
  }),
  defineSlot({
    path: "rear-wheel.tube",
    kinds: ["tube"],
    description:
      "The inner tube; left out, there is none where a tubeless valve is fitted, in a tubular tyre, which brings its own, or in an airless one.",
    omitted: "unknown",
    noneWhen: [
      [{ slot: "rear-wheel.valve", is: "present" }],
      [{ slot: "rear-wheel.tyre", fact: "construction", word: "tubular" }],
      [{ slot: "rear-wheel.tyre", fact: "construction", word: "airless" }],
    ],
  }),
  defineSlot({
    path: "rear-wheel.valve",
    kinds: ["valve"],
    description: "The valve of a tyre without a tube.",
    omitted: "none",
  }),
  defineSlot({
    path: "rear-wheel.sealant",
    kinds: ["sealant"],
    description: "Sealant in the tyre.",
    omitted: "none",
    settings: {
      amount: quantity("volume", "Amount in this wheel.", {
        group: "Set-up",
        highest: 500,
        deed: "Put in {} of sealant",
      }),
    },
  }),
  defineSlot({
    path: "rear-wheel.rim-tape",
    kinds: ["rim-tape"],
    description: "Tape over the spoke holes; `none` for a rim without holes inside.",
    omitted: "unknown",
    settings: {
      turns: count("Times it is wound round.", { group: "Set-up", lowest: 1, highest: 4 }),
    },
  }),
  defineSlot({
    path: "rear-wheel.axle",
    kinds: ["thru-axle", "quick-release", "axle-nuts"],
    description: "What holds the rear wheel: a thru axle, a quick-release skewer, or nuts.",
    omitted: "unknown",
  }),
] as const;
