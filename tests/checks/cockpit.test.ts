import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, part } from "./compose.ts";

const clamp = "cockpit/clamp-interface";
const rear = "drivetrain.rear-controller";

const library = `
standard control-clamp fitting-a "Fitting A" { form: shared; source: "this test" }
standard control-clamp fitting-b "Fitting B" { form: shared; source: "this test" }
part brake-lever lever-a "Lever A" { mount: band-22.2; clamp-offers: fitting-a }
part brake-lever lever-b "Lever B" { mount: band-22.2; clamp-offers: fitting-b }
part brake-lever lever-both "Lever both" { mount: band-22.2; clamp-offers: fitting-a, fitting-b }
part brake-lever lever-plain "Lever plain" { mount: band-22.2; clamp-offers: none }
part brake-lever lever-silent "Lever silent" { mount: band-22.2 }
part brake-lever drop-lever "Drop lever" { mount: band-23.8; clamp-offers: none; actuation: cable; bars: drop }
part shift-controller pod-a "Pod A" { mount: fitting-a }
part shift-controller pod-b "Pod B" { mount: fitting-b }
part shift-controller pod-band "Pod with a band" { mount: band-22.2 }
part shift-controller pod-silent "Pod silent" { speeds: 12 }
part shift-controller inner-shift "Inner shift" { mount: built-in }
part remote push-a "Push A" { serves: dropper; mount: fitting-a }
part remote push-band "Push with a band" { serves: dropper; mount: band-22.2 }
part frame f "F" { size: "M" }
`;

interface Cockpit {
  readonly rearLever?: string;
  readonly frontLever?: string;
  readonly controller?: string;
  readonly front?: string;
  readonly remote?: string;
}

function cockpit({
  rearLever = "lever-a",
  frontLever = "lever-plain",
  controller = "none",
  front = "none",
  remote = "none",
}: Cockpit): string {
  const line = (path: string, part: string): string => (part === "" ? "" : `  ${path}: ${part}\n`);
  return `${library}
build example "Example" {
  frame: f
${line("rear-brake.lever", rearLever === "" || rearLever === "none" ? rearLever : `${rearLever} { side: right }`)}${line("front-brake.lever", frontLever === "" || frontLever === "none" ? frontLever : `${frontLever} { side: left }`)}${line("drivetrain.rear-controller", controller)}${line("drivetrain.front-controller", front)}${line("seat.remote", remote)}}
`;
}

