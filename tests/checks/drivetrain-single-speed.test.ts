import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

describe("drivetrain/single-speed-tension", () => {
  const code = "drivetrain/single-speed-tension";
  const bike = (chainstay: string, links: string, more: Pieces = {}): Pieces => ({
    frame: part("frame", `chainstay: ${chainstay}; dropout: track-end`),
    "drivetrain.crankset": part("crankset", "rings: 20 t"),
    "drivetrain.cassette": part("sprocket", "cogs: 20 t"),
    "drivetrain.rear-derailleur": "none",
    "drivetrain.chain": part("chain", "speeds: 1; closure: pin", links),
    ...more,
  });
  const text = (pieces: Pieces) => checkText(compose(pieces));

  it("wants the whole length inside the adjustment, ends included", () => {
    // Equal wheels by hand: 80 links are 20 of arc and two runs of 30 × 12.7 = 381 mm.
    expect(text(bike("381 to 387 mm", "links: 80")).outcome(code)).toBe("holds");
    expect(text(bike("377 to 381 mm", "links: 80")).outcome(code)).toBe("holds");
    expect(text(bike("381.1 to 387 mm", "links: 80")).outcome(code)).toBe("fails");
    expect(text(bike("377 to 380.9 mm", "links: 80")).outcome(code)).toBe("fails");
    expect(text(bike("15 to 15.5 in", "links: 80")).outcome(code)).toBe("holds");
  });

  it("says where the length would be taut, and offers the one that is within reach", () => {
    const [finding] = text(bike("381.5 to 395 mm", "links: 80")).of(code);
    expect(finding).toMatchObject({ severity: "error", path: "drivetrain.chain.links" });
    expect(finding?.message).toMatch(/80 links.*taut with a chainstay of 381 mm.*381\.5 to 395 mm only.*82 links/);
    const [mend] = repaired(compose(bike("381.5 to 395 mm", "links: 80")), code);
    expect(checkText(mend?.text ?? "").outcome(code)).toBe("holds");
  });

  it("fails where no whole length will do, and asks which is cut where one will", () => {
    expect(text(bike("377 to 389 mm", "")).outcome(code)).toBe("unknown");
    expect(text(bike("377 to 389 mm", "")).missing(code)).toContain("drivetrain.chain.links");
    expect(text(bike("382 to 393 mm", "")).outcome(code)).toBe("fails");
    // A half link adds the length between: 81 links are taut at 387.35 mm.
    const half: Pieces = { "drivetrain.closure-link": part("closure-link", "half-link: yes") };
    expect(text(bike("382 to 393 mm", "", half)).outcome(code)).toBe("unknown");
  });

  it("says that vertical dropouts are why, and offers a tensioner", () => {
    const fixed = bike("384 mm", "links: 80", { frame: part("frame", "chainstay: 384 mm; dropout: vertical") });
    const [finding] = text(fixed).of(code);
    expect(finding?.message).toContain("vertical");
    expect(finding?.repairs).toContainEqual({ kind: "insert-part", slot: "drivetrain.chain-tensioner" });
  });

  it("with a tensioner asks only that the chain reaches, and that the arm takes up what is left", () => {
    const tensioned = (links: number, capacity = "") =>
      text(
        bike("381 mm", `links: ${links}`, {
          "drivetrain.chain-tensioner": part("chain-tensioner", `tension: sprung${capacity}`),
        }),
      );
    expect(tensioned(80).outcome(code)).toBe("holds");
    expect(tensioned(78).of(code)[0]).toMatchObject({ severity: "error" });
    // 0.3 mm of chainstay are 0.047 links, which a new chain is longer than nominal; 0.4 mm are 0.063.
    const stays = ["381.3 mm", "381.4 mm"].map((stay) => {
      const bent = bike(stay, "links: 80", {
        "drivetrain.chain-tensioner": part("chain-tensioner", "tension: sprung"),
      });
      return text(bent).of(code)[0]?.message;
    });
    expect(stays[0]).toBeUndefined();
    expect(stays[1]).toContain("takes at least 80.06 links round both: it does not reach. Cut a new one to 82 links.");
    expect(tensioned(84).outcome(code)).toBe("holds");
    // Four links more than the loop are 8 t of slack.
    expect(tensioned(84, "; total-capacity: 8 t").outcome(code)).toBe("holds");
    expect(tensioned(84, "; total-capacity: 7 t").of(code)[0]).toMatchObject({ severity: "warning" });
    expect(tensioned(84, "; total-capacity: 7 t").of(code)[0]?.message).toContain("take out links, to 80");
  });

  it("is not asked with a derailleur, a belt, or several cogs", () => {
    const derailleur: Pieces = { "drivetrain.rear-derailleur": part("rear-derailleur", "speeds: 1") };
    expect(text(bike("381 mm", "links: 80", derailleur)).outcome(code)).toBe("notApplicable");
    const belt: Pieces = { "drivetrain.chain": part("belt", "teeth: 118 t") };
    expect(text(bike("381 mm", "", belt)).outcome(code)).toBe("notApplicable");
    const cogs: Pieces = { "drivetrain.cassette": part("cassette", "cogs: 16-18-20 t") };
    expect(text(bike("381 mm", "links: 80", cogs)).outcome(code)).toBe("notApplicable");
  });

  it("names what is missing", () => {
    const open = text(bike("381 mm", "links: 80", { frame: part("frame", "dropout: sliding") }));
    expect(open.outcome(code)).toBe("unknown");
    expect(new Set(open.missing(code))).toEqual(new Set(["frame.chainstay"]));
  });
});

