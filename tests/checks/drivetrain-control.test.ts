import { describe, expect, it } from "vitest";
import { checkText } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

const cogs = "11-13-15-17-19-21-24-28-32-36";
const families = `
standard shift-family one { actuation: cable }
standard shift-family two { actuation: cable }
standard shift-family three { actuation: cable; mates: two }
`;

describe("drivetrain/speeds", () => {
  const code = "drivetrain/speeds";
  const text = (derailleur: string, controller: string, cassette = `speeds: 10; cogs: ${cogs} t`) =>
    checkText(
      compose({
        "drivetrain.rear-derailleur": part("rear-derailleur", derailleur),
        "drivetrain.rear-controller": part("shift-controller", controller),
        "drivetrain.cassette": part("cassette", cassette),
      }),
    );

  it("holds where all count the same", () => {
    expect(text("speeds: 10; set-up: cable", "speeds: 10").outcome(code)).toBe("holds");
  });

  it("finds a controller with a click too few, and one with a click too many", () => {
    const few = text("speeds: 10; set-up: cable", "speeds: 9");
    expect(few.of(code)).toHaveLength(1);
    expect(few.of(code)[0]).toMatchObject({ severity: "error", path: "drivetrain.rear-controller" });
    expect(few.of(code)[0]?.message).toContain("one cog is never reached");
    const many = text("speeds: 10; set-up: cable", "speeds: 11");
    expect(many.of(code)[0]).toMatchObject({ severity: "warning", path: "drivetrain.rear-controller" });
    const byMotor = text("speeds: 10; set-up: electronic", "speeds: 11");
    expect(byMotor.of(code)[0]?.severity).toBe("error");
  });

  it("does not count by the derailleur up to eight speeds by cable, nor with friction", () => {
    const seven = "speeds: 7; cogs: 13-15-17-19-21-24-28 t";
    expect(text("speeds: 8; set-up: cable", "speeds: 7", seven).outcome(code)).toBe("holds");
    expect(text("speeds: 6; set-up: cable", "speeds: 7", seven).outcome(code)).toBe("holds");
    expect(text("speeds: 9; set-up: cable", "speeds: 7", seven).of(code)[0]?.severity).toBe("warning");
    expect(text("speeds: 8; set-up: electronic", "speeds: 7", seven).of(code)[0]?.severity).toBe("error");
    expect(text("speeds: 11; set-up: cable", "speeds: none").outcome(code)).toBe("holds");
    expect(text("speeds: 9; set-up: cable", "speeds: none").outcome(code)).toBe("fails");
    // A controller with a click too many stays one, even where the derailleur would do.
    expect(text("speeds: 8; set-up: cable", "speeds: 8", seven).of(code)).toHaveLength(1);
  });

  it("finds a derailleur for another number", () => {
    const found = text("speeds: 9; set-up: cable", "speeds: 10").of(code);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ severity: "error", path: "drivetrain.rear-derailleur" });
  });

  it("finds a cassette for another number once, at the cassette", () => {
    const found = text("speeds: 9; set-up: cable", "speeds: 9").of(code);
    expect(found).toHaveLength(1);
    expect(found[0]?.path).toBe("drivetrain.cassette");
    expect(found[0]?.message).toContain("rear-derailleur and rear-controller are made for 9 speeds");
  });

  it("finds a list of cogs that is not as long as stated, and nothing else of it", () => {
    const found = text("speeds: 11; set-up: cable", "speeds: 11", `speeds: 11; cogs: ${cogs} t`).of(code);
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toContain("11 speeds, but lists 10 cogs");
    expect(found[0]?.repairs[0]).toEqual({
      kind: "set-fact",
      slot: "drivetrain.cassette",
      fact: "speeds",
      value: "10",
    });
  });

  it("counts the cogs where no number is stated", () => {
    const freewheel = (count: number) =>
      checkText(
        compose({
          "drivetrain.rear-derailleur": part("rear-derailleur", `speeds: ${count}; set-up: electronic`),
          "drivetrain.cassette": part("freewheel", "cogs: 14-18-24 t"),
        }),
      ).instance(code, "rear-derailleur");
    expect(freewheel(3)).toBe("holds");
    expect(freewheel(2)).toBe("fails");
  });

  it("compares the controller of a gear hub with its gears", () => {
    const hub = (clicks: number) =>
      checkText(
        compose({
          "drivetrain.rear-derailleur": "none",
          "drivetrain.rear-controller": part("shift-controller", `speeds: ${clicks}`),
          "drivetrain.cassette": part("sprocket", "cogs: 20 t"),
          "rear-wheel.hub": part("hub", "gears: 8"),
        }),
      );
    expect(hub(8).outcome(code)).toBe("holds");
    expect(hub(7).outcome(code)).toBe("fails");
    expect(hub(7).of(code)[0]?.message).toMatch(/7 positions.*8 gears/);
  });

  it("names a number that is not stated and leaves a friction controller alone", () => {
    expect(text("set-up: cable", "speeds: 10").missing(code)).toEqual(["drivetrain.rear-derailleur.speeds"]);
    expect(text("speeds: 10; set-up: cable", "speeds: none").instance(code, "rear-controller")).toBe("notApplicable");
  });
});

