import { describe, expect, test } from "vitest";
import { plain } from "../../server/reports/paint.ts";
import { slotSuggestionsJson } from "../../server/reports/slot-suggestions-json.ts";
import { slotSuggestionsText } from "../../server/reports/slot-suggestions-text.ts";
import { type SlotSuggestions, suggestParts } from "../../server/suggest/slot.ts";
import { exampleOf, workshopOf } from "./small-library.ts";

const engine = workshopOf(`
workshop north "North" { language: 1; currency: GBP }

part frame a.frame { chainstay: 420 mm; rear-travel: none }
part crankset a.crank { ring-mount: 104x4 }
part chainring a.ring { teeth: 32 t; ring-mount: 104x4; ring-place: single }
part rear-derailleur a.arm "Arm" { speeds: 8; set-up: cable; largest-cog: 36 t; total-capacity: 30 t; chain-allowance-rigid: 2 }
part chain a.chain { links-supplied: 126 }
part hub a.hub "Hub" { wheel: rear; freehub: stepped-driver }

part cassette a.now "Now" { speeds: 8; cogs: 11-13-15-18-21-24-28-34 t; freehub: stepped-driver; mass: 300 g; price: GBP 40 }
part cassette a.close "Close" { speeds: 8; cogs: 11-13-15-18-21-24-28-36 t; freehub: stepped-driver; mass: 200 g; price: EUR 20 }
part cassette a.abroad "Abroad" { speeds: 8; cogs: 11-13-15-18-21-24-28-34 t; freehub: stepped-driver; mass: 500 g; price: EUR 10 }
part cassette a.small "Small" { speeds: 8; cogs: 11-13-15-18-21-24-28-32 t; freehub: stepped-driver; mass: 600 g; price: GBP 30 }
part cassette a.cheap "Cheap" { speeds: 8; cogs: 11-13-15-18-21-24-28-34 t; freehub: stepped-driver; mass: 400 g; price: GBP 20 }
part cassette a.unweighed "Unweighed" { speeds: 8; cogs: 11-13-15-18-21-24-28-34 t; freehub: stepped-driver }
part cassette a.unknown "Unknown" { speeds: 8; freehub: stepped-driver; mass: 100 g; price: GBP 5 }
part cassette a.large "Large" { speeds: 8; cogs: 11-13-15-18-22-28-36-42 t; freehub: stepped-driver; mass: 350 g }
part cassette a.splined "Splined" { speeds: 8; cogs: 11-13-15-18-21-24-28-34 t; freehub: nine-spline-driver; mass: 250 g }

build example {
  frame: a.frame
  drivetrain {
    crankset: a.crank
    chainring: a.ring
    cassette: a.now
    rear-derailleur: a.arm
    front-derailleur: none
    chain: a.chain { links: 102 }
  }
  rear-wheel.hub: a.hub
}
`);

const found = (by: SlotSuggestions["rankedBy"] = "margin") =>
  suggestParts(engine, exampleOf(engine), "drivetrain.cassette", by);
const names = ({ suggestions }: SlotSuggestions, verdict: string) =>
  suggestions.filter((one) => one.verdict === verdict).map(({ candidate }) => candidate.part.declaration.name);
const of = (name: string) => found().suggestions.find(({ candidate }) => candidate.part.declaration.name === name);

describe("parts for a slot", () => {
  test("every part of the kind is there once, with what speaks for and against it", () => {
    const all = found();
    expect(all.suggestions).toHaveLength(9);
    expect(names(all, "does-not-fit").sort()).toEqual(["a.large", "a.splined"]);
    expect(names(all, "fits").slice().sort()).toEqual([
      "a.abroad",
      "a.cheap",
      "a.now",
      "a.small",
      "a.unknown",
      "a.unweighed",
    ]);
    expect(names(all, "set-up")).toEqual(["a.close"]);
  });

  test("ranked by room left, by mass and by price; what is not known comes last, another currency just before", () => {
    // The one of which nothing is known of its cogs leaves questions open, and stands behind those that are proved.
    expect(names(found("mass"), "fits")).toEqual([
      "a.now",
      "a.cheap",
      "a.abroad",
      "a.small",
      "a.unweighed",
      "a.unknown",
    ]);
    expect(names(found("price"), "fits")).toEqual([
      "a.cheap",
      "a.small",
      "a.now",
      "a.abroad",
      "a.unweighed",
      "a.unknown",
    ]);
    // Alike in room, the lighter one comes first; the chain that is too short for another is a matter of set-up.
    expect(names(found("margin"), "fits")).toEqual([
      "a.small",
      "a.now",
      "a.cheap",
      "a.abroad",
      "a.unweighed",
      "a.unknown",
    ]);
    expect(found("margin").suggestions[6]?.verdict).toBe("set-up");
  });

  test("the least room is said in numbers, with the check it is in", () => {
    const close = of("a.close")?.candidate;
    expect(close?.tightest).toMatchObject({ code: "drivetrain/largest-cog", margin: 0 });
    expect(close?.tightest?.message).toContain("36 t");
    const now = of("a.now")?.candidate;
    expect(now?.tightest?.margin).toBeCloseTo((36 - 34) / 36, 6);
  });

  test("the reason against a part has both numbers", () => {
    const failures = of("a.large")?.candidate.failures ?? [];
    const failure = failures.find(({ code }) => code === "drivetrain/largest-cog");
    expect(failure).toMatchObject({ code: "drivetrain/largest-cog", severity: "error", isSetUp: false });
    expect(failure?.message).toContain("42 t");
    expect(failure?.message).toContain("36 t");
    expect(of("a.splined")?.candidate.failures[0]?.code).toBe("drivetrain/freehub-body");
  });

  test("open questions are named: the part's own at the part, the others once for all", () => {
    expect(of("a.unknown")?.missing.map(({ path }) => path)).toContain("drivetrain.cassette.cogs");
    const anyway = found().missingAnyway.map(({ path }) => path);
    expect(anyway.every((path) => !path.startsWith("drivetrain.cassette."))).toBe(true);
    expect(anyway.length).toBeGreaterThan(0);
    for (const { missing } of found().suggestions) {
      for (const { path } of missing) expect(anyway).not.toContain(path);
    }
  });

  test("as text and as JSON they say the same, cut to as many as were asked for", () => {
    const text = slotSuggestionsText(found(), "a#example", { width: 100, paint: plain, limit: 2 });
    expect(text).toContain("Fits: 6 parts");
    expect(text).toContain("and 4 further parts");
    expect(text).toContain("Does not fit: 2 parts");
    expect(text).toContain("least room: ");
    const json = slotSuggestionsJson(found(), { file: "a", build: "example", today: "2026-11-25", limit: 2 });
    expect(json.counts).toEqual({ fits: 6, "set-up": 1, "does-not-fit": 2 });
    expect(json.parts).toHaveLength(5);
    expect(json.current).toBe("a.now");
  });

  test("a slot for which no library has a part", () => {
    const none = suggestParts(engine, exampleOf(engine), "seat.saddle", "margin");
    expect(none.suggestions).toEqual([]);
    expect(slotSuggestionsText(none, "a#example", { width: 100, paint: plain, limit: 2 })).toContain("No library has");
  });
});