describe("drivetrain/tensioner-forbidden", () => {
  const code = "drivetrain/tensioner-forbidden";
  const text = (pieces: Pieces) => checkText(compose({ "drivetrain.rear-derailleur": "none", ...pieces }));
  const coaster: Pieces = { "rear-wheel.hub": part("hub", "coaster-brake: yes") };
  const sprung: Pieces = { "drivetrain.chain-tensioner": part("chain-tensioner", "tension: sprung") };
  const clamped: Pieces = { "drivetrain.chain-tensioner": part("chain-tensioner", "tension: fixed") };
  const fixedCog: Pieces = {
    "rear-wheel.hub": part("hub", "wheel: rear"),
    "drivetrain.cassette": part("sprocket", "cogs: 16 t; fixed: yes"),
  };
  const freeCog: Pieces = {
    "rear-wheel.hub": part("hub", "wheel: rear"),
    "drivetrain.cassette": part("freewheel", "cogs: 16 t"),
  };

  it("refuses a spring with a coaster brake or a fixed cog", () => {
    expect(text({ ...coaster, ...sprung }).outcome(code)).toBe("fails");
    expect(text({ ...fixedCog, ...sprung }).outcome(code)).toBe("fails");
    expect(text({ ...freeCog, ...sprung }).outcome(code)).toBe("notApplicable");
    expect(text({ ...coaster, ...clamped }).outcome(code)).toBe("holds");
    expect(text(coaster).outcome(code)).toBe("holds");
  });

  it("counts a rear derailleur as sprung", () => {
    const derailleur: Pieces = { "drivetrain.rear-derailleur": part("rear-derailleur", "speeds: 7") };
    const [finding] = text({ ...coaster, ...derailleur }).of(code);
    expect(finding).toMatchObject({ severity: "error", path: "drivetrain.rear-derailleur" });
    expect(finding?.repairs[0]).toEqual({ kind: "leave-empty", slot: "drivetrain.rear-derailleur" });
    expect(finding?.caution).toBeDefined();
  });

  it("is unknown when a spring is there and nobody said whether the cog is fixed", () => {
    const open: Pieces = {
      "rear-wheel.hub": part("hub", "wheel: rear"),
      "drivetrain.cassette": part("sprocket", "cogs: 16 t"),
    };
    expect(text({ ...open, ...sprung }).missing(code)).toEqual(["drivetrain.cassette.fixed"]);
    expect(text(open).outcome(code)).toBe("notApplicable");
    const tension: Pieces = { "drivetrain.chain-tensioner": part("chain-tensioner", "mass: 90 g") };
    expect(text({ ...coaster, ...tension }).missing(code)).toEqual(["drivetrain.chain-tensioner.tension"]);
  });

  it("heeds a frame that forbids one", () => {
    const frame: Pieces = { frame: part("frame", "forbids: sprung-tensioner") };
    expect(text({ ...fixedCog, ...sprung, ...frame }).of(code)).toHaveLength(1);
    expect(text({ ...freeCog, ...sprung, ...frame }).outcome(code)).toBe("fails");
    expect(text({ ...freeCog, ...clamped, ...frame }).outcome(code)).toBe("notApplicable");
  });
});