describe("drivetrain/indexing", () => {
  const code = "drivetrain/indexing";
  const bike = (controller: string, derailleur: string, cassette: string): Pieces => ({
    "drivetrain.rear-controller": part("shift-controller", `actuation: cable; ${controller}`),
    "drivetrain.rear-derailleur": part("rear-derailleur", `set-up: cable; ${derailleur}`),
    "drivetrain.cassette": part("cassette", cassette),
  });
  const text = (pieces: Pieces) => checkText(compose(pieces, families));
  const ten = `cogs: ${cogs} t; cog-pitch: 4 mm`;

  it("passes one family, and families that mate, unless the figures come to more than a whole cog", () => {
    // Cogs are 4 mm apart: nine clicks of 0.44 mm too much are 3.96 mm, of 0.45 mm 4.05 mm.
    for (const [one, other] of [["one", "one"] as const, ["two", "three"] as const]) {
      const outcome = (pull: string) =>
        text(
          bike(
            `shift-family: ${one}; speeds: 10; pull-per-click: ${pull}`,
            `shift-family: ${other}; actuation-ratio: 1`,
            ten,
          ),
        );
      expect(outcome("4.44 mm").outcome(code)).toBe("holds");
      expect(outcome("3.56 mm").outcome(code)).toBe("holds");
      expect(outcome("4.45 mm").outcome(code)).toBe("fails");
      expect(outcome("3.55 mm").outcome(code)).toBe("fails");
      expect(outcome("4.45 mm").of(code)[0]).toMatchObject({ severity: "warning" });
      expect(outcome("4.45 mm").of(code)[0]?.message).toContain("4.05 mm over all clicks");
    }
  });

  it("judges a mixture by the error added up over all clicks, either way", () => {
    // Nine clicks of 4 mm: a millimetre in all is 0.111 mm a click, so movement up to 4.111 and down to 3.889 passes.
    const mixture = (pull: string) =>
      text(
        bike(`shift-family: one; speeds: 10; pull-per-click: ${pull}`, "shift-family: two; actuation-ratio: 1", ten),
      );
    expect(mixture("4.111 mm").outcome(code)).toBe("holds");
    expect(mixture("4.112 mm").outcome(code)).toBe("fails");
    expect(mixture("3.889 mm").outcome(code)).toBe("holds");
    expect(mixture("3.888 mm").outcome(code)).toBe("fails");
    const [finding] = mixture("4.2 mm").of(code);
    expect(finding?.severity).toBe("warning");
    // 0.2 mm × 9 clicks.
    expect(finding?.message).toContain("1.8 mm over all clicks");
  });

  it("passes exactly a millimetre", () => {
    // Eight clicks of 4 mm with 4.125 mm of movement: 1 mm.
    const exact = text(
      bike(
        "shift-family: one; speeds: 9; pull-per-click: 2.75 mm",
        "shift-family: two; actuation-ratio: 1.5",
        "cogs: 11-13-15-17-19-21-24-28-32 t; cog-pitch: 4 mm",
      ),
    );
    expect(exact.outcome(code)).toBe("holds");
  });

  it("names what it would need for a mixture, and only the families before that", () => {
    const noNumbers = text(bike("shift-family: one; speeds: 10", "shift-family: two", `cogs: ${cogs} t`));
    expect(new Set(noNumbers.missing(code))).toEqual(
      new Set([
        "drivetrain.rear-controller.pull-per-click",
        "drivetrain.rear-derailleur.actuation-ratio",
        "drivetrain.cassette.cog-pitch",
      ]),
    );
    const noFamily = text(bike("speeds: 10", "shift-family: two", ten));
    expect(noFamily.missing(code)).toEqual(["drivetrain.rear-controller.shift-family"]);
  });

  it("is not asked of motors, of friction, or of one cog", () => {
    const electronic = text({
      "drivetrain.rear-controller": part("shift-controller", "actuation: electronic; shift-family: one"),
      "drivetrain.rear-derailleur": part("rear-derailleur", "set-up: electronic; shift-family: two"),
    });
    expect(electronic.outcome(code)).toBe("notApplicable");
    expect(text(bike("shift-family: one; speeds: none", "shift-family: two", ten)).outcome(code)).toBe("notApplicable");
    expect(text(bike("shift-family: one; speeds: 10", "shift-family: two", "cogs: 18 t")).outcome(code)).toBe(
      "notApplicable",
    );
  });
});

