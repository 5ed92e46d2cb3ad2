import { end, type Joint } from "./define.ts";

const tested =
  "Each brake is squeezed hard for ten seconds alone and looked over for leaks before anyone rides; never with the rotor out.";

const brakeAdapterEnds: Joint["adapterEnds"] = [
  { field: "offers", torque: "caliper-torque" },
  { field: "sits-on", torque: "mounting-torque" },
];

/** Where the parts of the brakes meet each other, frame, fork and hubs. */
export const brakeJoints: readonly Joint[] = [
  {
    name: "front-caliper-mount",
    title: "the front brake on the fork",
    nature: "fastened",
    ends: [
      end("front-brake.caliper", "mount", { torque: "mounting-torque" }),
      end("fork", "brake-mount", { torque: "brake-torque" }),
    ],
    family: "brake-mount",
    adapter: "front-brake.adapter",
    adapterEnds: brakeAdapterEnds,
    settingsOwner: "front-brake.caliper",
    caution: tested,
  },
  {
    name: "rear-caliper-mount",
    title: "the rear brake on the frame",
    nature: "fastened",
    ends: [
      end("rear-brake.caliper", "mount", { torque: "mounting-torque" }),
      end("frame", "rear-brake-mount", { torque: "rear-brake-torque" }),
    ],
    family: "brake-mount",
    adapter: "rear-brake.adapter",
    adapterEnds: brakeAdapterEnds,
    settingsOwner: "rear-brake.caliper",
    caution: tested,
  },
  {
    name: "front-rotor-mount",
    title: "the front rotor on the hub",
    nature: "fastened",
    ends: [
      end("front-brake.rotor", "mount", { torque: "mounting-torque" }),
      end("front-wheel.hub", "rotor-mount", { torque: "rotor-torque" }),
    ],
    family: "rotor-mount",
    compound: "Threadlocker on bolts as supplied; grease on a lock-ring's thread only.",
    caution: "No grease or finger on the rotor's face.",
  },
  {
    name: "rear-rotor-mount",
    title: "the rear rotor on the hub",
    nature: "fastened",
    ends: [
      end("rear-brake.rotor", "mount", { torque: "mounting-torque" }),
      end("rear-wheel.hub", "rotor-mount", { torque: "rotor-torque" }),
    ],
    family: "rotor-mount",
    compound: "Threadlocker on bolts as supplied; grease on a lock-ring's thread only.",
    caution: "No grease or finger on the rotor's face.",
  },
  {
    name: "front-hydraulics",
    title: "the front lever and caliper",
    nature: "signal",
    ends: [end("front-brake.lever", "hydraulic-family"), end("front-brake.caliper", "hydraulic-family")],
    family: "hydraulic-family",
    caution: tested,
  },
  {
    name: "rear-hydraulics",
    title: "the rear lever and caliper",
    nature: "signal",
    ends: [end("rear-brake.lever", "hydraulic-family"), end("rear-brake.caliper", "hydraulic-family")],
    family: "hydraulic-family",
    caution: tested,
  },
  {
    name: "front-fluid",
    title: "the fluid of the front lever and caliper",
    nature: "signal",
    ends: [end("front-brake.lever", "brake-fluid"), end("front-brake.caliper", "brake-fluid")],
    family: "brake-fluid",
    caution: "Fluids are never mixed: seals swell and the brake fails.",
  },
  {
    name: "rear-fluid",
    title: "the fluid of the rear lever and caliper",
    nature: "signal",
    ends: [end("rear-brake.lever", "brake-fluid"), end("rear-brake.caliper", "brake-fluid")],
    family: "brake-fluid",
    caution: "Fluids are never mixed: seals swell and the brake fails.",
  },
  {
    name: "front-cable-pull",
    title: "the pull of the front lever and brake",
    nature: "signal",
    ends: [end("front-brake.lever", "brake-pull"), end("front-brake.caliper", "brake-pull")],
    caution: "A lever of the wrong pull brakes too little, or bottoms on the bar.",
  },
  {
    name: "rear-cable-pull",
    title: "the pull of the rear lever and brake",
    nature: "signal",
    ends: [end("rear-brake.lever", "brake-pull"), end("rear-brake.caliper", "brake-pull")],
    caution: "A lever of the wrong pull brakes too little, or bottoms on the bar.",
  },
  {
    name: "front-hose-lever",
    title: "the front hose at the lever",
    nature: "fastened",
    ends: [
      end("front-brake.hose", "lever-fitting"),
      end("front-brake.lever", "hose-fitting", { torque: "hose-torque" }),
    ],
    family: "hose-fitting",
    caution: tested,
  },
  {
    name: "rear-hose-lever",
    title: "the rear hose at the lever",
    nature: "fastened",
    ends: [end("rear-brake.hose", "lever-fitting"), end("rear-brake.lever", "hose-fitting", { torque: "hose-torque" })],
    family: "hose-fitting",
    caution: tested,
  },
  {
    name: "front-hose-caliper",
    title: "the front hose at the caliper",
    nature: "fastened",
    ends: [
      end("front-brake.hose", "caliper-fitting"),
      end("front-brake.caliper", "hose-fitting", { torque: "hose-torque" }),
    ],
    family: "hose-fitting",
    caution: tested,
  },
  {
    name: "rear-hose-caliper",
    title: "the rear hose at the caliper",
    nature: "fastened",
    ends: [
      end("rear-brake.hose", "caliper-fitting"),
      end("rear-brake.caliper", "hose-fitting", { torque: "hose-torque" }),
    ],
    family: "hose-fitting",
    caution: tested,
  },
  {
    name: "front-pads",
    title: "the pads in the front caliper",
    nature: "fastened",
    ends: [end("front-brake.pads", "pad-shape"), end("front-brake.caliper", "pad-shape")],
    family: "pad-shape",
  },
  {
    name: "rear-pads",
    title: "the pads in the rear caliper",
    nature: "fastened",
    ends: [end("rear-brake.pads", "pad-shape"), end("rear-brake.caliper", "pad-shape")],
    family: "pad-shape",
  },
];
