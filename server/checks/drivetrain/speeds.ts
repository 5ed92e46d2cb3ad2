import type { Severity } from "../../model/finding.ts";
import { fact, type Known, type Maybe, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable, type Verdict } from "../define.ts";
import { rearActuationNeeds, rearDerailleurActuation } from "../shared/actuation.ts";
import { rearCount, rearCountNeeds } from "../shared/rear-count.ts";
import { swaps } from "../shared/swaps.ts";

/** Derailleurs and chains for five to eight cogs are of one width. */
const alike = 8;

export default defineCheck({
  code: "drivetrain/speeds",
  title: "Cassette, derailleur and controller count the same speeds",
  severity: "error",
  since: 1,
  instances: [
    { name: "cassette", slot: "drivetrain.cassette" },
    { name: "rear-derailleur", slot: "drivetrain.rear-derailleur" },
    { name: "rear-controller", slot: "drivetrain.rear-controller" },
  ] as const,
  needs: ({ slot: path }) => ({
    ...rearCountNeeds,
    ...rearActuationNeeds,
    part: slot(path),
    stated: optional(fact(path, "speeds")),
    cassette: optional(slot("drivetrain.cassette")),
    derailleur: optional(slot("drivetrain.rear-derailleur")),
    derailleurSpeeds: optional(fact("drivetrain.rear-derailleur", "speeds")),
    controllerSpeeds: optional(fact("drivetrain.rear-controller", "speeds")),
    controllerActuation: optional(fact("drivetrain.rear-controller", "actuation")),
    hubGears: optional(fact("rear-wheel.hub", "gears")),
  }),
  test(facts, { name, slot: path }): Verdict {
    const { part, stated, cassette, derailleur, derailleurSpeeds, controllerSpeeds, cogs, hubGears } = facts;
    if (name === "cassette") {
      if (cogs.state !== "known")
        return cogs.state === "unknown" ? cannotTell(cogs) : notApplicable("it lists no cogs");
      if (stated.state === "none") return notApplicable(`${part.subject} states no number of speeds`);
      if (stated.state === "unknown") {
        return cogs.value.length === 1 ? notApplicable("one cog is one speed") : cannotTell(stated);
      }
      return listed(part, stated, cogs);
    }
    if (name === "rear-controller" && facts.controllerActuation.state === "none") {
      return notApplicable(`${part.subject} has no shift control, which is found as such`);
    }
    if (stated.state === "unknown") return cannotTell(stated);
    if (stated.state === "none") return notApplicable(`${part.subject} indexes no fixed number of speeds`);

    if (name === "rear-controller" && derailleur.state !== "known") {
      if (derailleur.state === "unknown") return cannotTell(derailleur);
      if (hubGears.state === "unknown") return cannotTell(hubGears);
      if (hubGears.state === "none") return notApplicable("the hub has one gear and there is no derailleur");
      if (stated.value === hubGears.value) {
        return holds(`${stated.subject} has ${stated.value} positions for the ${hubGears.value} gears of the hub.`);
      }
      return fails(
        `${stated.subject} has ${stated.value} positions, but ${hubGears.subject} has ${hubGears.value} gears inside: fit a controller made for ${hubGears.value}.`,
        part,
        [stated, hubGears],
        swaps("drivetrain.rear-controller", "rear-wheel.hub"),
      );
    }

    // A cassette that lists other cogs than it calls itself is one fault; what suits its list suits the cassette.
    if (cogs.state === "known" && cogs.value.length === stated.value && cogs.value.length > 1) {
      return holds(`${stated.subject} is made for ${stated.value} cogs, and ${cogs.subject} lists ${stated.value}.`);
    }
    const count = rearCount(facts);
    if (count.state === "unknown") return cannotTell(count);
    if (count.state === "none" || cassette.state !== "known") return notApplicable("there are no cogs");
    const what = name === "rear-derailleur" ? "is made for" : "clicks through";
    if (stated.value === count.value) {
      return holds(`${stated.subject} ${what} ${stated.value} cogs, and ${count.subject} has ${count.value}.`);
    }
    // A derailleur takes up the slack of a single cog as well as of twelve.
    if (count.value === 1 && name === "rear-derailleur") return notApplicable("with one cog it only takes up slack");

    const other = name === "rear-derailleur" ? controllerSpeeds : derailleurSpeeds;
    const agreed = other.state === "known" && other.value === stated.value ? other : undefined;
    // Where both agree and the cassette does not, that is one fault: it is found with the derailleur.
    if (agreed && name === "rear-controller") {
      return notApplicable(`it agrees with ${agreed.subject}, which is compared with the cassette`);
    }
    const actuation = rearDerailleurActuation(facts);
    const byCable = actuation.state === "known" && actuation.value === "cable";
    const more = stated.value > count.value;
    if (name === "rear-derailleur" && !agreed) {
      const easy = nominal(stated, count, controllerSpeeds);
      if (easy !== undefined && actuation.state === "unknown") return cannotTell(actuation);
      if (easy !== undefined && byCable) return holds(easy);
    }
    // By cable the limit screws stop what is too much, and people do run it so; a motor counts for itself.
    const byMotor = actuation.state === "known" && !byCable;
    const severity: Severity = more && !byMotor ? "warning" : "error";
    const apart = Math.abs(stated.value - count.value);
    const consequence = more
      ? severity === "warning"
        ? `the limit screws have to stop ${apart === 1 ? "a click" : `${apart} clicks`} too many`
        : "the steps do not fall on the cogs"
      : `${apart === 1 ? "one cog is" : `${apart} cogs are`} never reached`;
    if (agreed) {
      return fails(
        `${stated.subject} and ${agreed.subject} are made for ${stated.value} speeds, but ${count.subject} has ${count.value} cogs, so ${consequence}: fit a cassette of ${stated.value}, or a derailleur and a controller made for ${count.value}.`,
        cassette,
        [stated, agreed, count],
        swaps("drivetrain.cassette", "drivetrain.rear-derailleur", "drivetrain.rear-controller"),
        { severity },
      );
    }
    return fails(
      `${stated.subject} ${what} ${stated.value} cogs, but ${count.subject} has ${count.value}, so ${consequence}: fit a ${name.replace("-", " ")} made for ${count.value} speeds, or a cassette of ${stated.value}.`,
      part,
      [stated, count],
      swaps(path, "drivetrain.cassette"),
      { severity },
    );
  },
  explanation:
    "A controller has as many positions as it was made for, and an indexed derailleur is made for one spacing of cogs. " +
    "With fewer clicks than cogs some cogs are never reached; with more, the last clicks pull against a limit screw, " +
    "which strains the cable, and with motors do not fall on the cogs at all. Where a cassette's stated number of " +
    "speeds and its list of cogs differ, one of the two is a slip of the pen, and everything worked out from them is in " +
    "doubt. Equal counts are not enough: pull, ratio and spacing have to agree as well, which other checks ask. A " +
    "derailleur worked by cable counts nothing itself, so up to eight speeds its own number does not matter, nor with a " +
    "friction controller, which has no clicks and says speeds: none.",
  source: "common practice, no source",
  examples: {
    holds: `
part rear-derailleur example.eight "Eight" { speeds: 8; set-up: cable; power: none }
part shift-controller example.lever "Lever" { speeds: 8; actuation: cable }
part cassette example.cogs "11-32" { speeds: 8; cogs: 11-13-15-18-21-24-28-32 t }

build example "Eight all round" {
  drivetrain {
    rear-derailleur: example.eight
    rear-controller: example.lever
    cassette: example.cogs
  }
}
`,
    fails: `
part rear-derailleur example.eight "Eight" { speeds: 8; set-up: cable; power: none }
part shift-controller example.lever "Lever" { speeds: 7; actuation: cable }
part cassette example.cogs "11-32" { speeds: 8; cogs: 11-13-15-18-21-24-28-32 t }

build example "A click too few" {
  drivetrain {
    rear-derailleur: example.eight
    rear-controller: example.lever
    cassette: example.cogs
  }
}
`,
  },
});