describe("a fault of the whole that is there whatever stands in the slot", () => {
  const heavy = (budget: string, rule = ""): SlotSuggestions => {
    const whole = workshopOf(`
workshop north "North" { language: 1; currency: GBP }
part frame a.frame { mass: 4000 g; price: GBP 900 }
part cassette a.now "Now" { speeds: 8; cogs: 11-13-15-18-21-24-28-34 t; mass: 300 g; price: GBP 40 }
part cassette a.light "Light" { speeds: 8; cogs: 11-13-15-18-21-24-28-34 t; mass: 200 g; price: GBP 80 }
part cassette a.nine "Nine" { speeds: 9; cogs: 11-13-15-17-19-21-24-28-34 t; mass: 250 g; price: GBP 50 }
part rear-derailleur a.arm "Arm" { speeds: 8; set-up: cable; mass: 300 g; price: GBP 50 }
${rule}
build example {
  frame: a.frame
  drivetrain { cassette: a.now; rear-derailleur: a.arm }
  ${budget}
}
`);
    return suggestParts(whole, exampleOf(whole), "drivetrain.cassette", "margin");
  };
  const fitting = (all: SlotSuggestions): readonly string[] =>
    all.suggestions.filter(({ verdict }) => verdict === "fits").map(({ candidate }) => candidate.part.declaration.name);
  const standing = (all: SlotSuggestions): readonly string[] => [
    ...new Set(all.suggestions.flatMap(({ candidate }) => candidate.standing.map(({ code }) => code))),
  ];

  test("keeps no part from fitting: a budget that the rest alone exceeds", () => {
    const all = heavy("budget.mass: <= 4 kg");
    expect(fitting(all).slice().sort()).toEqual(["a.light", "a.now"]);
    expect(standing(all)).toEqual(["build/budget-mass"]);
  });

  test("nor a house rule that fails without any part there", () => {
    const all = heavy(
      "",
      'rule light "Light" { require: bike.mass-at-least <= 4 kg; message: "It weighs {bike.mass-at-least}." }',
    );
    expect(fitting(all).slice().sort()).toEqual(["a.light", "a.now"]);
    expect(standing(all)).toEqual(["rule/light"]);
  });

  test("but a budget that only the part exceeds speaks against it", () => {
    const all = heavy("budget.mass: <= 4.55 kg");
    expect(fitting(all)).toEqual(["a.light"]);
    expect(standing(all)).toEqual([]);
  });
});

describe("a slot of the workshop's own", () => {
  const workshop = workshopOf(`
workshop north "North" { language: 1; currency: GBP }
part accessory a.cage "Cage" { mass: 60 g }
part accessory a.light-cage "Light cage" { mass: 20 g }
part saddle a.saddle { mass: 10 g }

build example {
  extras { cage: a.cage }
}
`);
  const suggested = (slot: string) => suggestParts(workshop, exampleOf(workshop), slot, "mass");

  test("is offered what is of the kind of the part that stands there", () => {
    expect(names(suggested("extras.cage"), "fits")).toEqual(["a.light-cage", "a.cage"]);
  });

  test("says that it takes any kind where nothing stands there", () => {
    expect(slotSuggestionsText(suggested("extras.bag"), "a#example", { width: 200, paint: plain, limit: 2 })).toContain(
      "extras.bag is a slot of your own and takes a part of any kind",
    );
  });
});
