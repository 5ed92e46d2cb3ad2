import { defineSlot } from "../define.ts";
import { count, length, slotReference, word, yesNo } from "../fields.ts";
import { controlSettings } from "./controls.ts";

/** Everything that turns the rear wheel and changes its gear. */
export const drivetrainSlots = [
  defineSlot({
    path: "drivetrain.rear-derailleur",
    kinds: ["rear-derailleur"],
    description: "The rear derailleur; `none` for a single-speed, a fixed wheel or a gear hub.",
    omitted: "unknown",
  }),
  defineSlot({
    path: "drivetrain.hanger",
    kinds: ["hanger"],
    description:
      "The replaceable hanger; left out, there is none where no derailleur or tensioner needs one, where the derailleur is set up as a direct mount, or where the frame states a `derailleur-mount` of its own or `hanger-seat: none`.",
    omitted: "unknown",
    noneWhen: [
      [
        { slot: "drivetrain.rear-derailleur", is: "none" },
        { slot: "drivetrain.chain-tensioner", is: "none" },
      ],
      [{ slot: "frame", fact: "derailleur-mount", is: "stated" }],
      [{ slot: "frame", fact: "hanger-seat", is: "none" }],
      [{ slot: "drivetrain.rear-derailleur", fact: "set-up", word: "direct-mount" }],
    ],
  }),
  defineSlot({
    path: "drivetrain.derailleur-adapter",
    kinds: ["derailleur-adapter"],
    description: "A piece between hanger and rear derailleur that changes the mount or lowers it.",
    omitted: "none",
  }),
  defineSlot({
    path: "drivetrain.front-derailleur",
    kinds: ["front-derailleur"],
    description: "The front derailleur; `none` for a single ring or a ring changed by hand.",
    omitted: "unknown",
    settings: {
      "band-shim": length("Thickness by which a shim enlarges the tube under the band, over the diameter.", {
        group: "Fit",
        highest: 10,
        omitted: "none",
        deed: { none: "Leave out the shim under the band", otherwise: "Put a shim of {} under the band" },
      }),
    },
  }),
  defineSlot({
    path: "drivetrain.cassette",
    kinds: ["cassette", "freewheel", "sprocket"],
    description: "The cogs on the rear wheel: a cassette, a freewheel, or one sprocket for a chain or a belt.",
    omitted: "unknown",
  }),
  defineSlot({
    path: "drivetrain.cassette-spacer",
    kinds: ["cassette-spacer"],
    description: "Spacers behind the cassette on the freehub body.",
    omitted: "none",
  }),
  defineSlot({
    path: "drivetrain.chain",
    kinds: ["chain", "belt"],
    description: "The chain, or the belt.",
    omitted: "unknown",
    settings: {
      links: count("Half-inch pitches once cut, the closure link counted as one.", {
        essential: true,
        group: "Set-up",
        lowest: 20,
        highest: 300,
        example: "116",
        deed: "Cut the chain to {} links",
        workedOutAs: "chain-links-needed",
      }),
    },
  }),
  defineSlot({
    path: "drivetrain.closure-link",
    kinds: ["closure-link"],
    description:
      "The link that closes the chain; left out, there is none where a pin or its own spring clip closes it, or with a belt.",
    omitted: "unknown",
    noneWhen: [
      [{ slot: "drivetrain.chain", is: "none" }],
      [{ slot: "drivetrain.chain", kind: "belt" }],
      [{ slot: "drivetrain.chain", fact: "closure", word: "pin" }],
      [{ slot: "drivetrain.chain", fact: "closure", word: "spring-clip" }],
    ],
    settings: {
      "used-before": yesNo("Whether it has been closed before.", {
        group: "Set-up",
        omitted: "none",
        deed: { no: "Fit a new closure link" },
      }),
    },
  }),
  defineSlot({
    path: "drivetrain.crankset",
    kinds: ["crankset"],
    description: "The cranks.",
    omitted: "unknown",
    settings: {
      "spindle-spacers-drive-side": length("Spacers on the spindle at the drive side.", {
        group: "Set-up",
        highest: 30,
        omitted: "none",
        deed: "Put {} of spacers on the spindle at the drive side",
      }),
      "spindle-spacers-non-drive-side": length("Spacers on the spindle at the non-drive side.", {
        group: "Set-up",
        highest: 30,
        omitted: "none",
        deed: "Put {} of spacers on the spindle at the non-drive side",
      }),
    },
  }),
  defineSlot({
    path: "drivetrain.chainring",
    kinds: ["chainring", "belt-ring"],
    description: "The only or outer ring, when it does not come with the cranks.",
    omitted: "unknown",
    noneWhen: [[{ slot: "drivetrain.crankset", fact: "rings", is: "stated" }]],
    settings: {
      "ring-spacers": length("Spacers between ring and crank, which move the ring inward.", {
        group: "Set-up",
        highest: 20,
        omitted: "none",
        deed: "Put {} of spacers between ring and crank",
      }),
      reversed: yesNo("Whether it is mounted with its outer face inward.", {
        group: "Set-up",
        omitted: "none",
        deed: { yes: "Mount the ring with its outer face inward", no: "Mount the ring with its outer face outward" },
      }),
    },
  }),
  defineSlot({
    path: "drivetrain.middle-chainring",
    kinds: ["chainring"],
    description: "The middle ring of three, when it does not come with the cranks.",
    omitted: "none",
  }),
  defineSlot({
    path: "drivetrain.inner-chainring",
    kinds: ["chainring"],
    description: "The inner ring of two or three, when it does not come with the cranks.",
    omitted: "none",
  }),
  defineSlot({
    path: "drivetrain.chain-guide",
    kinds: ["chain-guide"],
    description: "A guide that keeps the chain on its ring.",
    omitted: "none",
  }),
  defineSlot({
    path: "drivetrain.chain-tensioner",
    kinds: ["chain-tensioner"],
    description: "A tensioner for a chain without a derailleur.",
    omitted: "none",
  }),
  defineSlot({
    path: "drivetrain.bottom-bracket",
    kinds: ["bottom-bracket"],
    description: "The crank bearings.",
    omitted: "unknown",
    settings: {
      "shell-spacers-drive-side": length("Spacers between shell and cup at the drive side.", {
        group: "Set-up",
        highest: 30,
        omitted: "none",
        deed: "Put {} of spacers between shell and cup at the drive side",
      }),
      "shell-spacers-non-drive-side": length("Spacers between shell and cup at the non-drive side.", {
        group: "Set-up",
        highest: 30,
        omitted: "none",
        deed: "Put {} of spacers between shell and cup at the non-drive side",
      }),
    },
  }),
  defineSlot({
    path: "drivetrain.pedals",
    kinds: ["pedals"],
    description: "The pedals; `none` for a bicycle sold without.",
    omitted: "unknown",
  }),
  defineSlot({
    path: "drivetrain.rear-controller",
    kinds: ["shift-controller", "brake-lever"],
    description:
      "What changes the rear gears; a brake lever with a shift control built in is named here again, with `clamp` saying that it is the same one.",
    omitted: "unknown",
    noneWhen: [
      [
        { slot: "drivetrain.rear-derailleur", is: "none" },
        { slot: "rear-wheel.hub", fact: "gears", is: "none" },
      ],
    ],
    settings: controlSettings,
  }),
  defineSlot({
    path: "drivetrain.front-controller",
    kinds: ["shift-controller", "brake-lever"],
    description:
      "What changes the front gears; a brake lever with a shift control built in is named here again, with `clamp` saying that it is the same one.",
    omitted: "unknown",
    noneWhen: [[{ slot: "drivetrain.front-derailleur", is: "none" }]],
    settings: controlSettings,
  }),
  defineSlot({
    path: "drivetrain.rear-cable",
    kinds: ["cable", "wire"],
    description: "Cable and housing, or the wire, to the rear derailleur or gear hub.",
    omitted: "none",
    settings: {
      "housing-cut": length("Length of housing, all pieces together, once cut.", {
        group: "Set-up",
        highest: 5000,
      }),
    },
  }),
  defineSlot({
    path: "drivetrain.front-cable",
    kinds: ["cable", "wire"],
    description: "Cable and housing, or the wire, to the front derailleur.",
    omitted: "none",
    settings: {
      "housing-cut": length("Length of housing, all pieces together, once cut.", {
        group: "Set-up",
        highest: 5000,
      }),
    },
  }),
  defineSlot({
    path: "drivetrain.battery",
    kinds: ["battery"],
    description: "The battery that feeds derailleurs and controllers, when they share one.",
    omitted: "none",
    settings: {
      place: word(
        {
          seatpost: "In the seatpost.",
          "seat-tube": "In the seat tube.",
          "down-tube": "In or on the down tube.",
          steerer: "In the steerer.",
          derailleur: "On the derailleur.",
        },
        "Where it is fitted.",
        {
          group: "Set-up",
          deed: {
            seatpost: "Fit the battery in the seatpost",
            "seat-tube": "Fit the battery in the seat tube",
            "down-tube": "Fit the battery in or on the down tube",
            steerer: "Fit the battery in the steerer",
            derailleur: "Fit the battery on the derailleur",
          },
        },
      ),
      feeds: slotReference("Slot that it is fixed to, when it clips to a part.", { group: "Fit", omitted: "none" }),
    },
  }),
] as const;
