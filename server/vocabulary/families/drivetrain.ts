import { defineFamily } from "../define.ts";
import { count, length, number, quantity, text, toothCount, word, yesNo } from "../fields.ts";
import { shiftActuations } from "../words.ts";

/** Interfaces of the drivetrain. */

const hands = { right: "Right-hand thread.", left: "Left-hand thread." } as const;

export const driveFamily = defineFamily({
  name: "drive-family",
  noun: "a drive family",
  description:
    "Roller and tooth form that chain, rings and cogs share, or pitch and profile of a belt; equal speed counts are not enough.",
  fields: {
    drive: word({ chain: "A roller chain.", belt: "A toothed belt." }, "Whether it is chain or belt."),
    pitch: length("From one tooth to the next: 12.7 mm for a chain.", { lowest: 4, highest: 26 }),
    "inner-width": length("Gap between a chain's inner plates.", { lowest: 1.5, highest: 6 }),
    "outer-width": length("Width of a chain over its pins.", { lowest: 4, highest: 12 }),
    "roller-diameter": length("Diameter of a chain's rollers.", { lowest: 5, highest: 12 }),
    speeds: count("Number of cogs it is usual for.", { lowest: 1, highest: 14 }),
  },
});

export const freehubBody = defineFamily({
  name: "freehub-body",
  noun: "a freehub body",
  description: "The splines of a freehub body or the driver of a gear hub, on which cogs slide.",
  fields: {
    profile: text("Shape of the splines; bodies of one profile and different lengths differ by spacers only."),
    "body-length": length("Length of the splines that cogs may use.", { lowest: 3, highest: 60 }),
    "smallest-cog": toothCount("Fewest teeth of a cog that it can carry."),
    "lockring-thread": text("Thread of its lock-ring."),
    driver: yesNo("Whether it is the driver of a gear hub or a single-speed.", { omitted: "none" }),
  },
});

export const freewheelThread = defineFamily({
  name: "freewheel-thread",
  noun: "a freewheel thread",
  description:
    "The thread of a hub for a freewheel or a fixed cog; not the thread of a bottom bracket, which looks alike.",
  fields: {
    "thread-diameter": length("Outside diameter of the thread.", { lowest: 20, highest: 50 }),
    "thread-pitch": length("Pitch of the thread.", { lowest: 0.5, highest: 2 }),
    hand: word(hands, "Hand of the thread."),
    "lockring-diameter": length("Outside diameter of a lock-ring's left-hand thread, for fixed cogs.", {
      lowest: 20,
      highest: 50,
      omitted: "none",
    }),
  },
});

export const bottomBracketShell = defineFamily({
  name: "bottom-bracket-shell",
  noun: "a bottom-bracket shell",
  description: "The shell of the crank bearings: bore or thread, and width.",
  fields: {
    fit: word(
      { threaded: "Cups are screwed in.", pressed: "Cups or bearings are pressed in." },
      "How bearings are held.",
    ),
    bore: length("Diameter of the bore, or of the thread.", { lowest: 30, highest: 60 }),
    "thread-pitch": length("Pitch of the thread.", { lowest: 0.5, highest: 2, omitted: "none" }),
    "left-hand": word(hands, "Hand of the left cup's thread.", { omitted: "none" }),
    "right-hand": word(hands, "Hand of the right cup's thread.", { omitted: "none" }),
    "shell-width": length("Width of the shell.", { lowest: 50, highest: 140 }),
    "centre-offset": length("Distance of the shell's middle from the centre plane, positive to the drive side.", {
      lowest: -20,
      highest: 20,
      omitted: "none",
    }),
  },
});

export const spindle = defineFamily({
  name: "spindle",
  noun: "a spindle",
  description: "The axle of the cranks where the bearings and the crank arm hold it.",
  fields: {
    shape: word(
      {
        round: "A round hollow axle, with splines at its end.",
        stepped: "Round with one diameter at each side.",
        "square-taper": "A square taper, 2 degrees to a face.",
        splined: "Splined ends of a cartridge's own axle.",
        cottered: "A round axle with cotter pins.",
        "one-piece": "Axle and cranks of one piece.",
      },
      "Shape.",
    ),
    diameter: length("Diameter in the bearings; the drive side's of a stepped one.", { lowest: 10, highest: 40 }),
    "second-diameter": length("Diameter at the non-drive side of a stepped one.", {
      lowest: 10,
      highest: 40,
      omitted: "none",
    }),
    splines: count("Number of splines.", { lowest: 4, highest: 60, omitted: "none" }),
  },
});

export const ringMount = defineFamily({
  name: "ring-mount",
  noun: "a ring mount",
  description: "How a ring is fixed to the crank.",
  fields: {
    fixing: word(
      { bolts: "Bolts on a circle.", splines: "A splined or toothed seat on the crank, held by bolts or a ring." },
      "How it is held.",
    ),
    bolts: count("Number of bolts.", { lowest: 3, highest: 10, omitted: "none" }),
    "bolt-circle": length("Diameter of the circle through the bolts.", { lowest: 40, highest: 160, omitted: "none" }),
    even: yesNo("Whether the bolts are evenly spaced.", { omitted: "none" }),
    "smallest-ring": toothCount("Fewest teeth of a ring that the circle leaves room for."),
  },
});

