import type { Known } from "../../model/need.ts";
import { mate } from "../../model/standard.ts";
import { showSeveral } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { asList, dimensionFact, dimensionOf, type OneOrMoreCodes, showCode, showCodes } from "../shared/codes.ts";
import { readEnd } from "../shared/end.ts";
import { fitBody, freehubNeeds, isSprocket } from "../shared/freehub.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/freehub-body",
  title: "The cogs fit the freehub body",
  severity: "error",
  since: 1,
  needs: freehubNeeds,
  test({ cassette, cogBody, cogThread, cogs, hub, bodies, hubThread, fitted }) {
    const cog = readEnd(cassette, cogBody, "freehub");
    const carrier = readEnd<OneOrMoreCodes>(hub, bodies, "freehub");
    if (cog.state === "empty" || carrier.state === "empty") return notApplicable("there are no cogs, or no rear hub");
    if (cog.state === "unasked" || cog.state === "none") return notApplicable(`${cog.part.subject} screws on`);
    if (cog.state === "unknown") {
      // A sprocket that states its thread screws on, whether or not it says that it has no splines.
      return cogThread.state === "known" ? notApplicable(`${cogThread.subject} screws on`) : cannotTell(cog.unknown);
    }
    const made = cog.fact.value;
    // A hub that states the thread of a freewheel has no freehub body, without having to say so.
    const threaded = carrier.state === "unknown" && carrier.part !== undefined && hubThread.state === "known";
    if (carrier.state === "unknown" && !threaded) return cannotTell(carrier.unknown);
    if (carrier.state !== "known") {
      const thread = hubThread.state === "known" ? ` but the thread ${showCode(hubThread.value)}` : "";
      return fails(
        `${cog.part.subject} slides onto ${showCode(made)}, but ${carrier.part?.subject ?? "the hub"} has no freehub body${thread}: fit a hub that carries ${made.code}, or cogs that screw on.`,
        cog.part,
        [
          cog.fact,
          ...(hubThread.state === "known" ? [hubThread] : []),
          ...(carrier.state === "none" ? [carrier.fact] : []),
        ],
        swaps("rear-wheel.hub", "drivetrain.cassette"),
      );
    }
    if (fitted.state === "unknown") return cannotTell(fitted);

    const offered = asList(carrier.fact.value);
    if (fitted.state === "known" && !offered.some((body) => mate(body, fitted.value))) {
      const better = offered.find((body) => fitBody(made, body, isSprocket(cog.part)).state === "fits");
      return fails(
        `The build fits ${carrier.part.subject} with ${showCode(fitted.value)}, but it carries ${showCodes(offered)} only.`,
        carrier.part,
        [fitted, carrier.fact],
        [
          ...(better
            ? [{ kind: "set-setting", slot: "rear-wheel.hub", setting: "freehub-fitted", value: better.code } as const]
            : []),
          ...swaps("rear-wheel.hub"),
        ],
      );
    }

    const body: Known<OneOrMoreCodes> = fitted.state === "known" ? fitted : carrier.fact;
    const fit = fitBody(made, body.value, isSprocket(cog.part));
    if (fit.state === "unknown") return cannotTell(fit.unknown);
    if (fit.state !== "fits") {
      const another =
        fitted.state === "known"
          ? offered.find((option) => fitBody(made, option, isSprocket(cog.part)).state === "fits")
          : undefined;
      const [short = ""] = fit.state === "short" ? showSeveral([fit.short], "length") : [];
      return fails(
        fit.state === "short"
          ? `${cog.part.subject} needs ${showCode(made)}, and ${carrier.part.subject} carries ${showCode(fit.body)}, which has the same splines but is ${short} too short: the lock-ring would not hold it. Fit a hub or body with ${made.code}, or a cassette for ${fit.body.code}.`
          : `${cog.part.subject} slides onto ${showCode(made)}, but ${carrier.part.subject} carries ${showCodes(body.value)}: fit a body or hub with ${made.code}, or a cassette for what the hub carries.`,
        cog.part,
        [cog.fact, body],
        [
          ...(another
            ? [{ kind: "set-setting", slot: "rear-wheel.hub", setting: "freehub-fitted", value: another.code } as const]
            : []),
          ...swaps("drivetrain.cassette", "rear-wheel.hub"),
        ],
      );
    }

    const least = dimensionOf<number>(fit.body, "smallest-cog");
    if (least !== undefined) {
      if (cogs.state === "unknown") return cannotTell(cogs);
      if (cogs.state === "known") {
        const smallest = Math.min(...cogs.value);
        if (smallest < least) {
          const stated = dimensionFact(fit.body, "smallest-cog");
          return fails(
            `Smallest cog ${smallest} t, but ${showCode(fit.body)} carries none with fewer than ${least} t: fit a cassette that starts with ${least} t or more, or a body for ${smallest} t.`,
            cog.part,
            [cogs, body, ...(stated ? [stated] : [])],
            swaps("drivetrain.cassette", "rear-wheel.hub"),
          );
        }
      }
    }
    return holds(
      fit.longer > 0
        ? `${cog.part.subject} is made for ${showCode(made)}; ${carrier.part.subject} carries ${showCode(fit.body)}, which has the same splines and is longer.`
        : `${cog.part.subject} slides onto ${showCode(made)}, and ${carrier.part.subject} carries ${fit.body.code}.`,
    );
  },
  explanation:
    "Cogs slide onto splines whose shape differs from one kind of body to the next, and nothing adapts one to another. " +
    "Bodies of one shape come in different lengths: a narrower cassette goes on a longer body with a spacer behind it, " +
    "but a wide one on a short body cannot be held by its lock-ring. A body also decides the smallest cog, since the " +
    "cog has to be larger than the body it stands on. Many hubs can carry one of several bodies, which are swapped " +
    "with the hub's own spare part. Freewheels and fixed cogs screw on and are asked about elsewhere.",
  source: "common practice, no source; body lengths from memory",
  examples: {
    holds: `
part cassette example.road "Road 11-30" { freehub: splined-11t-short; cogs: 11-12-13-14-15-17-19-21-24-27-30 t }
part hub example.rear "Rear 130" { freehub: splined-11t-long }

build example "A narrow cassette on a long body" {
  drivetrain.cassette: example.road
  rear-wheel.hub: example.rear
}
`,
    fails: `
part cassette example.wide "Wide 10-51" { freehub: fine-splined-10t; cogs: 10-12-14-16-18-21-24-28-33-39-45-51 t }
part hub example.rear "Rear 142" { freehub: splined-11t-short, stepped-driver }

build example "Splines that do not meet" {
  drivetrain.cassette: example.wide
  rear-wheel.hub: example.rear
}
`,
  },
});