describe("drivetrain/fixed-lock-ring", () => {
  const code = "drivetrain/fixed-lock-ring";
  const text = (cog: string, hub: string) =>
    checkText(
      compose({ "drivetrain.cassette": part("sprocket", `cogs: 16 t; ${cog}`), "rear-wheel.hub": part("hub", hub) }),
    );
  const screwed = "fixed: yes; thread: 1.375x24; retention: left-hand-lockring";

  it("wants the thread for a lock-ring, said by itself or by the standard of the hub's thread", () => {
    expect(text(screwed, "freewheel-thread: 1.375x24; fixed-lockring-thread: yes").outcome(code)).toBe("holds");
    expect(text(screwed, "freewheel-thread: 1.375x24-with-lockring").outcome(code)).toBe("holds");
    expect(text(screwed, "freewheel-thread: 1.375x24").outcome(code)).toBe("fails");
    expect(text(screwed, "freewheel-thread: 1.375x24; fixed-lockring-thread: no").outcome(code)).toBe("fails");
  });

  it("wants the lock-ring on the cog", () => {
    const hub = "freewheel-thread: 1.375x24-with-lockring";
    const found = (retention: string) => text(`fixed: yes; thread: 1.375x24${retention}`, hub);
    expect(found("; retention: lockring").outcome(code)).toBe("fails");
    expect(found("; retention: none").outcome(code)).toBe("fails");
    expect(found("").missing(code)).toEqual(["drivetrain.cassette.retention"]);
  });

  it("is not asked of a cog that is free, bolted on, or part of a cassette", () => {
    expect(text("fixed: no; thread: 1.375x24", "freewheel-thread: 1.375x24").outcome(code)).toBe("notApplicable");
    expect(text("fixed: yes; retention: bolts", "freewheel-thread: none").outcome(code)).toBe("notApplicable");
    const cassette = compose({ "drivetrain.cassette": part("cassette", "cogs: 11-13 t") });
    expect(checkText(cassette).outcome(code)).toBe("notApplicable");
  });

  it("is unknown while nobody said whether the cog is fixed", () => {
    expect(text("thread: 1.375x24", "freewheel-thread: 1.375x24").missing(code)).toEqual(["drivetrain.cassette.fixed"]);
  });
});