describe("drivetrain/actuation", () => {
  const code = "drivetrain/actuation";
  const rear = (setUp: string, actuation: string) =>
    checkText(
      compose({
        "drivetrain.rear-derailleur": part("rear-derailleur", setUp),
        "drivetrain.rear-controller": part("shift-controller", actuation),
        "drivetrain.front-derailleur": "none",
      }),
    );

  it("pairs cable with cable and motor with motor", () => {
    expect(rear("set-up: cable", "actuation: cable").instance(code, "rear")).toBe("holds");
    expect(rear("set-up: electronic", "actuation: electronic").instance(code, "rear")).toBe("holds");
    expect(rear("set-up: cable", "actuation: electronic").instance(code, "rear")).toBe("fails");
    expect(rear("set-up: electronic", "actuation: cable").instance(code, "rear")).toBe("fails");
  });

  it("tells a direct mount by its power", () => {
    expect(rear("set-up: direct-mount; power: own-battery", "actuation: electronic").instance(code, "rear")).toBe(
      "holds",
    );
    expect(rear("set-up: direct-mount; power: none", "actuation: cable").instance(code, "rear")).toBe("holds");
    expect(rear("set-up: direct-mount; power: none", "actuation: electronic").instance(code, "rear")).toBe("fails");
    expect(rear("set-up: direct-mount", "actuation: cable").missing(code)).toEqual([
      "drivetrain.rear-derailleur.power",
    ]);
  });

  it("says one fault once: the family is not asked as well", () => {
    const text = checkText(
      compose(
        {
          "drivetrain.rear-derailleur": part("rear-derailleur", "set-up: electronic; shift-family: two"),
          "drivetrain.rear-controller": part("shift-controller", "actuation: cable; shift-family: one"),
          "drivetrain.front-derailleur": "none",
        },
        families,
      ),
    );
    expect(text.of(code)).toHaveLength(1);
    expect(text.of("drivetrain/shift-family")).toEqual([]);
    expect(text.of("drivetrain/indexing")).toEqual([]);
  });

  it("fails a brake lever without a shift control in the controller's place", () => {
    const text = checkText(
      compose({
        "drivetrain.rear-derailleur": part("rear-derailleur", "set-up: cable"),
        "drivetrain.rear-controller": part("brake-lever", "brake-actuation: cable"),
        "drivetrain.front-derailleur": "none",
      }),
    );
    expect(text.of(code)[0]?.message).toContain("has no shift control");
    expect(text.instance("drivetrain/speeds", "rear-controller")).toBe("notApplicable");
  });

  it("fails a derailleur that nothing moves, and lets one take up slack for a single cog", () => {
    const text = (list: string) =>
      checkText(
        compose({
          "drivetrain.rear-derailleur": part("rear-derailleur", "set-up: cable"),
          "drivetrain.rear-controller": "none",
          "drivetrain.cassette": part("cassette", `cogs: ${list} t`),
          "drivetrain.front-derailleur": "none",
        }),
      );
    expect(text(cogs).of(code)).toHaveLength(1);
    expect(text(cogs).of(code)[0]?.repairs).toEqual([{ kind: "insert-part", slot: "drivetrain.rear-controller" }]);
    expect(text("18").instance(code, "rear")).toBe("notApplicable");
  });

  it("asks for what a lever with a shift control does not say of it", () => {
    const text = checkText(
      compose(
        {
          "drivetrain.rear-derailleur": part("rear-derailleur", "speeds: 10; set-up: cable; shift-family: two"),
          "drivetrain.rear-controller": part("brake-lever", "actuation: cable; shift-family: one"),
          "drivetrain.cassette": part("cassette", `speeds: 10; cogs: ${cogs} t; cog-pitch: 4 mm`),
          "drivetrain.front-derailleur": "none",
        },
        families,
      ),
    );
    expect(text.missing("drivetrain/speeds")).toEqual(["drivetrain.rear-controller.speeds"]);
    expect(text.missing("drivetrain/indexing")).toContain("drivetrain.rear-controller.pull-per-click");
  });

  it("asks for what moves a hub that does not say it", () => {
    const text = checkText(
      compose({
        "drivetrain.rear-derailleur": "none",
        "rear-wheel.hub": part("hub", "gears: 8"),
        "drivetrain.rear-controller": part("shift-controller", "actuation: cable"),
      }),
    );
    expect(text.instance(code, "gear-hub")).toBe("unknown");
  });

  it("asks front derailleur and gear hub too", () => {
    const front = (actuation: string) =>
      checkText(
        compose({
          "drivetrain.front-derailleur": part("front-derailleur", "actuation: electronic"),
          "drivetrain.front-controller": part("shift-controller", `actuation: ${actuation}`),
        }),
      ).instance(code, "front");
    expect(front("electronic")).toBe("holds");
    expect(front("cable")).toBe("fails");
    const hub = (actuation: string) =>
      checkText(
        compose({
          "drivetrain.rear-derailleur": "none",
          "rear-wheel.hub": part("hub", "gears: 8; actuation: cable"),
          "drivetrain.rear-controller": part("shift-controller", `actuation: ${actuation}`),
        }),
      ).instance(code, "gear-hub");
    expect(hub("cable")).toBe("holds");
    expect(hub("electronic")).toBe("fails");
  });

  it("lets a hub that changes by itself have no controller", () => {
    const text = checkText(
      compose({
        "drivetrain.rear-derailleur": "none",
        "rear-wheel.hub": part("hub", "gears: 2; actuation: none"),
        "drivetrain.rear-controller": "none",
      }),
    );
    expect(text.instance(code, "gear-hub")).toBe("notApplicable");
  });
});

