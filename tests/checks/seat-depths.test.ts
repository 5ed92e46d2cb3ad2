import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, part } from "./compose.ts";

describe("seat/insertion-least and insertion-greatest", () => {
  function inserted(depth: string, post: string, frame: string): string {
    return compose({
      "seat.post": part("seatpost", post, depth === "" ? "" : `insertion: ${depth}`),
      frame: part("frame", frame),
    });
  }

  it.each([
    ["100 mm", "least-insertion: 100 mm", "least-post-insertion: 90 mm", "holds"],
    ["99.9 mm", "least-insertion: 100 mm", "least-post-insertion: 90 mm", "fails"],
    ["99.9 mm", "least-insertion: 90 mm", "least-post-insertion: 100 mm", "fails"],
    ["90 mm", "least-insertion: 90 mm", "least-post-insertion: none", "holds"],
    ["90 mm", "least-insertion: none", "least-post-insertion: none", "notApplicable"],
    // One of the two is enough to find a fault, and not enough to find none.
    ["89 mm", "least-insertion: 90 mm", 'size: "M"', "fails"],
    ["95 mm", "least-insertion: 90 mm", 'size: "M"', "unknown"],
    ["", "least-insertion: 90 mm", "least-post-insertion: 80 mm", "unknown"],
  ])("%s deep with %s and %s: %s", (depth, post, frame, outcome) => {
    expect(checkText(inserted(depth, post, frame)).outcome("seat/insertion-least")).toBe(outcome);
  });

  it("says both depths, whose they are and by how much", () => {
    const text = inserted("82 mm", "least-insertion: 90 mm", "least-post-insertion: 105 mm");
    expect(checkText(text).of("seat/insertion-least")[0]?.message).toMatch(
      /82 mm deep, but frame asks for 105 mm.*23 mm/,
    );
    const [first] = repaired(text, "seat/insertion-least");
    expect(first?.title).toBe("Set the post 105 mm deep (seat.post.insertion: 105 mm)");
    const mark = inserted("82 mm", "least-insertion: 110 mm", "least-post-insertion: 105 mm");
    expect(checkText(mark).of("seat/insertion-least")[0]?.message).toContain("the mark of post asks for 110 mm");
  });

  it.each([
    ["220 mm", "dropper-travel: none", "greatest-post-insertion: 220 mm", "holds"],
    ["220.1 mm", "dropper-travel: none", "greatest-post-insertion: 220 mm", "fails"],
    ["220 mm", "body-length: 219 mm", "greatest-post-insertion: 230 mm", "fails"],
    ["219 mm", "body-length: 219 mm", "greatest-post-insertion: 230 mm", "holds"],
    ["219 mm", "body-length: 219 mm", 'size: "M"', "unknown"],
    ["220 mm", "body-length: 219 mm", 'size: "M"', "fails"],
    ["220 mm", "dropper-travel: none", "greatest-post-insertion: none", "notApplicable"],
  ])("%s deep with %s in %s: %s", (depth, post, frame, outcome) => {
    expect(checkText(inserted(depth, post, frame)).outcome("seat/insertion-greatest")).toBe(outcome);
  });

  it("says what stops the post", () => {
    const tube = checkText(inserted("230 mm", "body-length: 260 mm", "greatest-post-insertion: 210 mm"));
    expect(tube.of("seat/insertion-greatest")[0]?.message).toMatch(/230 mm deep.*free for 210 mm only.*less travel/);
    const collar = checkText(inserted("230 mm", "body-length: 200 mm", "greatest-post-insertion: 210 mm"));
    expect(collar.of("seat/insertion-greatest")[0]?.message).toMatch(/collar sits on the tube at 200 mm/);
  });
});

