import { defineFamily } from "../define.ts";
import { length, quantity, text, word, yesNo } from "../fields.ts";
import { axleFastenings, wheelPositions } from "../words.ts";

/** Interfaces of the wheels. */

export const axle = defineFamily({
  name: "axle",
  noun: "an axle",
  description: "Axle and width between the dropouts, by which a hub fits a frame or fork.",
  fields: {
    diameter: length("Diameter of the axle where the dropouts hold it.", { lowest: 4, highest: 30 }),
    width: length("Width between the dropouts, which is the hub's over-locknut width.", { lowest: 70, highest: 220 }),
    fastening: word(axleFastenings, "What fastens it."),
    wheel: word(wheelPositions, "Wheel that it is used at, where it is used at one only.", { omitted: "none" }),
    recess: length("How far each end of the hub enters a recess, counted in the width.", {
      highest: 10,
      omitted: "none",
    }),
  },
});

export const hubLayout = defineFamily({
  name: "hub-layout",
  noun: "a hub layout",
  description: "Places of flanges, rotor and cogs in hubs that share an axle and a width but do not interchange.",
  fields: {
    "rotor-line": length("From the centre plane to the rotor's middle.", { lowest: 20, highest: 100 }),
    "cog-line": length("From the centre plane to the cassette's middle.", { lowest: 20, highest: 90, omitted: "none" }),
  },
});

export const beadSeat = defineFamily({
  name: "bead-seat",
  noun: "a bead seat",
  description: "Bead-seat diameter of tyre and rim, which must be one and the same: there is no tolerance.",
  fields: {
    diameter: length("Nominal bead-seat diameter.", { lowest: 80, highest: 700 }),
  },
});

export const tyreDesignation = defineFamily({
  name: "tyre-designation",
  noun: "a tyre designation",
  description: "Section width and bead seat of a tyre by ISO 5775-1, such as 61-622.",
  fields: {},
  composite: {
    separator: "-",
    halves: [
      { name: "section-width", dimension: "length" },
      { name: "bead-seat", family: "bead-seat" },
    ],
  },
});

export const rimKind = defineFamily({
  name: "rim-kind",
  noun: "a rim kind",
  description: "Shape of the rim's edge by ISO 5775-2, which says what tyres and pressures it bears.",
  fields: {
    letters: text("Letters by which it is marked."),
    "straight-side": yesNo("Whether its side walls have no hook."),
    tubeless: yesNo("Whether it is made for tyres without a tube."),
    "greatest-pressure": quantity("pressure", "Greatest pressure for any tyre on this kind of rim.", {
      highest: 16,
      omitted: "none",
    }),
    glued: yesNo("Whether tyres are glued onto it, with no edges that hold a bead.", { omitted: "none" }),
    "least-excess-width": length("Least amount by which a tyre has to be wider than the rim inside.", {
      highest: 20,
      omitted: "none",
    }),
  },
});

export const valveKind = defineFamily({
  name: "valve",
  noun: "a valve",
  description: "Kind of valve, with the hole that it needs in the rim.",
  fields: {
    "hole-diameter": length("Diameter of the hole in the rim.", { lowest: 5, highest: 10 }),
    thread: text("Thread of its stem."),
  },
});

export const spokeThread = defineFamily({
  name: "spoke-thread",
  noun: "a spoke thread",
  description: "Thread that spoke and nipple share.",
  fields: {
    diameter: length("Diameter of the spoke that is threaded.", { lowest: 1, highest: 4 }),
    "thread-pitch": length("Pitch of the thread.", { lowest: 0.3, highest: 1 }),
  },
});
