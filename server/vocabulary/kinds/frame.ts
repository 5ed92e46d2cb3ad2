import { defineKind } from "../define.ts";
import {
  angle,
  code,
  codes,
  count,
  length,
  quantity,
  quantityRange,
  text,
  toothCount,
  torque,
  word,
  words,
  yesNo,
} from "../fields.ts";
import { axleSeats, eitherSide, forbiddenThings, routings } from "../words.ts";
import { frameGeometryFields } from "./frame-geometry.ts";
import { frameSuspensionFields } from "./frame-suspension.ts";

/** The frame: what most other parts must agree with. Its geometry and suspension stand in files of their own. */
export const frame = defineKind({
  name: "frame",
  noun: "a frame",
  description: "The frame, with everything that is fixed to it for good.",
  caution:
    "Thin tubes are never clamped in a stand; a frame that was crashed or cracked is inspected before anything else.",
  fields: {
    size: text("Size as its maker calls it.", { group: "Identity", example: '"L"' }),
    motor: yesNo("Whether it holds a motor, whose own fit is outside what can be checked here.", {
      group: "Identity",
      omitted: "none",
    }),

    "hanger-seat": code("hanger-seat", "What its rear end takes as a replaceable hanger; `none` when it takes none.", {
      essential: true,
      group: "Fit",
      example: "coaxial-12",
    }),
    "derailleur-mount": code(
      "derailleur-mount",
      "What it offers to a derailleur without a replaceable hanger: a hanger that is part of it, or a direct mount.",
      { group: "Fit" },
    ),
    "derailleur-torque": torque("Torque of a derailleur in the frame's own hanger or direct mount."),
    "front-derailleur-mount": code(
      "front-derailleur-mount",
      "What it offers to a front derailleur; a plain seat tube is a band of its diameter, `none` means it takes none.",
      { essential: true, group: "Fit" },
    ),
    "front-derailleur-pull": word(
      {
        top: "The cable comes from above.",
        bottom: "The cable comes from below.",
        side: "The cable comes along the down tube to a side-pull derailleur.",
        any: "It can be routed to any.",
      },
      "Where the cable of a front derailleur comes from.",
      { group: "Fit" },
    ),
    "seat-tube-shape": word(
      { round: "Round where a band would sit.", shaped: "Not round, so that no band fits." },
      "Shape of the seat tube where a front derailleur's band would sit.",
      { group: "Fit" },
    ),
    "front-housing-stop": yesNo("Whether it has the housing stop that a side-pull or down-pull derailleur needs.", {
      group: "Fit",
    }),
    "front-derailleur-torque": torque("Torque of a front derailleur's band or bolt that the frame bears.", {
      highest: 15,
    }),
    "bottom-bracket-shell": code("bottom-bracket-shell", "Shell of the crank bearings, with its width.", {
      essential: true,
      group: "Fit",
    }),
    "shell-torque": torque("Torque of the cups that the shell bears.", { highest: 90 }),
    "chain-guide-mount": code("chain-guide-mount", "What it offers to a chain guide.", {
      group: "Fit",
      omitted: "none",
    }),
    chainline: quantityRange(
      "length",
      "allowed",
      "Chainlines that it is designed for, from the centre plane, positive to the drive side.",
      { essential: true, group: "Gearing", lowest: 30, highest: 80, example: "52 to 55 mm" },
    ),
    "largest-ring": toothCount("Most teeth of a single ring that clears its chainstay.", {
      essential: true,
      group: "Clearance",
    }),
    "largest-outer-ring": toothCount("Most teeth of the outer one of several rings; `none` when it takes one only.", {
      group: "Clearance",
    }),
    "largest-inner-ring": toothCount("Most teeth of the inner one of several rings.", { group: "Clearance" }),
    "crank-clearance": length("From the centre plane to the outside of its stays where the crank's end passes.", {
      group: "Clearance",
      highest: 150,
    }),
    "heel-clearance": length("From the centre plane to the outside of its stays where the heel passes.", {
      group: "Clearance",
      highest: 150,
    }),
    "belt-opening": yesNo("Whether its rear triangle opens to let a belt in.", { group: "Fit", omitted: "none" }),
    "belt-approved": yesNo("Whether its maker approves its stiffness for a belt.", { group: "Limits" }),

    dropout: word(
      {
        vertical: "The axle has one place.",
        horizontal: "The axle slides in slots that open forward or downward.",
        "track-end": "The axle slides in slots that open backward.",
        sliding: "The dropouts slide.",
        rocking: "The dropouts rock on a pivot.",
        eccentric: "The axle has one place; the crank axis moves in an eccentric shell.",
      },
      "Shape of the dropouts, which says how a chain without a derailleur is tensioned.",
      { essential: true, group: "Fit" },
    ),
    "rear-axle": code("axle", "Rear axle, with the width between the dropouts.", { essential: true, group: "Fit" }),
    "rear-hub-layout": code(
      "hub-layout",
      "Flange layout of rear hub it is made for, where one axle size has several.",
      {
        group: "Fit",
        omitted: "none",
      },
    ),
    "rear-axle-length": length("Length of thru axle it takes, under the head.", {
      group: "Fit",
      lowest: 80,
      highest: 260,
    }),
    "rear-axle-thread-pitch": length("Thread pitch of the thru axle it takes.", {
      group: "Fit",
      lowest: 0.5,
      highest: 2.5,
      example: "1 mm",
    }),
    "rear-axle-seat": word(axleSeats, "Shape of the seat under the thru axle's head.", { group: "Fit" }),
    "rear-axle-torque": torque("Torque of the rear axle that it bears.", { highest: 60, example: "12 to 15 N·m" }),

    "rear-bead-seats": codes("bead-seat", "Bead seats of the rear wheels that it takes.", {
      essential: true,
      group: "Fit",
      example: "622",
    }),
    "mixed-wheels": yesNo("Whether it may have front and rear wheels of different bead seats.", {
      group: "Limits",
      omitted: "none",
    }),
    "widest-tyre": length("Widest rear tyre, as measured, that its maker allows, its mud allowance included.", {
      essential: true,
      group: "Clearance",
      highest: 150,
    }),
    "stay-gap": length("Narrowest gap between its stays at the tyre's widest.", { group: "Clearance", highest: 180 }),
    "tallest-tyre": length("Greatest radius of rear tyre, from the axle, that clears bridge and seat tube.", {
      group: "Clearance",
      lowest: 100,
      highest: 420,
    }),
    "crown-clearance": length(
      "Greatest distance of a fork's crown or knobs from the steering axis that clears its tubes.",
      {
        group: "Clearance",
        highest: 150,
      },
    ),
    "control-clearance": length("Greatest distance of a lever from the steering axis that clears the top tube.", {
      group: "Clearance",
      highest: 400,
    }),
    "widest-tyre-with-mudguard": length("Widest rear tyre, as measured, under a mudguard.", {
      group: "Clearance",
      highest: 150,
    }),

    "rear-brake-mount": code("brake-mount", "What it offers to a rear brake.", { essential: true, group: "Brakes" }),
    "rear-native-rotor": length("Rotor that the brake mount takes without an adapter.", {
      group: "Brakes",
      lowest: 100,
      highest: 260,
    }),
    "rear-largest-rotor": length("Largest rotor that its maker allows.", {
      group: "Brakes",
      lowest: 100,
      highest: 260,
    }),
    "rear-least-rotor": length("Smallest rotor that its maker allows.", { group: "Brakes", lowest: 100, highest: 260 }),
    "rear-brake-torque": torque("Torque of the rear brake's mounting bolts.", { highest: 20 }),
    "rear-brake-clamped-thickness": length("Thickness of the stay that a flat mount's bolts pass through.", {
      group: "Brakes",
      lowest: 5,
      highest: 60,
    }),
    "rear-cable-stop": yesNo("Whether it has the cable stop that a rear cantilever needs.", { group: "Brakes" }),
    "rear-brake-reach": length("From a rim brake's bolt hole down to the middle of the rim's brake track.", {
      group: "Brakes",
      lowest: 20,
      highest: 120,
    }),
    "coaster-arm-allowed": yesNo("Whether the arm of a coaster brake may be clamped to its stay.", { group: "Brakes" }),
    "brake-routing": words(routings, "How a rear brake's hose or cable may run.", { group: "Fit" }),
    "shift-routing": words(routings, "How shift cables or wires may run.", { group: "Fit" }),
    "hose-entry": word(eitherSide, "Side on which the rear brake's hose enters.", { group: "Fit" }),
    "routing-system": code("routing-system", "System of bar, stem, spacers and headset for hoses inside.", {
      group: "Fit",
      omitted: "none",
    }),
    "battery-places": count("Places for a shift battery inside.", {
      group: "Electronics",
      lowest: 0,
      highest: 4,
      omitted: "none",
    }),

    "head-tube-upper": code("headset-upper", "Fit at the head tube's top, such as ZS44.", {
      essential: true,
      group: "Fit",
    }),
    "head-tube-lower": code("headset-lower", "Fit at the head tube's bottom, such as ZS56.", {
      essential: true,
      group: "Fit",
    }),
    "head-tube-upper-angle": angle(
      "Angle of the seat formed for an integrated upper bearing, where its outer face rests, such as 45 degrees.",
      { group: "Fit", lowest: 0, highest: 90 },
    ),
    "head-tube-lower-angle": angle(
      "Angle of the seat formed for an integrated lower bearing, where its outer face rests.",
      { group: "Fit", lowest: 0, highest: 90 },
    ),

    "seat-tube-bore": length("Diameter of seatpost that it takes.", {
      essential: true,
      group: "Fit",
      lowest: 20,
      highest: 40,
      example: "31.6 mm",
    }),
    "seat-clamp-diameter": length("Outside diameter at the seat clamp; `none` when the clamp is built in.", {
      group: "Fit",
      lowest: 24,
      highest: 50,
    }),
    "seat-clamp-torque": torque("Torque of the seat clamp that it bears.", { highest: 20, example: "5 to 6 N·m" }),
    "least-post-insertion": length("Least depth of the seatpost in the seat tube that its maker asks for.", {
      essential: true,
      group: "Limits",
      highest: 300,
    }),
    "greatest-post-insertion": length("Depth that a seatpost can reach before a bend, boss or pivot stops it.", {
      group: "Limits",
      highest: 500,
    }),

    "accessory-mounts": codes("accessory-mount", "Mounts for cages, mudguards, racks and stands.", { group: "Fit" }),
    "rear-rack-load": quantity("mass", "Greatest load of a rear rack.", {
      group: "Limits",
      unit: "kg",
      highest: 200_000,
      omitted: "none",
    }),
    "child-seat-load": quantity("mass", "Greatest mass of a child in a child seat; `none` where no seat is allowed.", {
      group: "Limits",
      unit: "kg",
      highest: 50_000,
    }),
    forbids: words(forbiddenThings, "What its maker forbids on it.", { group: "Limits", omitted: "none" }),

    ...frameGeometryFields,
    ...frameSuspensionFields,
  },
});