describe("the depth that mends a post", () => {
  // The sine of the seat angle is 0.9, so that 45 mm of saddle come to 50 mm along a seat tube of 500 mm: with a post of
  // 350 mm the saddle's top stands 900 mm less the depth high.
  function aimed(depth: string, height: string, limits: string): string {
    const aims = `\n  fit { saddle-height: ${height}; tolerance: 3 mm }\n}\n`;
    const text = compose({
      frame: part(
        "frame",
        `seat-angle: 64.15806723683288°; seat-tube-offset: 0 mm; seat-tube-length: 500 mm; ${limits}`,
      ),
      "seat.post": part(
        "seatpost",
        "overall-length: 350 mm; setback: 0 mm; least-insertion: 80 mm; dropper-travel: none",
        `insertion: ${depth}`,
      ),
      "seat.saddle": part("saddle", "height: 45 mm; clamp-to-sitting: 0 mm", "rail-position: 0 mm"),
    });
    return text.replace(/\n\}\n$/u, aims);
  }
  const limits = "least-post-insertion: 100 mm; greatest-post-insertion: 200 mm";

  it.each([
    ["60 mm", "750 mm", limits, "insertion-least", "150 mm"],
    ["60 mm", "749.8 mm", limits, "insertion-least", "150 mm"],
    ["60 mm", "800 mm", limits, "insertion-least", "100 mm"],
    ["60 mm", "700 mm", limits, "insertion-least", "200 mm"],
    // Too high and too low for the limits: the limit of the post itself is all that can be offered.
    ["60 mm", "801 mm", limits, "insertion-least", "100 mm"],
    ["60 mm", "699 mm", limits, "insertion-least", "100 mm"],
    ["230 mm", "750 mm", limits, "insertion-greatest", "150 mm"],
    ["230 mm", "699 mm", limits, "insertion-greatest", "200 mm"],
    ["230 mm", "801 mm", limits, "insertion-greatest", "200 mm"],
    // Rounded to half a millimetre, but never over the limit.
    [
      "60 mm",
      "700.2 mm",
      "least-post-insertion: 100 mm; greatest-post-insertion: 199.9 mm",
      "insertion-least",
      "199.5 mm",
    ],
    [
      "230 mm",
      "799.8 mm",
      "least-post-insertion: 100.1 mm; greatest-post-insertion: 200 mm",
      "insertion-greatest",
      "100.5 mm",
    ],
  ])("%s for a saddle at %s: %s, %s offers %s", (depth, height, frame, check, offered) => {
    const text = aimed(depth, height, frame);
    const [set] = repaired(text, `seat/${check}`).filter(({ title }) => title.includes("insertion:"));
    expect(set?.title).toContain(`insertion: ${offered})`);
    expect(checkText(set?.text ?? "").outcome(`seat/${check}`)).toBe("holds");
  });

  it("says which depth gives the height", () => {
    const [least] = checkText(aimed("60 mm", "750 mm", limits)).of("seat/insertion-least");
    expect(least?.message).toMatch(/lower it by at least 40 mm \(150 mm deep gives the saddle height aimed at\)/);
    const [greatest] = checkText(aimed("230 mm", "750 mm", limits)).of("seat/insertion-greatest");
    expect(greatest?.message).toMatch(/or set it 150 mm deep for the saddle height aimed at/);
    const [plain] = checkText(aimed("60 mm", "801 mm", limits)).of("seat/insertion-least");
    expect(plain?.message).toMatch(/lower it by 40 mm, or fit/);
  });
});

describe("seat/rail-range", () => {
  it.each([
    ["15 mm", "holds"],
    ["15.1 mm", "fails"],
    ["-15 mm", "holds"],
    ["-15.1 mm", "fails"],
  ])("70 mm of rail less 40 mm of clamp, moved by %s: %s", (position, outcome) => {
    // Straight rail 70 and clamp 40 leave 30 mm in all (trade glossaries), 15 each way.
    const text = compose({
      "seat.saddle": part("saddle", "straight-rail-length: 70 mm", `rail-position: ${position}`),
      "seat.post": part("seatpost", "clamp-length: 40 mm"),
    });
    expect(checkText(text).outcome("seat/rail-range")).toBe(outcome);
    if (outcome === "fails") {
      for (const { text: mended } of repaired(text, "seat/rail-range")) {
        expect(checkText(mended).outcome("seat/rail-range")).toBe("holds");
      }
    }
  });

  it("finds a clamp that is longer than the straight", () => {
    const text = compose({
      "seat.saddle": part("saddle", "straight-rail-length: 40 mm", "rail-position: 0 mm"),
      "seat.post": part("seatpost", "clamp-length: 41 mm"),
    });
    expect(checkText(text).of("seat/rail-range")[0]?.message).toMatch(/40 mm.*41 mm.*shorter clamp/);
  });
});

