import { describe, expect, it } from "vitest";
import { placeOfSlot } from "../../server/calculations/shared/part-places.ts";
import { slotPaths } from "../../server/vocabulary/index.ts";

/** Points told apart by both of their numbers, and by the sums that are made of them. */
const marks = {
  frontAxle: { forward: 601, up: 31 },
  rearAxle: { forward: -431, up: 29 },
  hands: { forward: 509, up: 653 },
  saddle: { forward: -197, up: 711 },
  headTubeTop: { forward: 401, up: 587 },
  seatTubeTop: { forward: -127, up: 463 },
};
const crankAxis = { forward: 0, up: 0 };

/** Where each part is, next to which of these; what is not named here sits at the crank axis. */
const places: Readonly<Record<string, readonly string[]>> = {
  frontAxle: [
    ...["caliper", "adapter", "rotor", "hose", "pads"].map((part) => `front-brake.${part}`),
    ...slotPaths.filter((path) => path.startsWith("front-wheel.")),
    "carrying.front-rack",
    "carrying.front-mudguard",
  ],
  rearAxle: [
    ...["caliper", "adapter", "rotor", "hose", "pads"].map((part) => `rear-brake.${part}`),
    ...slotPaths.filter((path) => path.startsWith("rear-wheel.")),
    "drivetrain.cassette",
    "drivetrain.cassette-spacer",
    "drivetrain.rear-derailleur",
    "drivetrain.hanger",
    "drivetrain.derailleur-adapter",
    "drivetrain.chain-tensioner",
    "carrying.rear-rack",
    "carrying.rear-mudguard",
    "carrying.stand",
    "carrying.child-seat",
  ],
  hands: [
    "front-brake.lever",
    "rear-brake.lever",
    "drivetrain.rear-controller",
    "drivetrain.front-controller",
    "seat.remote",
    ...slotPaths.filter((path) => path.startsWith("cockpit.")),
    "lighting.front-lamp",
    "lighting.bell",
  ],
  saddle: ["seat.post", "seat.clamp", "seat.shim", "seat.saddle", "lighting.rear-lamp"],
};
/** Between several of them. */
const between = new Map([
  ["frame", { forward: (0 + 401 - 127) / 3, up: (0 + 587 + 463) / 3 }],
  ["rear-shock", { forward: -127 / 2, up: 463 / 2 }],
  ["fork", { forward: (601 + 401) / 2, up: (31 + 587) / 2 }],
  ["headset", marks.headTubeTop],
]);

describe("the place of a part", () => {
  const named = new Map(
    Object.entries(places).flatMap(([mark, paths]) =>
      paths.map((path) => [path, marks[mark as keyof typeof marks]] as const),
    ),
  );

  it.each(slotPaths.map((path) => [path]))("%s", (path) => {
    const { forward, up } = placeOfSlot(path, marks);
    const expected = between.get(path) ?? named.get(path) ?? crankAxis;
    expect(forward).toBeCloseTo(expected.forward, 9);
    expect(up).toBeCloseTo(expected.up, 9);
  });

  it("is given for slots that there are", () => {
    const paths = new Set<string>(slotPaths);
    expect([...named.keys(), ...between.keys()].filter((path) => !paths.has(path))).toEqual([]);
  });
});
