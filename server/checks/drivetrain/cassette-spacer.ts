import type { Repair } from "../../model/finding.ts";
import { fact, optional, slot } from "../../model/need.ts";
import { mate } from "../../model/standard.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionOf, showCode } from "../shared/codes.ts";
import { readEnd } from "../shared/end.ts";
import { fitBody, freehubNeeds, isSprocket } from "../shared/freehub.ts";
import { swaps } from "../shared/swaps.ts";

/** Spacers are rounded when they are sold; less than this is no difference to a lock-ring. */
const tolerance = 0.1;

export default defineCheck({
  code: "drivetrain/cassette-spacer",
  title: "A cassette narrower than its body has the right spacer behind it",
  severity: "error",
  since: 1,
  needs: () => ({
    ...freehubNeeds(),
    ownSpacer: optional(fact("drivetrain.cassette", "body-spacer")),
    spacer: optional(slot("drivetrain.cassette-spacer")),
    thickness: optional(fact("drivetrain.cassette-spacer", "thickness")),
    spacerBody: optional(fact("drivetrain.cassette-spacer", "freehub")),
  }),
  test({ cassette, cogBody, hub, bodies, fitted, ownSpacer, spacer, thickness, spacerBody }) {
    const cog = readEnd(cassette, cogBody, "freehub");
    const carrier = readEnd(hub, bodies, "freehub");
    if (cog.state === "empty" || carrier.state === "empty") return notApplicable("there are no cogs, or no rear hub");
    if (cog.state === "unasked" || cog.state === "none") return notApplicable(`${cog.part.subject} screws on`);
    if (cog.part && isSprocket(cog.part)) return notApplicable("the spacers of a single sprocket set its chainline");
    const unknown = [cog, carrier].flatMap((end) => (end.state === "unknown" ? [end.unknown] : []));
    if (unknown.length > 0) return cannotTell(...unknown);
    if (fitted.state === "unknown") return cannotTell(fitted);
    if (cog.state !== "known" || carrier.state !== "known") return notApplicable("the hub has no freehub body");

    const fit = fitBody(cog.fact.value, fitted.state === "known" ? fitted.value : carrier.fact.value, false);
    if (fit.state === "unknown") return cannotTell(fit.unknown);
    if (fit.state !== "fits") return notApplicable("the cassette does not fit the body, which is found as such");
    if (ownSpacer.state === "unknown") return cannotTell(ownSpacer);
    if (spacer.state === "unknown") return cannotTell(spacer);
    if (thickness.state === "unknown") return cannotTell(thickness);
    const needed = fit.longer + (ownSpacer.state === "known" ? ownSpacer.value : 0);
    const present = thickness.state === "known" ? thickness.value : 0;

    if (spacer.state === "known") {
      if (spacerBody.state === "unknown") return cannotTell(spacerBody);
      const shape = dimensionOf<string>(fit.body, "profile");
      if (
        spacerBody.state === "known" &&
        !mate(spacerBody.value, fit.body) &&
        (shape === undefined || dimensionOf<string>(spacerBody.value, "profile") !== shape)
      ) {
        return fails(
          `The spacer ${spacer.subject} is for ${showCode(spacerBody.value)}, but the cassette stands on ${showCode(fit.body)}: fit a spacer for those splines.`,
          spacer,
          [spacerBody, carrier.fact],
          swaps("drivetrain.cassette-spacer"),
        );
      }
    }
    if (atMost(Math.abs(present - needed), tolerance)) {
      return holds(
        needed > 0
          ? `${cog.part.subject} needs ${showQuantity(needed, "length")} of spacer on ${fit.body.code}, and has ${showQuantity(present, "length")}.`
          : `${cog.part.subject} needs no spacer on ${fit.body.code}, and has none.`,
      );
    }

    const [have, want] = showPair(present, needed, "length");
    const why =
      fit.longer > 0
        ? `${cog.part.subject} is made for ${showCode(cog.fact.value)}, and ${carrier.part.subject} carries the longer ${showCode(fit.body)}`
        : `${cog.part.subject} stands on ${showCode(fit.body)}`;
    const message =
      present < needed
        ? `${why}: it needs ${want} of spacer behind it, but ${present > 0 ? `has ${have}` : "has none"}, so that the lock-ring ends before it clamps. Fit a spacer of ${want}.`
        : `${why}: it needs ${needed > 0 ? `${want} of spacer` : "no spacer"}, but has ${have}, which leaves the lock-ring too little thread. ${needed > 0 ? `Fit a spacer of ${want}.` : "Leave the spacer out."}`;
    const repairs: Repair[] = [];
    if (spacer.state === "none") repairs.push({ kind: "insert-part", slot: "drivetrain.cassette-spacer" });
    else if (needed > tolerance) repairs.push(...swaps("drivetrain.cassette-spacer"));
    else repairs.push({ kind: "leave-empty", slot: "drivetrain.cassette-spacer" });
    return fails(
      message,
      spacer.state === "known" ? spacer : cog.part,
      [
        cog.fact,
        carrier.fact,
        ...(thickness.state === "known" ? [thickness] : []),
        ...(ownSpacer.state === "known" ? [ownSpacer] : []),
      ],
      [...repairs, ...swaps("drivetrain.cassette")],
    );
  },
  explanation:
    "The lock-ring presses the cogs against the shoulder of the body. A cassette made for a shorter body leaves a gap on " +
    "a longer one of the same splines: the lock-ring reaches the end of its thread before it clamps, the cogs rattle, " +
    "and shifting is out by the gap. A ring of just that thickness behind the largest cog fills it, commonly 1.85 mm " +
    "between the two common lengths. Some cassettes want a thin spacer even on the body they are made for. Too much " +
    "spacer is as bad: the lock-ring holds by too few turns.",
  source: "common practice, no source; 1.85 mm from memory",
  examples: {
    holds: `
part cassette example.ten "Ten 11-28" { freehub: splined-11t-short; cogs: 11-12-13-14-15-17-19-21-24-28 t }
part hub example.rear "Rear 142" { freehub: splined-11t-long }
part cassette-spacer example.ring "Ring 1.85" { thickness: 1.85 mm; freehub: splined-11t-long }

build example "Ten speeds on a long body" {
  drivetrain {
    cassette: example.ten
    cassette-spacer: example.ring
  }
  rear-wheel.hub: example.rear
}
`,
    fails: `
part cassette example.ten "Ten 11-28" { freehub: splined-11t-short; cogs: 11-12-13-14-15-17-19-21-24-28 t }
part hub example.rear "Rear 142" { freehub: splined-11t-long }

build example "Ten speeds on a long body, nothing behind them" {
  drivetrain.cassette: example.ten
  rear-wheel.hub: example.rear
}
`,
  },
});