describe("seat/height-reachable", () => {
  const code = "seat/height-reachable";
  /** Upright tube of 400 mm, saddle 50 mm: the height is 450 mm and what stands out of the tube. */
  function reach(aim: string, post: string, settings = "", greatest = "greatest-post-insertion: 200 mm"): string {
    return `${compose({
      frame: part(
        "frame",
        `seat-angle: 85°; seat-tube-offset: 0 mm; seat-tube-length: 400 mm; least-post-insertion: 80 mm; ${greatest}`,
      ),
      "seat.post": part("seatpost", `setback: 0 mm; ${post}`, settings),
      "seat.saddle": part("saddle", "height: 50 mm"),
    }).replace(/\n\}\n$/, `\n  fit { ${aim} }\n}\n`)}`;
  }
  const rigid = "overall-length: 350 mm; least-insertion: 100 mm; dropper-travel: none";
  // At 85 degrees the saddle's 50 mm are 50.19 mm along the tube: from 600.19 to 700.19 mm.
  it.each([
    ["saddle-height: 700 mm", "holds"],
    ["saddle-height: 701 mm", "fails"],
    ["saddle-height: 709 mm; tolerance: 9 mm", "holds"],
    ["saddle-height: 709 mm; tolerance: 8 mm", "fails"],
    ["saddle-height: 601 mm", "holds"],
    ["saddle-height: 600 mm", "fails"],
    ["tolerance: 5 mm", "notApplicable"],
  ])("a post of 350 mm and an aim of %s: %s", (aim, outcome) => {
    expect(checkText(reach(aim, rigid)).outcome(code)).toBe(outcome);
  });

  it("knows the upper end where the lower one is not stated", () => {
    expect(checkText(reach("saddle-height: 720 mm", rigid, "", "")).outcome(code)).toBe("fails");
    expect(checkText(reach("saddle-height: 690 mm", rigid, "", "")).outcome(code)).toBe("unknown");
    const text = checkText(reach("saddle-height: 690 mm", rigid, "", ""));
    expect(text.missing(code)).toEqual(["frame.greatest-post-insertion"]);
    expect(checkText(reach("saddle-height: 690 mm", rigid, "", "greatest-post-insertion: none")).outcome(code)).toBe(
      "holds",
    );
  });

  const dropper =
    "overall-length: 450 mm; least-insertion: 100 mm; dropper-travel: 170 mm; travel-options: 140 to 170 mm; body-length: 190 mm";

  it("counts a dropper's collar, and less travel where it can be set", () => {
    // Pushed in to its collar it stands 260 mm out: 710.19 mm.
    expect(checkText(reach("saddle-height: 711 mm", dropper)).outcome(code)).toBe("holds");
    const text = reach("saddle-height: 700 mm", dropper);
    expect(checkText(text).of(code)[0]?.message).toMatch(/700 mm.*710\.2 mm.*set its travel to 159\.5 mm/);
    const [first] = repaired(text, code);
    expect(first?.title).toBe("Set the dropper to 159.5 mm of travel (seat.post.travel-set: 159.5 mm)");
    expect(checkText(first?.text ?? "").outcome(code)).toBe("holds");
    const low = reach("saddle-height: 650 mm", dropper);
    expect(checkText(low).of(code)[0]?.message).toMatch(/a dropper with at least 60 mm less travel/);
    expect(repaired(low, code)).toEqual([]);
  });

  it("is longer still for who needs more", () => {
    expect(checkText(reach("saddle-height: 760 mm", rigid)).of(code)[0]?.message).toMatch(
      /760 mm.*700\.2 mm.*60 mm longer/,
    );
  });
});

describe("seat/dropper-travel and dropper-allowed", () => {
  it.each([
    ["dropper-travel: 170 mm; travel-options: 140 to 170 mm", "140 mm", "holds"],
    ["dropper-travel: 170 mm; travel-options: 140 to 170 mm", "139 mm", "fails"],
    ["dropper-travel: 170 mm", "170 mm", "holds"],
    ["dropper-travel: 170 mm; travel-options: none", "150 mm", "fails"],
    ["dropper-travel: none", "150 mm", "notApplicable"],
  ])("%s set to %s: %s", (post, set, outcome) => {
    const text = compose({ "seat.post": part("seatpost", post, `travel-set: ${set}`) });
    expect(checkText(text).outcome("seat/dropper-travel")).toBe(outcome);
  });

  it.each([
    ["dropper-travel: 120 mm", "forbids: dropper-post", "fails"],
    ["dropper-travel: 120 mm", "forbids: rack", "holds"],
    ["dropper-travel: none", "forbids: dropper-post", "notApplicable"],
    ["dropper-travel: 120 mm", 'size: "M"', "notApplicable"],
  ])("%s in a frame with %s: %s", (post, frame, outcome) => {
    const text = compose({ "seat.post": part("seatpost", post), frame: part("frame", frame) });
    expect(checkText(text).outcome("seat/dropper-allowed")).toBe(outcome);
  });
});