describe("drivetrain/shift-family", () => {
  const code = "drivetrain/shift-family";
  const electronic = families.replaceAll("cable", "electronic");
  const rear = (controller: string, derailleur: string) =>
    checkText(
      compose(
        {
          "drivetrain.rear-controller": part("shift-controller", `actuation: electronic; ${controller}`),
          "drivetrain.rear-derailleur": part("rear-derailleur", `set-up: electronic; ${derailleur}`),
          "drivetrain.front-derailleur": "none",
        },
        electronic,
      ),
    );

  it("wants one family, or families that mate, named by either", () => {
    expect(rear("shift-family: one", "shift-family: one").outcome(code)).toBe("holds");
    expect(rear("shift-family: two", "shift-family: three").outcome(code)).toBe("holds");
    expect(rear("shift-family: three", "shift-family: two").outcome(code)).toBe("holds");
    expect(rear("shift-family: one", "shift-family: two").outcome(code)).toBe("fails");
  });

  it("is unknown without a family, or with one that no standard declares", () => {
    expect(rear("shift-family: one", "speeds: 12").missing(code)).toEqual(["drivetrain.rear-derailleur.shift-family"]);
    const undeclared = compose(
      {
        "drivetrain.rear-controller": part("shift-controller", "actuation: electronic; shift-family: four"),
        "drivetrain.rear-derailleur": part("rear-derailleur", "set-up: electronic; shift-family: one"),
        "drivetrain.front-derailleur": "none",
      },
      electronic,
    );
    expect(checkText(undeclared, "allowed").outcome(code)).toBe("unknown");
  });

  it("warns of a front mixture by cable and leaves the rear one to the arithmetic", () => {
    const text = checkText(
      compose(
        {
          "drivetrain.front-controller": part("shift-controller", "actuation: cable; shift-family: one"),
          "drivetrain.front-derailleur": part("front-derailleur", "actuation: cable; shift-family: two"),
          "drivetrain.rear-controller": part("shift-controller", "actuation: cable; shift-family: one"),
          "drivetrain.rear-derailleur": part("rear-derailleur", "set-up: cable; shift-family: two"),
        },
        families,
      ),
    );
    expect(text.instance(code, "front")).toBe("fails");
    expect(text.instance(code, "rear")).toBe("notApplicable");
    expect(text.of(code).map(({ severity }) => severity)).toEqual(["warning"]);
  });

  it("is an error for a gear hub by cable", () => {
    const text = checkText(
      compose(
        {
          "drivetrain.rear-derailleur": "none",
          "drivetrain.front-derailleur": "none",
          "drivetrain.rear-controller": part("shift-controller", "actuation: cable; shift-family: one"),
          "rear-wheel.hub": part("hub", "gears: 8; actuation: cable; shift-family: two"),
        },
        families,
      ),
    );
    expect(text.of(code).map(({ severity }) => severity)).toEqual(["error"]);
  });
});