describe("arms and washers of hubs", () => {
  const text = (hub: string, settings = "", frame: Pieces["frame"] = undefined) =>
    checkText(compose({ frame, "rear-wheel.hub": part("hub", hub, settings) }));

  it("wants a coaster brake's arm fixed, and says when nobody stated it", () => {
    const code = "drivetrain/coaster-arm";
    const stay = part("frame", "coaster-arm-allowed: yes");
    expect(text("coaster-brake: yes", "arm-fixed: yes", stay).outcome(code)).toBe("holds");
    expect(text("coaster-brake: yes", "arm-fixed: no").outcome(code)).toBe("fails");
    expect(text("coaster-brake: yes", "arm-fixed: none").outcome(code)).toBe("fails");
    expect(text("coaster-brake: yes", "", stay).missing(code)).toEqual(["rear-wheel.hub.arm-fixed"]);
    // Without a frame nobody knows what the arm is fixed to.
    expect(text("coaster-brake: yes", "arm-fixed: yes").missing(code)).toEqual(["frame"]);
    expect(text("coaster-brake: yes").missing(code)).toEqual(["rear-wheel.hub.arm-fixed", "frame"]);
    expect(text("coaster-brake: no", "arm-fixed: no").outcome(code)).toBe("notApplicable");
    expect(text("gears: 8").outcome(code)).toBe("notApplicable");
  });

  it("heeds a frame that forbids coaster brakes", () => {
    const found = text("coaster-brake: yes", "arm-fixed: yes", part("frame", "forbids: coaster-brake, belt"));
    expect(found.of("drivetrain/coaster-arm")).toHaveLength(1);
  });

  it("asks for a torque arm where the hub needs one, and once where a coaster brake has it", () => {
    const code = "drivetrain/torque-arm";
    expect(text("gears: 14; torque-arm: yes", "arm-fixed: yes").outcome(code)).toBe("holds");
    expect(text("gears: 14; torque-arm: yes", "arm-fixed: no").outcome(code)).toBe("fails");
    expect(text("gears: 14; torque-arm: no", "arm-fixed: no").outcome(code)).toBe("notApplicable");
    const both = text("gears: 3; torque-arm: yes; coaster-brake: yes", "arm-fixed: no");
    expect(both.outcome(code)).toBe("notApplicable");
    expect(both.of("drivetrain/coaster-arm")).toHaveLength(1);
  });

  it("wants washers for the shape of the dropouts", () => {
    const code = "drivetrain/gear-hub-washers";
    const outcome = (washers: string, dropout: string, more = "") =>
      text(`gears: 8; dropout-washers: ${washers}${more}`, "", part("frame", `dropout: ${dropout}`)).outcome(code);
    expect(outcome("vertical", "vertical")).toBe("holds");
    expect(outcome("horizontal, track-end", "vertical")).toBe("fails");
    expect(outcome("horizontal", "track-end")).toBe("fails");
    expect(outcome("horizontal, track-end", "track-end")).toBe("holds");
    expect(outcome("vertical", "sliding")).toBe("holds");
    expect(outcome("horizontal", "eccentric")).toBe("fails");
    expect(outcome("horizontal", "vertical", "; torque-arm: yes")).toBe("notApplicable");
    // Left out, the washers of a hub with gears are not none: without them its axle turns.
    expect(text("gears: 8", "", part("frame", "dropout: vertical")).missing(code)).toEqual([
      "rear-wheel.hub.dropout-washers",
    ]);
    expect(outcome("none", "vertical")).toBe("notApplicable");
    expect(text("gears: 8; torque-arm: yes", "", part("frame", "dropout: vertical")).outcome(code)).toBe(
      "notApplicable",
    );
    expect(text("gears: none", "", part("frame", "dropout: vertical")).outcome(code)).toBe("notApplicable");
    expect(text("gears: 8; dropout-washers: vertical", "", part("frame", 'size: "M"')).missing(code)).toEqual([
      "frame.dropout",
    ]);
  });
});