describe("seat/dropper-control", () => {
  const code = "seat/dropper-control";
  function controlled(post: string, remote: string | "none" | undefined, more = ""): string {
    return compose(
      {
        "seat.post": part("seatpost", `dropper-travel: 150 mm; ${post}`),
        "seat.remote": remote === undefined || remote === "none" ? remote : part("remote", remote),
      },
      more,
    );
  }

  it.each([
    ["control: cable", "serves: dropper; control: cable", "holds"],
    ["control: cable", "serves: dropper; control: cable-at-post", "fails"],
    ["control: hydraulic", "serves: dropper; control: cable", "fails"],
    ["control: cable", "serves: fork; control: cable", "fails"],
    ["control: cable", "none", "fails"],
    ["control: cable", undefined, "unknown"],
    ["control: cable", "control: cable", "unknown"],
    ["control: lever", "none", "holds"],
    ["control: lever", "serves: dropper; control: cable", "notApplicable"],
    ["control: none", "serves: dropper; control: cable", "unknown"],
    ["setback: 0 mm", "serves: dropper; control: cable", "unknown"],
  ] as const)("a post with %s and a remote of %s: %s", (post, remote, outcome) => {
    expect(checkText(controlled(post, remote)).outcome(code)).toBe(outcome);
  });

  it("asks nothing of a rigid post", () => {
    const text = compose({ "seat.post": part("seatpost", "dropper-travel: none") });
    expect(checkText(text).outcome(code)).toBe("notApplicable");
  });

  const radios = 'standard shift-family a "A" { source: "test" }\nstandard shift-family b "B" { source: "test" }\n';
  it.each([
    ["a", "a", "holds"],
    ["a", "b", "fails"],
    ["a", "none", "unknown"],
    ["none", "a", "unknown"],
  ])("electronic parts of %s and %s: %s", (post, remote, outcome) => {
    const text = controlled(
      `control: electronic; shift-family: ${post}`,
      `serves: dropper; control: electronic; shift-family: ${remote}`,
      radios,
    );
    expect(checkText(text).outcome(code)).toBe(outcome);
  });

  it("adds a remote that works as the post does", () => {
    const text = `${controlled("control: cable-at-post", "none")}
part remote test.pulls "Pulls" { serves: dropper; control: cable-at-post }
part remote test.other "Other" { serves: dropper; control: cable }
`;
    const [first] = repaired(text, code);
    expect(first?.title).toContain("test.pulls");
    expect(checkText(first?.text ?? "").outcome(code)).toBe("holds");
  });
});

describe("seat/rider-mass", () => {
  const code = "seat/rider-mass";
  const ridden = (rider: string, post: string) =>
    compose({ "seat.post": part("seatpost", post), "seat.saddle": part("saddle", "max-rider-mass: none") }).replace(
      /\n\}\n$/,
      `\n  ${rider}\n}\n`,
    );

  it.each([
    ["rider.mass: 90 kg", "max-rider-mass: 90 kg", "holds"],
    ["rider.mass: 90.1 kg", "max-rider-mass: 90 kg", "fails"],
    ["rider.kit-mass: 5 kg", "max-rider-mass: 90 kg", "unknown"],
    ["rider.kit-mass: 5 kg", "max-rider-mass: none", "notApplicable"],
    ["rider.mass: 120 kg", "setback: 0 mm", "notApplicable"],
  ])("%s on a post with %s: %s", (rider, post, outcome) => {
    const text = checkText(ridden(rider, post));
    expect(text.instance(code, "seat.post")).toBe(outcome);
    expect(text.instance(code, "seat.saddle")).toBe("notApplicable");
  });
});