describe("drivetrain/battery-family", () => {
  const library = `
standard shift-family radio-a { actuation: electronic; source: "this test" }
standard shift-family radio-b { actuation: electronic; source: "this test" }
standard battery-type cell-a { voltage: 7.4 V; source: "this test" }
standard battery-type cell-b { voltage: 7.4 V; source: "this test" }
`;
  function fed(derailleur: string, battery: string): string {
    return compose(
      {
        "drivetrain.rear-derailleur": part("rear-derailleur", derailleur),
        "drivetrain.battery": part("battery", battery),
      },
      library,
    );
  }
  const arm = "power: own-battery; shift-family: radio-a; battery-type: cell-a";

  it.each([
    [arm, "serves-families: radio-a; battery-type: cell-a", "holds"],
    [arm, "serves-families: radio-b, radio-a; battery-type: cell-a", "holds"],
    [arm, "serves-families: radio-b; battery-type: cell-a", "fails"],
    // Of another type: that alone is the fault.
    [arm, "serves-families: radio-b; battery-type: cell-b", "notApplicable"],
    [arm, "battery-type: cell-a", "unknown"],
    ["power: none; shift-family: radio-a", "serves-families: radio-b", "notApplicable"],
  ])("%s with %s: %s", (derailleur, battery, outcome) => {
    expect(checkText(fed(derailleur, battery)).outcome("drivetrain/battery-family")).toBe(outcome);
  });

  it("names both families", () => {
    const text = fed(arm, "serves-families: radio-b; battery-type: cell-a");
    expect(checkText(text).of("drivetrain/battery-family")[0]?.message).toMatch(
      /battery is made for radio-b, but rear-derailleur is of radio-a/,
    );
  });
});