export const derailleurMount = defineFamily({
  name: "derailleur-mount",
  noun: "a derailleur mount",
  description: "What a rear derailleur is fixed to: the threaded eye of a hanger, or the axle itself.",
  fields: {
    form: word(
      {
        "threaded-eye": "A threaded eye, of a hanger or of the frame, with a stop for the derailleur.",
        "direct-mount": "A bracket that replaces the upper link of the derailleur.",
        coaxial: "The derailleur straddles the dropout and turns round the axle, without a hanger.",
      },
      "Form.",
    ),
    "thread-diameter": length("Outside diameter of the thread.", { lowest: 5, highest: 30, omitted: "none" }),
    "thread-pitch": length("Pitch of the thread.", { lowest: 0.5, highest: 2.5, omitted: "none" }),
  },
});

export const hangerSeat = defineFamily({
  name: "hanger-seat",
  noun: "a hanger seat",
  description: "The end of a frame on which a replaceable hanger sits.",
  fields: {
    form: word(
      {
        coaxial: "Round the axle, through which it is centred and clamped.",
        "outside-face": "On the outer face of the dropout, bolted.",
        "inside-face": "On the inner face of the dropout, bolted.",
        slot: "In a slot of the dropout.",
      },
      "Form.",
    ),
    bore: length("Bore of the frame that a coaxial hanger enters.", { lowest: 10, highest: 30, omitted: "none" }),
    bolts: count("Number of its bolts.", { lowest: 1, highest: 4, omitted: "none" }),
  },
});

export const frontDerailleurMount = defineFamily({
  name: "front-derailleur-mount",
  noun: "a front-derailleur mount",
  description: "How a front derailleur is fixed to the frame.",
  fields: {
    form: word(
      {
        band: "A band round the seat tube.",
        "brazed-on": "A tab on the seat tube.",
        "direct-mount": "A threaded boss on the frame.",
        "shell-plate": "A plate behind the bottom-bracket cup.",
      },
      "Form.",
    ),
    "band-diameter": length("Diameter of the band.", { lowest: 25, highest: 45, omitted: "none" }),
  },
});

export const chainGuideMount = defineFamily({
  name: "chain-guide-mount",
  noun: "a chain-guide mount",
  description: "How a chain guide is fixed to the frame.",
  fields: {
    form: word(
      {
        tabs: "Tabs round the bottom-bracket shell.",
        band: "A band round the seat tube.",
        "shell-plate": "A plate behind the bottom-bracket cup.",
        "front-derailleur-mount": "The place of a front derailleur.",
      },
      "Form.",
    ),
    bolts: count("Number of bolts.", { lowest: 1, highest: 4, omitted: "none" }),
    "bolt-circle": length("Diameter of the circle through its bolts.", { lowest: 30, highest: 120, omitted: "none" }),
  },
});

export const shiftFamily = defineFamily({
  name: "shift-family",
  noun: "a shift family",
  description:
    "Controllers and derailleurs that are made to work together: by one cable pull, or by talking to each other.",
  fields: {
    actuation: word(shiftActuations, "What passes between them."),
    speeds: count("Number of cogs.", { lowest: 1, highest: 14, omitted: "none" }),
    "pull-per-click": length("Cable pulled by one click, on average.", { lowest: 0.5, highest: 12, omitted: "none" }),
    "actuation-ratio": number("Sideways movement for each millimetre of cable.", {
      lowest: 0.3,
      highest: 4,
      omitted: "none",
    }),
  },
});

export const pedalThread = defineFamily({
  name: "pedal-thread",
  noun: "a pedal thread",
  description: "Thread of pedal and crank; the left one is left-handed.",
  fields: {
    "thread-diameter": length("Outside diameter of the thread.", { lowest: 10, highest: 20 }),
    "thread-pitch": length("Pitch of the thread.", { lowest: 0.5, highest: 2 }),
  },
});

export const controlClamp = defineFamily({
  name: "control-clamp",
  noun: "a control clamp",
  description:
    "How a control is held on the bar: by a band of its own, by a clamp that it shares, or built into a lever.",
  fields: {
    form: word(
      {
        band: "A band of its own round the bar.",
        shared: "A fitting on the clamp of another control.",
        "built-in": "Built into the brake lever.",
        "bar-end": "An expander in the bar's end.",
        "stem-or-tube": "A boss or band on stem or frame tube.",
      },
      "Form.",
    ),
    diameter: length("Diameter of bar that the band fits.", { lowest: 15, highest: 40, omitted: "none" }),
  },
});

export const batteryType = defineFamily({
  name: "battery-type",
  noun: "a battery type",
  description: "A battery as the part that it feeds has to take it.",
  fields: {
    voltage: quantity("voltage", "Nominal voltage.", { lowest: 1, highest: 100 }),
    "round-cell": text("Name of the cell by IEC 60086, for one that is thrown away.", { omitted: "none" }),
  },
});

export const connector = defineFamily({
  name: "connector",
  noun: "a connector",
  description: "An electric connector of dynamo, lamp, battery or lead.",
  fields: {
    contacts: count("Number of contacts.", { lowest: 1, highest: 12 }),
  },
});
