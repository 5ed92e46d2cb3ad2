import { defineCheck, fails, notApplicable } from "../define.ts";
import { asList, type OneOrMoreCodes, showCodes } from "../shared/codes.ts";
import { anyFact, anySlot, readEnd } from "../shared/end.ts";
import { jointNamed, judgeMating } from "../shared/mating.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/freewheel-thread",
  title: "The freewheel or fixed cog screws onto the hub",
  severity: "error",
  since: 1,
  needs: () => ({
    cogs: anySlot("drivetrain.cassette"),
    cogThread: anyFact<OneOrMoreCodes>("drivetrain.cassette", "thread"),
    hub: anySlot("rear-wheel.hub"),
    hubThread: anyFact<OneOrMoreCodes>("rear-wheel.hub", "freewheel-thread"),
    bodies: anyFact<OneOrMoreCodes>("rear-wheel.hub", "freehub"),
  }),
  test({ cogs, cogThread, hub, hubThread, bodies }) {
    const one = readEnd(cogs, cogThread, "thread");
    const other = readEnd(hub, hubThread, "freewheel-thread");
    // A hub that says which freehub bodies it carries has no thread, without having to say so.
    const carries = bodies.state === "known" && asList(bodies.value).length > 0 ? bodies : undefined;
    const without = other.state === "none" || (other.state === "unknown" && carries !== undefined);
    if (one.state === "known" && without && other.part) {
      return fails(
        `${one.part.subject} screws onto ${showCodes(one.fact.value)}, but ${other.part.subject} has no thread${carries ? `; it carries ${showCodes(carries.value)}` : ""}: fit ${carries ? "a cassette" : "other cogs"}, or a hub with that thread.`,
        one.part,
        [one.fact, ...(other.state === "none" ? [other.fact] : []), ...(carries ? [carries] : [])],
        swaps("drivetrain.cassette", "rear-wheel.hub"),
      );
    }
    if (one.state === "unknown" && other.state === "none") return notApplicable(`${other.part.subject} has no thread`);
    return judgeMating(
      jointNamed("freewheel-thread"),
      {
        one: "screws onto",
        other: "has",
        nothing: "has no thread for a freewheel or fixed cog",
        remedy: "fit one of the hub's thread; never force it, and never screw it onto the thread of a bottom bracket.",
      },
      one,
      other,
    );
  },
  explanation:
    "Freewheels and fixed cogs screw onto the hub, and pedalling tightens them. Threads of three countries differ by " +
    "tenths of a millimetre: a freewheel of one starts on a hub of another, then strips the soft hub under the first " +
    "hard push. Small freewheels have a smaller thread of their own. The thread of an English bottom bracket looks the " +
    "same and is not, being five thousandths of an inch smaller. A fixed cog also wants the left-hand thread of a " +
    "lock-ring outside it.",
  source: "Wikipedia, Cogset, for the ISO thread; the others from memory",
  caution:
    "A cog that strips its thread, or a fixed cog without its lock-ring, takes the drive or the brake away at once.",
  examples: {
    holds: `
part freewheel example.seven "Seven 14-28" { speeds: 7; cogs: 14-16-18-20-22-24-28 t; thread: 1.375x24 }
part hub example.rear "Rear 126" { freehub: none; freewheel-thread: 1.375x24 }

build example "A freewheel on its thread" {
  drivetrain.cassette: example.seven
  rear-wheel.hub: example.rear
}
`,
    fails: `
part freewheel example.seven "Seven 14-28" { speeds: 7; cogs: 14-16-18-20-22-24-28 t; thread: 1.375x24 }
part hub example.rear "Old rear" { freehub: none; freewheel-thread: 34.7x1 }

build example "A freewheel on a French hub" {
  drivetrain.cassette: example.seven
  rear-wheel.hub: example.rear
}
`,
  },
});
