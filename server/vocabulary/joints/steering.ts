import { end, type Joint } from "./define.ts";

const steering =
  "Preload with the stem loose, then its bolts in turns; faceplate gaps even; no play and no slip before anyone rides.";

/** Where headset, fork, stem and bar meet. */
export const steeringJoints: readonly Joint[] = [
  {
    name: "headset-upper",
    title: "the upper headset in the head tube",
    nature: "fastened",
    ends: [end("headset", "upper"), end("frame", "head-tube-upper")],
    family: "headset-upper",
    compound: "Grease under cups in metal; carbon as its maker says.",
  },
  {
    name: "headset-lower",
    title: "the lower headset in the head tube",
    nature: "fastened",
    ends: [end("headset", "lower"), end("frame", "head-tube-lower")],
    family: "headset-lower",
    compound: "Grease under cups in metal; carbon as its maker says.",
  },
  {
    name: "headset-steerer",
    title: "the upper headset round the steerer",
    nature: "running",
    ends: [end("headset", "upper", { half: "steerer-diameter" }), end("fork", "steerer-diameter")],
  },
  {
    name: "crown-race",
    title: "the crown race on the fork",
    nature: "fastened",
    ends: [end("headset", "lower", { half: "crown-race" }), end("fork", "crown-race")],
    family: "crown-race",
  },
  {
    name: "stem-steerer",
    title: "the stem on the steerer",
    nature: "fastened",
    ends: [
      end("cockpit.stem", "steerer-clamp", { torque: "steerer-torque" }),
      end("fork", "steerer-diameter", { torque: "steerer-clamp-torque" }),
    ],
    settingsOwner: "cockpit.stem",
    compound: "Dry, or friction paste on carbon where both makers allow it; no grease.",
    caution: steering,
  },
  {
    name: "spacers-steerer",
    title: "the spacers on the steerer",
    nature: "fastened",
    ends: [end("cockpit.spacers", "inside-diameter"), end("fork", "steerer-diameter")],
    settingsOwner: "cockpit.stem",
  },
  {
    name: "stem-bar",
    title: "the bar in the stem",
    nature: "fastened",
    ends: [
      end("cockpit.handlebar", "clamp-diameter", { torque: "stem-clamp-torque" }),
      end("cockpit.stem", "bar-clamp", { torque: "bar-torque" }),
    ],
    settingsOwner: "cockpit.handlebar",
    compound: "Dry, or friction paste on carbon where both makers allow it; no grease.",
    caution: steering,
  },
  {
    name: "routing-bar-stem",
    title: "hidden hoses in bar and stem",
    nature: "covers",
    ends: [end("cockpit.handlebar", "routing-system"), end("cockpit.stem", "routing-system")],
    family: "routing-system",
  },
  {
    name: "routing-stem-spacers",
    title: "hidden hoses in stem and spacers",
    nature: "covers",
    ends: [end("cockpit.stem", "routing-system"), end("cockpit.spacers", "routing-system")],
    family: "routing-system",
  },
  {
    name: "routing-stem-headset",
    title: "hidden hoses in stem and headset",
    nature: "covers",
    ends: [end("cockpit.stem", "routing-system"), end("headset", "routing-system")],
    family: "routing-system",
  },
  {
    name: "routing-headset-frame",
    title: "hidden hoses through headset and frame",
    nature: "covers",
    ends: [end("headset", "routing-system"), end("frame", "routing-system")],
    family: "routing-system",
  },
];
