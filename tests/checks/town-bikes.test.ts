import { describe, expect, it } from "vitest";
import { checkText, textSlips } from "./check-text.ts";
import { compose, part } from "./compose.ts";

/** What is not to be asked of town, touring and children's bikes, and what is. */

describe("cockpit/bar-end-plugs with shifters in the bar's ends", () => {
  const code = "cockpit/bar-end-plugs";
  const bar = (rear: string, front: string) =>
    checkText(
      compose({
        "cockpit.handlebar": part("handlebar", "bar: drop"),
        "cockpit.grips": "none",
        "cockpit.tape": part("tape", "plugs-supplied: no"),
        "cockpit.bar-end-plugs": "none",
        "drivetrain.rear-controller": part("shift-controller", `mount: ${rear}`),
        "drivetrain.front-controller": part("shift-controller", `mount: ${front}`),
      }),
    ).outcome(code);

  it.each([
    ["bar-end", "bar-end", "holds"],
    // One shifter leaves the other end open.
    ["bar-end", "band-22.2", "fails"],
    ["band-22.2", "bar-end", "fails"],
    ["band-22.2", "band-22.2", "fails"],
  ])("rear %s and front %s: %s", (rear, front, outcome) => expect(bar(rear, front)).toBe(outcome));
});

describe("steering/spacer-limit", () => {
  const front = (shape: string, stem: string, limit: string) =>
    checkText(
      compose({
        fork: part("fork", `steerer-shape: ${shape}; ${limit}`),
        "cockpit.stem": part("stem", "length: 80 mm", stem),
      }),
    );

  it("asks nothing of a threaded steerer, whatever nobody stated", () => {
    expect(front("threaded", "", "").outcome("steering/spacer-limit")).toBe("notApplicable");
  });

  it("asks the limit of a plain one", () => {
    expect(front("round", "", "").missing("steering/spacer-limit")).toEqual([
      "cockpit.stem.spacers-below",
      "fork.greatest-spacers",
    ]);
    expect(front("round", "spacers-below: 5 mm", "greatest-spacers: none").outcome("steering/spacer-limit")).toBe(
      "notApplicable",
    );
  });
});

describe("wheel/end-caps", () => {
  const wheel = (fastening: string, more = "", fork = "") =>
    checkText(
      compose({
        fork: part("fork", `axle: 9x100; ${fork}`),
        "front-wheel.hub": part("hub", `axle: 9x100; axle-fastening: ${fastening}; ${more}`),
      }),
    );

  it.each([
    ["nutted", "notApplicable"],
    ["bolted", "notApplicable"],
    ["quick-release", "notApplicable"],
    ["through", "unknown"],
  ])("a %s axle: %s", (fastening, outcome) => expect(wheel(fastening).outcome("wheel/end-caps")).toBe(outcome));

  it("names both diameters", () => {
    expect(wheel("through").missing("wheel/end-caps")).toEqual([
      "front-wheel.hub.end-cap-diameter",
      "fork.end-cap-diameter",
    ]);
    // Open dropouts have no recesses; whoever states one of the two is asked the other.
    expect(wheel("quick-release", "end-cap-diameter: 31 mm").missing("wheel/end-caps")).toEqual([
      "fork.end-cap-diameter",
    ]);
    expect(wheel("quick-release", "end-cap-diameter: none").outcome("wheel/end-caps")).toBe("notApplicable");
    expect(wheel("quick-release", "end-cap-diameter: 31 mm", "end-cap-diameter: 22 mm").outcome("wheel/end-caps")).toBe(
      "fails",
    );
  });
});

describe("brake/rim-brake-reach of arms on bosses", () => {
  const rear = (arms: string, brake = "", frame = "") =>
    checkText(
      compose({
        frame: part("frame", `rear-brake-mount: rim-bosses; ${frame}`),
        "rear-brake.caliper": part("rim-brake", `mount: rim-bosses; arms: ${arms}; ${brake}`),
      }),
    ).instance("brake/rim-brake-reach", "rear");

  it.each([
    ["cantilever", "", "", "notApplicable"],
    ["direct-pull", "", "", "notApplicable"],
    ["dual-pivot", "", "", "unknown"],
    // Whoever states one of the two is asked the other.
    ["direct-pull", "reach: 22 to 30 mm", "", "unknown"],
    ["direct-pull", "", "rear-brake-reach: 26 mm", "unknown"],
    ["direct-pull", "reach: 22 to 30 mm", "rear-brake-reach: 26 mm", "holds"],
    ["direct-pull", "reach: 22 to 30 mm", "rear-brake-reach: 32 mm", "fails"],
  ])("%s %s %s: %s", (arms, brake, frame, outcome) => expect(rear(arms, brake, frame)).toBe(outcome));
});

describe("a quill's wedge", () => {
  it.each([
    ["16 to 33 N·m", 0],
    ["18 to 41 N·m", 1],
  ])("may be drawn up to %s", (torque, slips) => {
    const text = compose({ "cockpit.stem": part("stem", `clamping: quill; steerer-torque: ${torque}`) });
    expect(textSlips(text)).toHaveLength(slips);
  });
});

