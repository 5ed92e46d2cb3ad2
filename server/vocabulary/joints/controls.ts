import type { SlotPath } from "../index.ts";
import { end, type Joint } from "./define.ts";

type ControlSlot =
  | "drivetrain.rear-controller"
  | "drivetrain.front-controller"
  | "seat.remote"
  | "cockpit.remote"
  | "front-brake.lever"
  | "rear-brake.lever";

const canTurn =
  "Tight enough to hold and, where the maker says so, loose enough to turn on the bar in a fall; carbon bars by their own limit.";

function control<P extends ControlSlot>(slot: P, name: string, title: string, canShare: boolean): Joint {
  return {
    name,
    title,
    nature: "fastened",
    ends: [
      { slot, field: "mount", torque: "clamp-torque" },
      end("cockpit.handlebar", "control-diameter", { sizeOf: "diameter", torque: "control-clamp-torque" }),
    ],
    family: "control-clamp",
    settingsOwner: slot satisfies SlotPath,
    ...(canShare ? { shared: { setting: "clamp", offers: "clamp-offers" } } : {}),
    caution: canTurn,
  };
}

/** How controls are held on the bar. */
export const controlJoints: readonly Joint[] = [
  control("front-brake.lever", "front-lever-clamp", "the front brake's lever on the bar", false),
  control("rear-brake.lever", "rear-lever-clamp", "the rear brake's lever on the bar", false),
  control("drivetrain.rear-controller", "rear-controller-clamp", "the rear controller on the bar or a lever", true),
  control("drivetrain.front-controller", "front-controller-clamp", "the front controller on the bar or a lever", true),
  control("seat.remote", "seat-remote-clamp", "the dropper's remote on the bar or a lever", true),
  control("cockpit.remote", "cockpit-remote-clamp", "the lockout's remote on the bar or a lever", true),
  {
    name: "bell-clamp",
    title: "the bell on the bar",
    nature: "fastened",
    ends: [
      end("lighting.bell", "mount"),
      end("cockpit.handlebar", "control-diameter", { sizeOf: "diameter", torque: "control-clamp-torque" }),
    ],
    family: "control-clamp",
  },
  {
    name: "grips-bar",
    title: "the grips on the bar",
    nature: "fastened",
    ends: [
      end("cockpit.grips", "inside-diameter", { torque: "clamp-torque" }),
      end("cockpit.handlebar", "control-diameter", { torque: "control-clamp-torque" }),
    ],
    settingsOwner: "cockpit.grips",
  },
];