/**
 * Why the number of a derailleur worked by cable does not matter here, if it does not: it counts nothing itself, and
 * stands for the width of its cage and its stroke.
 */
function nominal(stated: Known<number>, count: Known<number>, controller: Maybe<number>): string | undefined {
  if (controller.state === "none" && stated.value > count.value) {
    return `${stated.subject} is made for ${stated.value} cogs, and a friction controller stops it over ${count.value}.`;
  }
  if (Math.max(stated.value, alike) === Math.max(count.value, alike)) {
    return `${stated.subject} is made for ${stated.value} cogs and ${count.subject} has ${count.value}; up to ${alike} they are alike.`;
  }
  return undefined;
}

/** Whether a cassette lists as many cogs as it says it has. */
function listed(part: Known, stated: Known<number>, cogs: Known<readonly number[]>): Verdict {
  const count = cogs.value.length;
  if (stated.value === count) return holds(`${stated.subject} states ${stated.value} speeds and lists ${count} cogs.`);
  return fails(
    `${stated.subject} states ${stated.value} speeds, but lists ${count} cogs (${cogs.value.join("-")}): correct the one that is wrong.`,
    part,
    [stated, cogs],
    [
      { kind: "set-fact", slot: "drivetrain.cassette", fact: "speeds", value: String(count) },
      ...swaps("drivetrain.cassette"),
    ],
  );
}