describe("drivetrain/coaster-arm on a stay", () => {
  const code = "drivetrain/coaster-arm";
  const bike = (frame: string, fixed = "arm-fixed: yes") =>
    checkText(compose({ frame: part("frame", frame), "rear-wheel.hub": part("hub", "coaster-brake: yes", fixed) }));

  it("fails where the frame's maker allows no arm, even a fixed one", () => {
    const found = bike("coaster-arm-allowed: no").of(code);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ severity: "error", path: "rear-wheel.hub" });
    expect(found[0]?.message).toContain("coaster-arm-allowed: no");
    expect(found[0]?.repairs).toContainEqual({ kind: "swap-part", slot: "rear-wheel.hub" });
  });

  it.each([
    ["coaster-arm-allowed: yes", "arm-fixed: yes", "holds"],
    ["coaster-arm-allowed: yes", "arm-fixed: no", "fails"],
    ["coaster-arm-allowed: yes", "", "unknown"],
    // Nobody said: steel bears the clip by common practice, anything else only by its maker's word.
    ["material: steel", "arm-fixed: yes", "holds"],
    ["material: stainless-steel", "arm-fixed: yes", "holds"],
    ["material: steel", "arm-fixed: no", "fails"],
    ["material: steel", "", "unknown"],
    ["material: steel; coaster-arm-allowed: no", "arm-fixed: yes", "fails"],
    ["material: aluminium", "arm-fixed: yes", "unknown"],
    ["material: aluminium", "arm-fixed: no", "fails"],
    ["material: aluminium; coaster-arm-allowed: yes", "arm-fixed: yes", "holds"],
    ["material: carbon", "arm-fixed: yes", "unknown"],
    ['size: "M"', "arm-fixed: yes", "unknown"],
  ])("%s with %s: %s", (frame, fixed, outcome) => expect(bike(frame, fixed).outcome(code)).toBe(outcome));

  it("names what the frame's maker has to say, and says where practice stands in", () => {
    expect(bike("material: aluminium").missing(code)).toEqual(["frame.coaster-arm-allowed"]);
    expect(bike("material: aluminium", "").missing(code)).toEqual([
      "rear-wheel.hub.arm-fixed",
      "frame.coaster-arm-allowed",
    ]);
    expect(bike("material: steel", "").missing(code)).toEqual(["rear-wheel.hub.arm-fixed"]);
    const said = (frame: string) => {
      const verdict = bike(frame).row(code).instances[0]?.verdict;
      return verdict?.outcome === "holds" ? verdict.message : verdict?.outcome;
    };
    expect(said("material: steel")).toMatch(/fixed to the frame\. The maker of frame does not say.*of steel.*practice/);
    expect(said("material: steel; coaster-arm-allowed: yes")).not.toMatch(/practice/);
  });
});

describe("drivetrain/single-speed-tension with an arm that takes up little", () => {
  const code = "drivetrain/single-speed-tension";
  const bike = (links: number) =>
    checkText(
      compose({
        // Equal wheels by hand: 20 links of arc and two runs of 386 mm, 60.79 links, make 80.79.
        frame: part("frame", "chainstay: 386 mm; dropout: vertical"),
        "drivetrain.crankset": part("crankset", "rings: 20 t"),
        "drivetrain.cassette": part("sprocket", "cogs: 20 t"),
        "drivetrain.rear-derailleur": "none",
        "drivetrain.chain-tensioner": part("chain-tensioner", "tension: sprung; total-capacity: 1 t"),
        "drivetrain.chain": part("chain", "speeds: 1; closure: pin", `links: ${links}`),
      }),
    ).of(code)[0];

  it.each([
    // 1.21 links too many are 2.4 t of slack, and 3.21 are 6.4 t; the next shorter chain, of 80, does not reach.
    [82, "takes up 3 t"],
    [84, "takes up 7 t"],
  ])("does not say to cut %i links to what hangs too far as well", (links, words) => {
    const finding = bike(links);
    expect(finding?.message).toContain(words);
    expect(finding?.message).not.toContain("take out links");
    expect(finding?.repairs).toEqual([{ kind: "swap-part", slot: "drivetrain.chain-tensioner" }]);
  });
});

describe("a lacing that cannot be", () => {
  const wheel = (settings: string) =>
    checkText(
      compose({
        "front-wheel.hub": "none",
        "front-wheel.spokes": "none",
        "rear-wheel.hub": part(
          "hub",
          "spoke-holes: 32; spoke-hole-diameter: 2.6 mm; flange-diameter-left: 45 mm; flange-diameter-right: 45 mm; flange-offset-left: 37 mm; flange-offset-right: 18 mm",
        ),
        "rear-wheel.rim": part("rim", "effective-rim-diameter: 600 mm; hole-offset: 0 mm; rim-holes: 32"),
        "rear-wheel.spokes": part("spokes", "spoke-head: elbow", settings),
      }),
    );
  const lengths = "length-drive-side: 280 mm; length-non-drive-side: 280 mm";

  it("is found once, and its lengths are not judged", () => {
    const impossible = wheel(`cross: 5; ${lengths}`);
    expect(impossible.of("wheel/lacing-possible")).toHaveLength(1);
    expect(impossible.of("wheel/spoke-length")).toHaveLength(0);
    expect(impossible.instance("wheel/spoke-length", "rear")).toBe("notApplicable");
  });

  it("leaves the lengths of one that can be to be judged", () => {
    expect(wheel(`cross: 3; ${lengths}`).of("wheel/spoke-length")).toHaveLength(1);
    expect(wheel(`cross: 3; ${lengths}`).of("wheel/lacing-possible")).toHaveLength(0);
  });
});

describe("the mark of a quill that nobody read", () => {
  const stem = (facts: string) =>
    checkText(compose({ "cockpit.stem": part("stem", `clamping: quill; ${facts}`, "quill-insertion: 50 mm") }));

  it("is asked for beside the quill's length, and may be stated to be absent", () => {
    expect(stem("quill-length: 180 mm").missing("steering/quill-insertion")).toEqual([
      "cockpit.stem.least-quill-insertion",
    ]);
    expect(stem("quill-length: 180 mm; least-quill-insertion: none").outcome("steering/quill-insertion")).toBe(
      "notApplicable",
    );
    expect(stem("quill-length: 180 mm; least-quill-insertion: 65 mm").outcome("steering/quill-insertion")).toBe(
      "fails",
    );
  });
});