describe("belts", () => {
  const bike = (frame: string, belt: string, more: Pieces = {}): Pieces => ({
    frame: part("frame", frame),
    "drivetrain.chain": part("belt", belt),
    "drivetrain.crankset": part("crankset", "rings: none"),
    "drivetrain.chainring": part("belt-ring", "teeth: 50 t; ring-chainline: 46 mm"),
    "drivetrain.cassette": part("sprocket", "cogs: 50 t"),
    ...more,
  });
  const text = (pieces: Pieces) => checkText(compose(pieces));
  const chain: Pieces = { "drivetrain.chain": part("chain", "speeds: 1") };

  it("wants a belt taut within the movement of the axle, ends included", () => {
    const code = "drivetrain/belt-length";
    // Equal wheels by hand: 50 teeth of arc and two runs; 130 teeth of 11 mm leave 40 × 11 = 440 mm for each run.
    const outcome = (chainstay: string, belt = "teeth: 130 t; pitch: 11 mm") =>
      text(bike(`chainstay: ${chainstay}; dropout: sliding`, belt)).outcome(code);
    expect(outcome("440 to 450 mm")).toBe("holds");
    expect(outcome("430 to 440 mm")).toBe("holds");
    expect(outcome("440.1 to 450 mm")).toBe("fails");
    expect(outcome("430 to 439.9 mm")).toBe("fails");
    expect(outcome("430 to 450 mm", "teeth: 134 t; pitch: 11 mm")).toBe("fails");
    // The pitch of the family's standard stands in for the belt's own.
    expect(outcome("440 to 450 mm", "teeth: 130 t; drive-family: belt-11-centred")).toBe("holds");
    expect(outcome("440 to 450 mm", "teeth: 130 t; drive-family: belt-8-flanged")).toBe("fails");
    expect(outcome("440 to 450 mm", "teeth: 130 t")).toBe("unknown");
  });

  it("says whether the belt is too long or too short", () => {
    const message = (teeth: number) =>
      text(bike("chainstay: 436 to 444 mm; dropout: sliding", `teeth: ${teeth} t; pitch: 11 mm`)).of(
        "drivetrain/belt-length",
      )[0]?.message;
    expect(message(132)).toContain("451 mm, but it can be set to 436 to 444 mm only, so the belt is too long");
    expect(message(128)).toContain("429 mm, but it can be set to 436 to 444 mm only, so the belt is too short");
    expect(message(60)).toContain("does not reach round both");
  });

  it("finds dropouts that move nothing once", () => {
    const stuck = text(bike("chainstay: 435 mm; dropout: vertical", "teeth: 130 t; pitch: 11 mm"));
    expect(stuck.of("drivetrain/belt-tension")).toHaveLength(1);
    expect(stuck.outcome("drivetrain/belt-length")).toBe("notApplicable");
    for (const dropout of ["horizontal", "track-end", "sliding", "rocking", "eccentric"]) {
      expect(text(bike(`dropout: ${dropout}`, "teeth: 130 t")).outcome("drivetrain/belt-tension"), dropout).toBe(
        "holds",
      );
    }
  });

  it("wants an opening, and takes silence for none", () => {
    const code = "drivetrain/belt-opening";
    expect(text(bike("belt-opening: yes", "teeth: 130 t")).outcome(code)).toBe("holds");
    expect(text(bike("belt-opening: no", "teeth: 130 t")).outcome(code)).toBe("fails");
    expect(text(bike("dropout: sliding", "teeth: 130 t")).outcome(code)).toBe("fails");
    expect(text({ ...bike("belt-opening: no", ""), ...chain }).outcome(code)).toBe("notApplicable");
  });

  it("wants the frame approved, and says when nobody stated it", () => {
    const code = "drivetrain/belt-approved";
    expect(text(bike("belt-approved: yes", "teeth: 130 t")).outcome(code)).toBe("holds");
    expect(text(bike("belt-approved: no", "teeth: 130 t")).outcome(code)).toBe("fails");
    expect(text(bike("dropout: sliding", "teeth: 130 t")).missing(code)).toEqual(["frame.belt-approved"]);
    expect(text(bike("forbids: belt", "teeth: 130 t")).outcome(code)).toBe("fails");
    expect(text({ ...bike("belt-approved: no", ""), ...chain }).outcome(code)).toBe("notApplicable");
  });

  it("wants ring and sprocket in line", () => {
    const code = "drivetrain/belt-line";
    const outcome = (cogLine: string, belt = "line-tolerance: 1 mm") =>
      text(bike("dropout: sliding", belt, { "rear-wheel.hub": part("hub", `cog-line: ${cogLine}`) })).outcome(code);
    expect(outcome("46 mm")).toBe("holds");
    expect(outcome("45 mm")).toBe("holds");
    expect(outcome("47 mm")).toBe("holds");
    expect(outcome("44.9 mm")).toBe("fails");
    expect(outcome("47.1 mm")).toBe("fails");
    expect(outcome("46 mm", "teeth: 130 t")).toBe("unknown");
    // 1.811 in = 45.9994 mm.
    expect(outcome("1.811 in")).toBe("holds");
  });

  it("is not one family with a chain's teeth", () => {
    const mixed = text(
      bike("dropout: sliding", "drive-family: belt-11-centred", {
        "drivetrain.chainring": part("belt-ring", "teeth: 50 t; drive-family: belt-11-centred"),
        "drivetrain.cassette": part("sprocket", "cogs: 22 t; drive-family: belt-8-flanged"),
        "drivetrain.rear-derailleur": "none",
      }),
    );
    expect(mixed.of("drivetrain/drive-family").map(({ path }) => path)).toEqual(["drivetrain.cassette"]);
  });
});