describe("cockpit/clamp-interface", () => {
  it.each<[string, Cockpit]>([
    ["a band of its own", { controller: "pod-band" }],
    ["a band of its own, said to share nothing", { controller: "pod-band { clamp: none }" }],
    ["the lever's clamp", { controller: "pod-a { clamp: rear-brake.lever }" }],
    [
      "the clamp of a lever that offers two",
      { rearLever: "lever-both", controller: "pod-b { clamp: rear-brake.lever }" },
    ],
    [
      "a lever with the control in it",
      { rearLever: "drop-lever", controller: "drop-lever { clamp: rear-brake.lever }" },
    ],
    [
      "a control that is part of the lever",
      { rearLever: "drop-lever", controller: "inner-shift { clamp: rear-brake.lever }" },
    ],
  ])("holds with %s", (_, parts) => {
    expect(checkText(cockpit(parts)).instance(clamp, rear)).toBe("holds");
  });

  it.each<[string, Cockpit, RegExp]>([
    [
      "a lever that offers another fitting",
      { rearLever: "lever-b", controller: "pod-a { clamp: rear-brake.lever }" },
      /Pod A is held by fitting-a.*Lever B \(rear-brake\.lever\) offers fitting-b/,
    ],
    [
      "a lever that offers none",
      { rearLever: "lever-plain", controller: "pod-a { clamp: rear-brake.lever }" },
      /Lever plain.*offers no clamp to share/,
    ],
    ["nothing said of the clamp", { controller: "pod-a" }, /no band of its own.*write clamp: rear-brake\.lever/],
    [
      "no clamp free on the bar",
      { rearLever: "lever-plain", controller: "pod-a" },
      /nothing on the bar has such a clamp free/,
    ],
    [
      "a band, hung on a lever all the same",
      { controller: "pod-band { clamp: rear-brake.lever }" },
      /Pod with a band has band-22\.2.*leave clamp out/,
    ],
    [
      "an empty place for its lever",
      { rearLever: "none", controller: "pod-a { clamp: front-brake.lever }", frontLever: "lever-b" },
      /Lever B \(front-brake\.lever\) offers fitting-b/,
    ],
    [
      "a lever named again as another one",
      { rearLever: "lever-a", frontLever: "drop-lever", controller: "drop-lever { clamp: rear-brake.lever }" },
      /the lever at rear-brake\.lever is Lever A/,
    ],
    ["a built-in control without its lever", { controller: "inner-shift" }, /does not say into which/],
    [
      "the other hand's lever",
      { controller: "pod-a { clamp: rear-brake.lever; side: left }" },
      /at the left hand.*at the right/,
    ],
  ])("fails with %s", (_, parts, message) => {
    const text = checkText(cockpit(parts));
    expect(text.of(clamp).map((finding) => finding.message)).toHaveLength(1);
    expect(text.of(clamp)[0]?.message).toMatch(message);
    expect(text.of(clamp)[0]?.path).toBe(rear);
  });

  it.each<[string, Cockpit, string]>([
    ["the control's mount", { controller: "pod-silent { clamp: rear-brake.lever }" }, `${rear}.mount`],
    [
      "what the lever's clamp offers",
      { rearLever: "lever-silent", controller: "pod-a { clamp: rear-brake.lever }" },
      "rear-brake.lever.clamp-offers",
    ],
    ["which lever is fitted", { rearLever: "", frontLever: "lever-plain", controller: "pod-a" }, "rear-brake.lever"],
    ["which control is fitted", { controller: "" }, rear],
  ])("cannot tell without %s", (_, parts, missing) => {
    const text = checkText(cockpit(parts));
    expect(text.instance(clamp, rear)).toBe("unknown");
    expect(text.missing(clamp)).toContain(missing);
  });

  it("leaves a lever without a shift control to the check of what moves the derailleur, where there is one", () => {
    const text = cockpit({ rearLever: "lever-a", controller: "lever-a { clamp: rear-brake.lever }" });
    expect(checkText(text).instance(clamp, rear)).toBe("fails");
    const moving = `part rear-derailleur d "D" { speeds: 12 }\n${text.replace("  frame: f\n", "  frame: f\n  drivetrain.rear-derailleur: d\n")}`;
    expect(checkText(moving).instance(clamp, rear)).toBe("notApplicable");
    expect(checkText(moving).outcome("drivetrain/actuation")).toBe("fails");
  });

  it("does not arise without a control", () => {
    expect(checkText(cockpit({})).outcome(clamp)).toBe("notApplicable");
  });

  it("finds one clamp used twice once, at the later control, and points to both", () => {
    const text = cockpit({
      controller: "pod-a { clamp: rear-brake.lever }",
      remote: "push-a { clamp: rear-brake.lever }",
    });
    const checked = checkText(text);
    expect(checked.instance(clamp, rear)).toBe("holds");
    expect(checked.instance(clamp, "seat.remote")).toBe("fails");
    const [finding, ...others] = checked.of(clamp);
    expect(others).toEqual([]);
    expect(finding?.message).toMatch(/carries Pod A \(drivetrain\.rear-controller\) already.*Push A/);
    const places = finding?.related.map(({ place }) => place.declaration.text.slice(place.span.start, place.span.end));
    expect(places).toEqual(["rear-brake.lever", "fitting-a", "rear-brake.lever"]);
  });

  it("does not count a control that is built in, or has a band, as a user of the clamp", () => {
    const text = cockpit({
      rearLever: "lever-a",
      controller: "pod-band { clamp: rear-brake.lever }",
      remote: "push-a { clamp: rear-brake.lever }",
    });
    expect(checkText(text).instance(clamp, "seat.remote")).toBe("holds");
  });

  it.each<[string, Cockpit, string]>([
    [
      "nothing said of the clamp",
      { controller: "pod-a" },
      `Mount it on the clamp of rear-brake.lever (${rear}.clamp: rear-brake.lever)`,
    ],
    [
      "the wrong lever of two",
      { rearLever: "lever-b", frontLever: "lever-a", controller: "pod-a { clamp: rear-brake.lever }" },
      `Mount it on the clamp of front-brake.lever (${rear}.clamp: front-brake.lever)`,
    ],
    [
      "a band, hung on a lever",
      { controller: "pod-band { clamp: rear-brake.lever }" },
      `Fit it with a band of its own (${rear}.clamp: none)`,
    ],
    [
      "a fitting that the lever has not",
      { rearLever: "lever-b", controller: "pod-a { clamp: rear-brake.lever }" },
      `Fit Pod B (pod-b) as ${rear}`,
    ],
    [
      "a lever that offers none",
      { rearLever: "lever-plain", controller: "pod-a { clamp: rear-brake.lever }" },
      "Fit Lever A (lever-a) as rear-brake.lever",
    ],
    [
      "one clamp used twice, the other free",
      {
        frontLever: "lever-a",
        controller: "pod-a { clamp: rear-brake.lever }",
        remote: "push-a { clamp: rear-brake.lever }",
      },
      "Mount it on the clamp of front-brake.lever (seat.remote.clamp: front-brake.lever)",
    ],
  ])("with %s offers a mend after which it holds", (_, parts, title) => {
    const mends = repaired(cockpit(parts), clamp);
    const mended = mends.find((mend) => mend.title === title);
    expect(mends.map((mend) => mend.title)).toContain(title);
    const after = checkText(mended?.text ?? "");
    expect(after.of(clamp)).toEqual([]);
    expect(after.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  });

  it("never offers a clamp that is taken", () => {
    const text = cockpit({
      rearLever: "lever-a",
      controller: "pod-a { clamp: rear-brake.lever }",
      remote: "push-a { clamp: rear-brake.lever }",
    });
    for (const { title, text: after } of repaired(text, clamp)) expect(checkText(after).of(clamp), title).toEqual([]);
  });
});

describe("cockpit/control-diameter", () => {
  const code = "cockpit/control-diameter";
  function bar(handlebar: string, over: Readonly<Record<string, string>>): string {
    const places = {
      "rear-brake.lever": "none",
      "front-brake.lever": "none",
      "drivetrain.rear-controller": "none",
      "drivetrain.front-controller": "none",
      "seat.remote": "none",
      "cockpit.grips": "none",
      ...over,
    };
    const lines = Object.entries(places).map(([path, part]) => (part === "" ? "" : `  ${path}: ${part}\n`));
    return `
standard control-clamp own-band "A band of no stated size" { form: band; source: "this test" }
standard control-clamp shared-fit "Shared" { form: shared; source: "this test" }
part handlebar h "H" { ${handlebar} }
part brake-lever flat-lever "Flat" { mount: band-22.2 }
part brake-lever drop-lever "Drop" { mount: band-23.8 }
part brake-lever odd-lever "Odd" { mount: own-band }
part shift-controller pod "Pod" { mount: shared-fit }
part grips g "G" { inside-diameter: 22.2 mm }
part remote wide "Wide" { serves: fork; mount: band-31.8 }
build example "Example" {
  cockpit.handlebar: h
${lines.join("")}}
`;
  }

  it.each<[string, Record<string, string>, string]>([
    ["control-diameter: 22.2 mm", { "rear-brake.lever": "flat-lever" }, "holds"],
    ["control-diameter: 22.4 mm", { "rear-brake.lever": "flat-lever" }, "holds"],
    ["control-diameter: 22.5 mm", { "rear-brake.lever": "flat-lever" }, "fails"],
    ["control-diameter: 23.8 mm", { "rear-brake.lever": "flat-lever" }, "fails"],
    ["control-diameter: 22.2 mm", { "front-brake.lever": "drop-lever" }, "fails"],
    ["control-diameter: 22.2 mm", { "cockpit.grips": "g" }, "holds"],
    ["control-diameter: 23.8 mm", { "cockpit.grips": "g" }, "fails"],
    ["control-diameter: 22.2 mm; clamp-diameter: 31.8 mm", { "cockpit.remote": "wide" }, "holds"],
    ["control-diameter: 22.2 mm; clamp-diameter: 35 mm", { "cockpit.remote": "wide" }, "fails"],
    ["control-diameter: 22.2 mm", { "cockpit.remote": "wide" }, "unknown"],
    // A lever stands where the hand is: the thick middle of the bar does not help it.
    ["control-diameter: 23.8 mm; clamp-diameter: 22.2 mm", { "rear-brake.lever": "flat-lever" }, "fails"],
    ["control-diameter: 22.2 mm", { "rear-brake.lever": "odd-lever" }, "unknown"],
    ["width: 760 mm", { "rear-brake.lever": "flat-lever" }, "unknown"],
    ["control-diameter: 22.2 mm", { "rear-brake.lever": "flat-lever", "front-brake.lever": "" }, "unknown"],
    // What is wrong already is wrong, whatever the open place will hold.
    ["control-diameter: 23.8 mm", { "rear-brake.lever": "flat-lever", "front-brake.lever": "" }, "fails"],
    [
      "control-diameter: 23.8 mm",
      { "drivetrain.rear-controller": "pod { clamp: rear-brake.lever }", "rear-brake.lever": "drop-lever" },
      "holds",
    ],
    ["control-diameter: 22.2 mm", {}, "notApplicable"],
  ])("a bar with %s, %o: %s", (handlebar, over, outcome) => {
    expect(checkText(bar(handlebar, over)).outcome(code)).toBe(outcome);
  });

  it("finds one wrong part at that part, with both diameters", () => {
    const [finding] = checkText(
      bar("control-diameter: 22.2 mm", { "rear-brake.lever": "drop-lever", "front-brake.lever": "flat-lever" }),
    ).of(code);
    expect(finding?.path).toBe("rear-brake.lever");
    expect(finding?.message).toMatch(/23\.8 mm.*22\.2 mm/);
  });

  it("finds a wrong bar once, at the bar, and names every part that does not go on it", () => {
    const findings = checkText(
      bar("control-diameter: 23.8 mm", {
        "rear-brake.lever": "flat-lever",
        "front-brake.lever": "flat-lever",
        "cockpit.grips": "g",
      }),
    ).of(code);
    expect(findings).toHaveLength(1);
    expect(findings[0]?.path).toBe("cockpit.handlebar");
    expect(findings[0]?.message).toMatch(/rear-brake\.lever.*front-brake\.lever.*cockpit\.grips/);
  });
});

describe("cockpit/torque-window", () => {
  const code = "cockpit/torque-window";
  function stemAndBar(stem: string, bar: string): string {
    return `
part stem s "S" { bar-clamp: 31.8 mm; ${stem} }
part handlebar h "H" { clamp-diameter: 31.8 mm; ${bar} }
build example "Example" { cockpit { stem: s; handlebar: h } }
`;
  }

  it.each([
    ["bar-torque: 4 to 6 N·m", "stem-clamp-torque: <= 5 N·m", "holds"],
    ["bar-torque: 5 to 6 N·m", "stem-clamp-torque: <= 5 N·m", "holds"],
    ["bar-torque: 5.1 to 6 N·m", "stem-clamp-torque: <= 5 N·m", "fails"],
    ["bar-torque: 3 to 4 N·m", "stem-clamp-torque: >= 5 N·m", "fails"],
    ["bar-torque: 5 N·m", "stem-clamp-torque: 5 N·m", "holds"],
    ["bar-torque: 44.2 lbf·in", "stem-clamp-torque: 5 to 6 N·m", "fails"],
    ["bar-torque: 5 N·m", 'note: "nothing"', "unknown"],
    ['note: "nothing"', "stem-clamp-torque: 5 N·m", "unknown"],
    ["bar-torque: 5 N·m", "stem-clamp-torque: none", "notApplicable"],
  ])("a stem with %s and a bar with %s: %s", (stem, bar, outcome) => {
    expect(checkText(stemAndBar(stem, bar)).instance(code, "stem-bar")).toBe(outcome);
  });

  it("names both windows, warns of the lower figure, and is never hidden by a waiver", () => {
    const text = stemAndBar("bar-torque: 6 to 8 N·m", "stem-clamp-torque: 3 to 5 N·m");
    const [finding] = checkText(text).of(code);
    expect(finding?.message).toMatch(/H states 3 to 5 N·m and S states 6 to 8 N·m.*do not settle on the lower/);
    expect(finding?.caution).toMatch(/faceplate/);
    expect(checkText(text).row(code).check.safety).toBe(true);
  });

  it("says the torque that suits both", () => {
    const row = checkText(stemAndBar("bar-torque: 4 to 6 N·m", "stem-clamp-torque: <= 5 N·m")).row(code);
    const verdict = row.instances.find(({ instance }) => instance === "stem-bar")?.verdict;
    expect(verdict?.outcome === "holds" && verdict.message).toContain("4 to 5 N·m suits every part");
  });

  it("counts the post in the seat clamp as a third part", () => {
    const seat = (post: string) =>
      `
part frame f "F" { seat-clamp-diameter: 34.9 mm; seat-clamp-torque: 5 to 7 N·m }
part seat-clamp c "C" { inside-diameter: 34.9 mm; clamp-torque: 4 to 6 N·m }
part seatpost p "P" { ${post} }
build example "Example" { frame: f; seat { clamp: c; post: p } }
`
        .replace("{ frame: f; seat {", "{\n  frame: f\n  seat {")
        .replace("} }\n", "}\n}\n");
    expect(checkText(seat("seat-clamp-torque: <= 5 N·m")).instance(code, "seat-clamp")).toBe("holds");
    expect(checkText(seat("seat-clamp-torque: <= 4 N·m")).instance(code, "seat-clamp")).toBe("fails");
    expect(checkText(seat("post-diameter: 31.6 mm")).instance(code, "seat-clamp")).toBe("unknown");
  });

  it("does not speak of torque where the parts do not fit each other in the first place", () => {
    const text = stemAndBar("bar-torque: 6 to 8 N·m", "stem-clamp-torque: 3 to 5 N·m").replace(
      "clamp-diameter: 31.8 mm",
      "clamp-diameter: 35 mm",
    );
    expect(checkText(text).instance(code, "stem-bar")).toBe("notApplicable");
    const crank = (mount: string) => `
part crankset c "C" { ring-mount: ${mount}; ring-bolt-torque: 12 to 14 N·m }
part chainring r "R" { teeth: 32 t; ring-mount: 104x4; ring-bolt-torque: 8 to 10 N·m }
build example "Example" { drivetrain { crankset: c; chainring: r } }
`;
    expect(checkText(crank("110x5")).instance(code, "ring-mount")).toBe("notApplicable");
    expect(checkText(crank("104x4")).instance(code, "ring-mount")).toBe("fails");
  });

  it("asks about the lock-ring also on a longer body of the same splines", () => {
    const text = (body: string) =>
      `
part cassette c "C" { freehub: splined-11t-short; lockring-torque: 40 N·m }
part hub h "H" { freehub: ${body}; lockring-torque: 20 to 30 N·m }
build example "Example" { drivetrain.cassette: c; rear-wheel.hub: h }
`.replace("{ drivetrain.cassette: c; rear-wheel.hub: h }", "{\n  drivetrain.cassette: c\n  rear-wheel.hub: h\n}");
    expect(checkText(text("splined-11t-long")).instance(code, "cassette-freehub")).toBe("fails");
    expect(checkText(text("stepped-driver")).instance(code, "cassette-freehub")).toBe("notApplicable");
  });

  it.each([
    ["snap-ring", "lockring-torque: 50 N·m", "notApplicable", []],
    ["snap-ring", "offset: 0 mm", "notApplicable", []],
    ["bolts", "offset: 0 mm", "notApplicable", []],
    ["lockring", "lockring-torque: 50 N·m", "fails", []],
    ["lockring", "lockring-torque: 35 N·m", "holds", []],
    ["lockring", "offset: 0 mm", "unknown", ["drivetrain.cassette.lockring-torque"]],
    // Nobody said what holds it: the torque is asked for, not left out.
    ["", "offset: 0 mm", "unknown", ["drivetrain.cassette.lockring-torque"]],
    ["", "lockring-torque: 50 N·m", "fails", []],
  ])("asks a lock-ring's torque of a sprocket held by '%s' with %s: %s", (retention, torque, outcome, missing) => {
    const held = retention === "" ? "" : `; retention: ${retention}`;
    const row = checkText(`
part sprocket c "Cog" { freehub: three-lug-driver; ${torque}${held} }
part hub h "Hub" { freehub: three-lug-driver; lockring-torque: 30 to 40 N·m }
build example "Example" {
  drivetrain.cassette: c
  rear-wheel.hub: h
}
`).row(code);
    const verdict = row.instances.find(({ instance }) => instance === "cassette-freehub")?.verdict;
    expect(verdict?.outcome).toBe(outcome);
    expect(verdict?.outcome === "unknown" ? verdict.missing.map(({ path }) => path) : []).toEqual(missing);
    if (verdict?.outcome === "notApplicable") expect(verdict.reason).toMatch(/snap ring|bolts/);
  });

  it("asks of a control's band only where it has one on the bar", () => {
    const control = (mount: string, settings: string) => `
standard control-clamp fit "Fit" { form: shared; source: "this test" }
part shift-controller c "C" { mount: ${mount}; clamp-torque: 4 to 5 N·m }
part brake-lever l "L" { mount: band-22.2; clamp-offers: fit; clamp-torque: 2 to 3 N·m }
part handlebar h "H" { control-diameter: 22.2 mm; control-clamp-torque: <= 3 N·m }
build example "Example" {
  cockpit.handlebar: h
  rear-brake.lever: l
  drivetrain.rear-controller: c ${settings}
}
`;
    expect(checkText(control("band-22.2", "")).instance(code, "rear-controller-clamp")).toBe("fails");
    expect(checkText(control("fit", "{ clamp: rear-brake.lever }")).instance(code, "rear-controller-clamp")).toBe(
      "notApplicable",
    );
    expect(checkText(control("fit", "{ clamp: rear-brake.lever }")).instance(code, "rear-lever-clamp")).toBe("holds");
    // Its own bolt, not the lever's: the two windows (4 to 5 and 2 to 3 N·m) have nothing to agree on.
    const shared = checkText(control("fit", "{ clamp: rear-brake.lever }")).row(code);
    const verdict = shared.instances.find(({ instance }) => instance === "rear-controller-clamp")?.verdict;
    expect(verdict?.outcome === "notApplicable" && verdict.reason).toContain("a bolt of its own");
  });

  it("asks about the hanger or the frame, whichever holds the derailleur", () => {
    const held = (frame: string, drivetrain: string) => `
part frame f "F" { ${frame} }
part hanger g "G" { seat: coaxial-12; derailleur-mount: M10x1; derailleur-torque: 5 to 6 N·m }
part rear-derailleur d "D" { mount: M10x1; mounting-torque: 8 to 10 N·m }
build example "Example" {
  frame: f
  drivetrain { ${drivetrain} }
}
`;
    const hanger = checkText(held("hanger-seat: coaxial-12", "rear-derailleur: d; hanger: g"));
    expect(hanger.instance(code, "derailleur-hanger")).toBe("fails");
    expect(hanger.instance(code, "derailleur-frame")).toBe("notApplicable");
    const own = checkText(
      held("hanger-seat: none; derailleur-mount: M10x1; derailleur-torque: 8 to 12 N·m", "rear-derailleur: d"),
    );
    expect(own.instance(code, "derailleur-frame")).toBe("holds");
    expect(own.instance(code, "derailleur-hanger")).toBe("notApplicable");
  });
});

describe("cockpit/torque-window with an adapter between", () => {
  const text = (adapter: string) => `
part frame f "F" { hanger-seat: coaxial-12 }
part hanger g "G" { seat: coaxial-12; derailleur-mount: long-eye; derailleur-torque: 5 to 6 N·m }
part rear-derailleur d "D" { mount: M10x1; mounting-torque: 8 to 10 N·m }
part derailleur-adapter a "A" { sits-on: long-eye; offers: M10x1; ${adapter} }
build example "Example" {
  frame: f
  drivetrain { rear-derailleur: d; hanger: g; derailleur-adapter: a }
}
`;
  it.each([
    // Hanger and derailleur do not agree with each other, and need not: neither is tightened to the other.
    ["mounting-torque: 5 to 7 N·m; derailleur-torque: 9 to 12 N·m", "holds"],
    ["mounting-torque: 5 to 7 N·m; derailleur-torque: 11 to 12 N·m", "fails"],
    ["mounting-torque: 7 to 9 N·m; derailleur-torque: 9 to 12 N·m", "fails"],
    ["mounting-torque: 5 to 7 N·m", "unknown"],
  ])("%s: %s", (adapter, outcome) => {
    expect(checkText(text(adapter)).instance("cockpit/torque-window", "derailleur-hanger")).toBe(outcome);
  });
});

describe("cockpit/carbon-clamp", () => {
  const code = "cockpit/carbon-clamp";
  const limits = "control-clamping: yes; stem-clamp-torque: <= 5 N·m; control-clamp-torque: <= 3 N·m";
  function bar(handlebar: string, settings = "", stem = "friction-paste-allowed: yes"): string {
    return `
part handlebar h "H" { ${handlebar} }
part stem s "S" { ${stem} }
build example "Example" {
  cockpit { stem: s; handlebar: h ${settings} }
}
`;
  }

  it.each([
    [`material: carbon; friction-paste-allowed: yes; ${limits}`, "", "friction-paste-allowed: yes", "holds"],
    [`material: carbon; friction-paste-allowed: no; ${limits}`, "", "friction-paste-allowed: yes", "holds"],
    [
      `material: carbon; friction-paste-allowed: yes; ${limits}`,
      "{ stem-clamp-treatment: friction-paste }",
      "friction-paste-allowed: yes",
      "holds",
    ],
    [
      `material: carbon; friction-paste-allowed: no; ${limits}`,
      "{ stem-clamp-treatment: friction-paste }",
      "friction-paste-allowed: yes",
      "fails",
    ],
    [
      `material: carbon; friction-paste-allowed: yes; ${limits}`,
      "{ stem-clamp-treatment: friction-paste }",
      "friction-paste-allowed: no",
      "fails",
    ],
    [
      `material: carbon; friction-paste-allowed: yes; ${limits}`,
      "{ stem-clamp-treatment: friction-paste }",
      'note: "silent"',
      "unknown",
    ],
    [`material: carbon; ${limits}`, "{ stem-clamp-treatment: friction-paste }", "friction-paste-allowed: no", "fails"],
    [`material: carbon; ${limits}`, "{ stem-clamp-treatment: dry }", "friction-paste-allowed: yes", "holds"],
    [
      `material: carbon; friction-paste-allowed: yes; ${limits}`,
      "{ stem-clamp-treatment: grease }",
      "friction-paste-allowed: yes",
      "fails",
    ],
    [
      "material: carbon; friction-paste-allowed: yes; control-clamping: yes",
      "",
      "friction-paste-allowed: yes",
      "unknown",
    ],
    [limits, "", "friction-paste-allowed: yes", "unknown"],
    [
      `material: aluminium; ${limits}`,
      "{ stem-clamp-treatment: grease }",
      "friction-paste-allowed: yes",
      "notApplicable",
    ],
  ])("a bar with %s %s, a stem with %s: %s", (handlebar, settings, stem, outcome) => {
    expect(checkText(bar(handlebar, settings, stem)).instance(code, "bar in stem")).toBe(outcome);
  });

  it("lets nothing be clamped where the maker forbids it", () => {
    const text = checkText(
      bar("material: carbon; control-clamping: no; control-clamp-torque: <= 3 N·m; friction-paste-allowed: no"),
    );
    expect(text.instance(code, "controls on bar")).toBe("fails");
    expect(text.of(code)[0]?.caution).toMatch(/retired/);
  });

  it("does not need the stem to judge the controls", () => {
    const text = checkText(`
part handlebar h "H" { material: carbon; friction-paste-allowed: yes; ${limits} }
build example "Example" { cockpit.handlebar: h }
`);
    expect(text.instance(code, "controls on bar")).toBe("holds");
  });

  it("asks the fork about paste on its steerer", () => {
    const steerer = (fork: string) => `
part fork k "K" { steerer-material: carbon; steerer-clamp-torque: <= 5 N·m; ${fork} }
part stem s "S" { friction-paste-allowed: yes }
build example "Example" {
  fork: k
  cockpit.stem: s { steerer-clamp-treatment: friction-paste }
}
`;
    expect(checkText(steerer("forbids: friction-paste")).instance(code, "stem on steerer")).toBe("fails");
    expect(checkText(steerer("forbids: none")).instance(code, "stem on steerer")).toBe("holds");
  });

  it("mends the treatment", () => {
    const text = bar(
      `material: carbon; friction-paste-allowed: no; ${limits}`,
      "{ stem-clamp-treatment: friction-paste }",
    );
    const [first] = repaired(text, code);
    expect(first?.title).toBe("Leave the clamp clean and dry (cockpit.handlebar.stem-clamp-treatment: dry)");
    expect(checkText(first?.text ?? "").instance(code, "bar in stem")).toBe("holds");
  });
});

describe("cockpit/bar-space", () => {
  const code = "cockpit/bar-space";
  function straight(handlebar: string, more = "", settings = ""): string {
    return `
part handlebar h "H" { bar: flat; ${handlebar} }
part grips g "G" { length: 130 mm }
part brake-lever l "L" { mount: band-22.2; width: 15 mm; clamp-offers: none }
part shift-controller c "C" { mount: band-22.2; width: 20 mm }
build example "Example" {
  cockpit { handlebar: h ${settings}; grips: g }
  rear-brake.lever: l { side: right }
  front-brake.lever: l { side: left }
  drivetrain { rear-controller: c ${more}; front-controller: none }
  seat.remote: none
}
`;
  }

  it.each([
    ["control-length: 165 mm", "{ side: right }", "", "holds"],
    ["control-length: 164.9 mm", "{ side: right }", "", "fails"],
    ["control-length: 165 mm", "{ side: left }", "", "holds"],
    ["control-length: 164 mm", "{ side: left }", "", "fails"],
    ["control-length: 200 mm; width: 800 mm", "{ side: right }", "{ cut-width: 730 mm }", "holds"],
    ["control-length: 200 mm; width: 800 mm", "{ side: right }", "{ cut-width: 729 mm }", "fails"],
    ["control-length: 200 mm", "{ side: right }", "{ cut-width: 760 mm }", "unknown"],
    ["control-length: 200 mm", "", "", "unknown"],
    // Grip and lever alone are too long already, wherever the controller goes.
    ["control-length: 140 mm", "", "", "fails"],
    ["width: 760 mm", "{ side: right }", "", "unknown"],
  ])("%s, controller %s, bar %s: %s", (handlebar, controller, settings, outcome) => {
    expect(checkText(straight(handlebar, controller, settings)).outcome(code)).toBe(outcome);
  });

  it("finds both hands at once, and names the worse", () => {
    const findings = checkText(straight("control-length: 140 mm", "{ side: left }")).of(code);
    expect(findings).toHaveLength(1);
    expect(findings[0]?.message).toMatch(/At the left hand.*165 mm.*140 mm.*other hand has too little as well/);
    const one = checkText(straight("control-length: 150 mm", "{ side: left }")).of(code);
    expect(one[0]?.message).toMatch(/At the left hand/);
    expect(one[0]?.message).not.toContain("other hand");
  });

  it("does not arise on a drop bar", () => {
    const text = straight("control-length: 100 mm", "{ side: right }").replace("bar: flat", "bar: drop");
    expect(checkText(text).outcome(code)).toBe("notApplicable");
  });
});

describe("cockpit/lever-bar", () => {
  function levered(made: string, shape: string, mount = "band-23.8", diameter = "23.8 mm"): string {
    return compose({
      "front-brake.lever": part("brake-lever", `${made}; mount: ${mount}`),
      "rear-brake.lever": "none",
      "cockpit.handlebar": part("handlebar", `${shape}; control-diameter: ${diameter}`),
    });
  }

  it.each([
    ["bars: flat", "bar: flat", "holds"],
    ["bars: flat", "bar: riser", "holds"],
    ["bars: flat", "bar: swept-back", "holds"],
    ["bars: flat", "bar: drop", "fails"],
    ["bars: drop", "bar: drop", "holds"],
    ["bars: drop", "bar: flat", "fails"],
    ["bars: drop", "bar: riser", "fails"],
    ["bars: drop", "bar: swept-back", "fails"],
    ["bars: any", "bar: drop", "holds"],
    ["bars: any", "bar: aero-base", "holds"],
    ["bars: flat", "bar: bullhorn", "notApplicable"],
    ["bars: drop", "bar: aero-base", "notApplicable"],
    ['maker: "gill"', "bar: drop", "unknown"],
    ["bars: drop", 'maker: "gill"', "unknown"],
  ])("%s on %s: %s", (made, shape, outcome) => {
    expect(checkText(levered(made, shape)).instance("cockpit/lever-bar", "front")).toBe(outcome);
  });

  it("leaves a band that does not go round the bar to the check of diameters", () => {
    const text = checkText(levered("bars: flat", "bar: drop", "band-22.2"));
    expect(text.of("cockpit/lever-bar")).toEqual([]);
    expect(text.of("cockpit/control-diameter")).toHaveLength(1);
    expect(checkText(levered("bars: flat", "bar: drop", "band-23.8", "24 mm")).of("cockpit/lever-bar")).toHaveLength(1);
  });

  it("says what the lever is for, and what the bar is", () => {
    expect(checkText(levered("bars: drop", "bar: riser")).of("cockpit/lever-bar")[0]?.message).toMatch(
      /made for drop bars, but .* is no drop bar \(bar: riser\).*made for flat bars/,
    );
  });
});
