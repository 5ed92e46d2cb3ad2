import type { KindName, SlotPath } from "../../vocabulary/index.ts";

/** Something that has to be so for a part to have no use. */
export type Condition =
  | { readonly slot: SlotPath; readonly is: "present" | "absent" | { readonly kind: KindName } }
  /** A fact of whatever part is there: one of these words, or stated to be none, as it is where there is no part. */
  | { readonly slot: SlotPath; readonly fact: string; readonly is: readonly string[] };

/** A slot, and when what stands in it has no use: when all conditions are met. */
export interface Idle {
  readonly name: string;
  readonly slot: SlotPath;
  readonly when: readonly Condition[];
  /** Where the part cannot even be mounted; the others are in nobody's way. */
  readonly unmountable?: true;
  /** The reason, for a sentence. */
  readonly because: string;
  readonly instead: string;
}

/** Parts that other parts make idle, and no check of their fit asks for: there is nothing for them to fit. */
export const idleParts: readonly Idle[] = [
  {
    name: "tensioner-beside-derailleur",
    slot: "drivetrain.chain-tensioner",
    when: [{ slot: "drivetrain.rear-derailleur", is: "present" }],
    because: "the rear derailleur keeps the chain taut already",
    instead: "Leave it out.",
  },
  {
    name: "link-beside-pin",
    slot: "drivetrain.closure-link",
    when: [{ slot: "drivetrain.chain", fact: "closure", is: ["pin"] }],
    because: "the chain is closed with a pin",
    instead: "Leave it out, or fit a chain that is closed with a link.",
  },
  {
    name: "link-beside-belt",
    slot: "drivetrain.closure-link",
    when: [{ slot: "drivetrain.chain", is: { kind: "belt" } }],
    because: "a belt is one closed loop",
    instead: "Leave it out.",
  },
  {
    name: "remote-of-rigid-post",
    slot: "seat.remote",
    when: [{ slot: "seat.post", fact: "dropper-travel", is: ["none"] }],
    because: "the seatpost does not drop",
    instead: "Leave it out, or fit a dropper.",
  },
  {
    name: "remote-of-post-with-lever",
    slot: "seat.remote",
    when: [{ slot: "seat.post", fact: "control", is: ["lever"] }],
    because: "the seatpost is released by a lever under the saddle",
    instead: "Leave it out, or fit a dropper that is worked by a remote.",
  },
  {
    name: "remote-of-rigid-fork",
    slot: "cockpit.remote",
    when: [
      { slot: "cockpit.remote", fact: "serves", is: ["fork"] },
      { slot: "fork", fact: "travel", is: ["none"] },
    ],
    because: "it works the fork, which is rigid",
    instead: "Leave it out, or fit a suspension fork.",
  },
  {
    name: "remote-of-no-shock",
    slot: "cockpit.remote",
    when: [
      { slot: "cockpit.remote", fact: "serves", is: ["shock"] },
      { slot: "rear-shock", is: "absent" },
    ],
    because: "it works the rear shock, and there is none",
    instead: "Leave it out.",
  },
  {
    name: "remote-of-nothing-sprung",
    slot: "cockpit.remote",
    when: [
      { slot: "cockpit.remote", fact: "serves", is: ["both"] },
      { slot: "fork", fact: "travel", is: ["none"] },
      { slot: "rear-shock", is: "absent" },
    ],
    because: "it works fork and shock, and neither end is sprung",
    instead: "Leave it out.",
  },
  {
    name: "shock-in-rigid-frame",
    slot: "rear-shock",
    when: [{ slot: "frame", fact: "rear-travel", is: ["none"] }],
    unmountable: true,
    because: "the frame's rear end is rigid",
    instead: "Leave it out, or fit the frame that it is for.",
  },
  {
    name: "battery-of-nothing",
    slot: "drivetrain.battery",
    when: [
      { slot: "drivetrain.rear-derailleur", fact: "power", is: ["none"] },
      { slot: "drivetrain.rear-controller", fact: "power", is: ["none"] },
      { slot: "drivetrain.front-controller", fact: "power", is: ["none"] },
      { slot: "drivetrain.front-derailleur", fact: "actuation", is: ["cable", "none"] },
    ],
    because: "neither derailleur nor controller takes power",
    instead: "Leave it out.",
  },
  {
    name: "cable-of-electronic-derailleur",
    slot: "drivetrain.rear-cable",
    when: [
      { slot: "drivetrain.rear-cable", is: { kind: "cable" } },
      { slot: "drivetrain.rear-derailleur", fact: "set-up", is: ["electronic"] },
    ],
    because: "the rear derailleur is moved by a motor",
    instead: "Leave it out, or fit a derailleur worked by cable.",
  },
  {
    name: "front-rotor-beside-rim-brake",
    slot: "front-brake.rotor",
    when: [{ slot: "front-brake.caliper", is: { kind: "rim-brake" } }],
    because: "the front brake works on the rim",
    instead: "Leave it out, or fit a disc brake.",
  },
  {
    name: "rear-rotor-beside-rim-brake",
    slot: "rear-brake.rotor",
    when: [{ slot: "rear-brake.caliper", is: { kind: "rim-brake" } }],
    because: "the rear brake works on the rim",
    instead: "Leave it out, or fit a disc brake.",
  },
  {
    name: "front-valve-beside-tube",
    slot: "front-wheel.valve",
    when: [{ slot: "front-wheel.tube", is: "present" }],
    because: "the tube has a valve of its own",
    instead: "Leave out the valve, or the tube.",
  },
  {
    name: "rear-valve-beside-tube",
    slot: "rear-wheel.valve",
    when: [{ slot: "rear-wheel.tube", is: "present" }],
    because: "the tube has a valve of its own",
    instead: "Leave out the valve, or the tube.",
  },
  {
    name: "dynamo-of-no-lamp",
    slot: "lighting.dynamo",
    when: [
      { slot: "lighting.front-lamp", is: "absent" },
      { slot: "lighting.rear-lamp", is: "absent" },
    ],
    because: "there is no lamp for it to feed",
    instead: "Leave it out, or name the lamps.",
  },
  {
    name: "hanger-of-nothing",
    slot: "drivetrain.hanger",
    when: [
      { slot: "drivetrain.rear-derailleur", is: "absent" },
      { slot: "drivetrain.chain-tensioner", is: "absent" },
    ],
    because: "there is neither a derailleur nor a tensioner to hang on it",
    instead: "Leave it out, unless the frame needs it to be whole.",
  },
  {
    name: "adapter-of-no-derailleur",
    slot: "drivetrain.derailleur-adapter",
    when: [{ slot: "drivetrain.rear-derailleur", is: "absent" }],
    because: "there is no rear derailleur",
    instead: "Leave it out.",
  },
];
