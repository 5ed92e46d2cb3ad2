import { defineSlot } from "../define.ts";
import { angle, length } from "../fields.ts";
import { controlSettings } from "./controls.ts";

/** What the rider sits on. */
export const seatSlots = [
  defineSlot({
    path: "seat.post",
    kinds: ["seatpost"],
    description: "The seatpost.",
    omitted: "unknown",
    settings: {
      insertion: length("Depth in the seat tube, from its top, as set.", {
        essential: true,
        group: "Set-up",
        highest: 500,
        deed: "Set the post {} deep",
        workedOutAs: "insertion-for-height",
      }),
      "cut-length": length("Overall length once cut; left out, the post stays as it is.", {
        group: "Set-up",
        lowest: 100,
        highest: 700,
        omitted: "none",
        deed: "Cut the post to {}",
      }),
      "travel-set": length("Dropper travel as set, where it can be changed.", {
        group: "Set-up",
        lowest: 20,
        highest: 300,
        omitted: "none",
        deed: "Set the dropper to {} of travel",
      }),
    },
  }),
  defineSlot({
    path: "seat.clamp",
    kinds: ["seat-clamp"],
    description: "The seat clamp; left out, there is none where the frame states `seat-clamp-diameter: none`.",
    omitted: "unknown",
    noneWhen: [[{ slot: "frame", fact: "seat-clamp-diameter", is: "none" }]],
  }),
  defineSlot({
    path: "seat.shim",
    kinds: ["seat-shim"],
    description: "A sleeve between post and seat tube.",
    omitted: "none",
  }),
  defineSlot({
    path: "seat.saddle",
    kinds: ["saddle"],
    description: "The saddle.",
    omitted: "unknown",
    settings: {
      "rail-position": length(
        "From the straight rail's middle to the clamp's middle, positive with the saddle backward.",
        {
          group: "Set-up",
          lowest: -60,
          highest: 60,
          deed: {
            positive: "Move the saddle back: clamp its rails {} in front of their middle",
            negative: "Move the saddle forward: clamp its rails {} behind their middle",
          },
        },
      ),
      tilt: angle("Tilt of the saddle from level, positive nose up.", {
        group: "Set-up",
        lowest: -30,
        highest: 30,
        deed: "Tilt the saddle to {}",
      }),
    },
  }),
  defineSlot({
    path: "seat.remote",
    kinds: ["remote"],
    description: "The remote of a dropper post; left out, there is none with a rigid post.",
    omitted: "unknown",
    noneWhen: [[{ slot: "seat.post", is: "none" }], [{ slot: "seat.post", fact: "dropper-travel", is: "none" }]],
    settings: controlSettings,
  }),
] as const;
