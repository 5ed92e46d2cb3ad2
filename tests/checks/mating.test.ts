import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";

/** The one finding of a check. */
function finding(text: string, code: string) {
  const found = checkText(text).of(code);
  expect(found.map(({ message }) => message)).toHaveLength(1);
  const [first] = found;
  if (!first) throw new Error(`${code} finds nothing`);
  return first;
}

/** Where each related place of a finding points, as the text that stands there. */
function pointedTo(text: string, code: string): readonly string[] {
  return finding(text, code).related.map(({ place }) => place.declaration.text.slice(place.span.start, place.span.end));
}

const derailleur = "drivetrain/derailleur-mount";

const frames = `
part frame fell "Fell" { hanger-seat: coaxial-12 }
part frame town "Town" { hanger-seat: none; derailleur-mount: M10x1 }
part frame italian "Italian" { hanger-seat: none; derailleur-mount: 10x26 }
part frame track "Track" { hanger-seat: none; derailleur-mount: none }
part frame silent "Silent" { size: "L" }
part hanger eye "Eye" { seat: coaxial-12; derailleur-mount: M10x1 }
part hanger long-eye "Long eye" { seat: coaxial-12; derailleur-mount: long-eye }
part hanger bare "Bare" { seat: coaxial-12 }
part rear-derailleur arm "Arm" { mount: M10x1 }
part rear-derailleur round "Round" { mount: coaxial-12; set-up: direct-mount }
part rear-derailleur open "Open" { speeds: 11 }
part derailleur-adapter link "Link" { sits-on: long-eye; offers: M10x1 }
part derailleur-adapter reducer "Reducer" { sits-on: 10x26; offers: M10x1 }
part derailleur-adapter wrong "Wrong" { sits-on: M10x1; offers: long-eye }
`;

function place(frame: string, slots: string): string {
  const framed = frame === "" ? "" : `  frame: ${frame}\n`;
  return `${frames}\nbuild example "Example" {\n${framed}  drivetrain {\n    ${slots.replaceAll("; ", "\n    ")}\n  }\n}\n`;
}

describe("the place of a rear derailleur", () => {
  it.each([
    ["a threaded hanger", "fell", "rear-derailleur: arm; hanger: eye"],
    ["the frame's own hanger, stated", "town", "rear-derailleur: arm; hanger: none"],
    ["the frame's own hanger, nothing said of another", "town", "rear-derailleur: arm"],
    ["round the axle in place of a hanger", "fell", "rear-derailleur: round; hanger: none"],
    ["round the axle, nothing said of a hanger", "fell", "rear-derailleur: round"],
    ["an adapter on a hanger", "fell", "rear-derailleur: arm; hanger: long-eye; derailleur-adapter: link"],
    ["an adapter on the frame's own hanger", "italian", "rear-derailleur: arm; derailleur-adapter: reducer"],
  ])("holds with %s", (_, frame, slots) => {
    expect(checkText(place(frame, slots)).outcome(derailleur)).toBe("holds");
  });

  it.each([
    ["a hanger with another eye", "fell", "rear-derailleur: arm; hanger: long-eye", ["M10x1", "long-eye"]],
    ["no hanger on a bare seat", "fell", "rear-derailleur: arm; hanger: none", ["M10x1", "coaxial-12"]],
    ["the frame's own hanger with another eye", "italian", "rear-derailleur: arm", ["M10x1", "10x26"]],
    ["a frame without a place", "track", "rear-derailleur: arm; hanger: none", ["M10x1", "none", "none"]],
    [
      "a hanger in its place round the axle",
      "fell",
      "rear-derailleur: round; hanger: eye",
      ["coaxial-12", "coaxial-12"],
    ],
    ["a direct mount on a frame of one eye", "town", "rear-derailleur: round", ["coaxial-12", "M10x1"]],
    [
      "an adapter that offers another mount",
      "fell",
      "rear-derailleur: arm; hanger: eye; derailleur-adapter: wrong",
      ["M10x1", "long-eye"],
    ],
    [
      "an adapter that does not sit on the hanger",
      "fell",
      "rear-derailleur: arm; hanger: eye; derailleur-adapter: link",
      ["long-eye", "M10x1"],
    ],
  ])("fails with %s, and points to what was stated", (_, frame, slots, stated) => {
    const text = place(frame, slots);
    expect(checkText(text).outcome(derailleur)).toBe("fails");
    expect(pointedTo(text, derailleur)).toEqual(stated);
  });

  it.each([
    ["the derailleur's mount", "fell", "rear-derailleur: open; hanger: eye", "drivetrain.rear-derailleur.mount"],
    ["the hanger's eye", "fell", "rear-derailleur: arm; hanger: bare", "drivetrain.hanger.derailleur-mount"],
    ["which hanger is fitted", "fell", "rear-derailleur: arm", "drivetrain.hanger"],
    ["what the frame offers", "silent", "rear-derailleur: arm; hanger: none", "frame.derailleur-mount"],
    ["which frame it is", "", "rear-derailleur: arm; hanger: none", "frame"],
  ])("cannot tell without %s", (_, frame, slots, missing) => {
    const text = checkText(place(frame, slots));
    expect(text.outcome(derailleur)).toBe("unknown");
    expect(text.missing(derailleur)).toContain(missing);
  });

  it("still fails where the hanger's eye is unknown but the derailleur takes the hanger's place", () => {
    expect(checkText(place("fell", "rear-derailleur: round; hanger: bare")).outcome(derailleur)).toBe("fails");
  });

  it("does not arise without a derailleur", () => {
    expect(checkText(place("fell", "rear-derailleur: none")).outcome(derailleur)).toBe("notApplicable");
  });

  it.each([
    ["fell", "rear-derailleur: arm; hanger: none", "Add Eye (eye) as drivetrain.hanger"],
    ["fell", "rear-derailleur: arm; hanger: long-eye", "Fit Eye (eye) as drivetrain.hanger"],
    ["fell", "rear-derailleur: arm; hanger: long-eye", "Add Link (link) as drivetrain.derailleur-adapter"],
    ["italian", "rear-derailleur: arm", "Add Reducer (reducer) as drivetrain.derailleur-adapter"],
    ["fell", "rear-derailleur: round; hanger: eye", "Leave out Eye (drivetrain.hanger: none)"],
    [
      "fell",
      "rear-derailleur: arm; hanger: eye; derailleur-adapter: wrong",
      "Leave out Wrong (drivetrain.derailleur-adapter: none)",
    ],
  ])("on %s with %s offers: %s, after which it holds", (frame, slots, title) => {
    const mended = repaired(place(frame, slots), derailleur).find((mend) => mend.title === title);
    expect(mended?.title).toBe(title);
    const after = checkText(mended?.text ?? "");
    expect(after.outcome(derailleur)).toBe("holds");
    expect(after.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  });

  it("offers nothing that leaves it wrong", () => {
    for (const [frame, slots] of [
      ["fell", "rear-derailleur: arm; hanger: none"],
      ["fell", "rear-derailleur: arm; hanger: long-eye"],
      ["italian", "rear-derailleur: arm"],
      ["fell", "rear-derailleur: round; hanger: eye"],
    ] as const) {
      const mends = repaired(place(frame, slots), derailleur);
      expect(mends.length).toBeGreaterThan(0);
      for (const { title, text } of mends) expect(checkText(text).outcome(derailleur), title).toBe("holds");
    }
  });

  it("finds a hanger of another frame by its seat only", () => {
    const text = checkText(`
standard hanger-seat blade-2 "Two bolts" { form: outside-face; source: "this test" }
part hanger blade "Blade" { seat: blade-2; derailleur-mount: M10x1 }
${place("fell", "rear-derailleur: arm; hanger: blade")}`);
    expect(text.outcome("drivetrain/hanger-seat")).toBe("fails");
    expect(text.outcome(derailleur)).toBe("holds");
  });

  it("finds a hanger on a frame that takes none", () => {
    const text = place("town", "rear-derailleur: arm; hanger: eye");
    expect(checkText(text).outcome("drivetrain/hanger-seat")).toBe("fails");
    const mended = repaired(text, "drivetrain/hanger-seat").find(
      ({ title }) => title === "Leave out Eye (drivetrain.hanger: none)",
    );
    const after = checkText(mended?.text ?? "");
    expect(after.outcome("drivetrain/hanger-seat")).toBe("notApplicable");
    expect(after.outcome(derailleur)).toBe("holds");
  });
});

const body = "drivetrain/freehub-body";
const spacer = "drivetrain/cassette-spacer";
const cogs = `
part cassette short "Short" { freehub: splined-11t-short; cogs: 11-28 t }
part cassette long "Long" { freehub: splined-11t-long; cogs: 11-28 t }
part cassette ten "Ten" { freehub: splined-11t-short; cogs: 10-28 t }
part cassette blind "Blind" { freehub: splined-11t-short }
part cassette thin "Thin" { freehub: splined-11t-short; cogs: 11-28 t; body-spacer: 1 mm }
part freewheel wheel "Wheel" { thread: 1.375x24; cogs: 14-28 t }
part sprocket single "Single" { freehub: splined-11t-single; cogs: 18 t }
part sprocket fixed "Fixed" { freehub: none; thread: 1.375x24; cogs: 16 t }
part hub short-hub "Short hub" { freehub: splined-11t-short }
part hub long-hub "Long hub" { freehub: splined-11t-long }
part hub either-hub "Either hub" { freehub: stepped-driver, splined-11t-long }
part hub threaded "Threaded" { freehub: none; freewheel-thread: 1.375x24 }
part hub only-thread "Only thread" { freewheel-thread: 1.375x24 }
part hub french "French" { freehub: none; freewheel-thread: 34.7x1 }
part hub blind-hub "Blind hub" { spoke-holes: 32 }
part cassette-spacer ring "Ring" { thickness: 1.85 mm; freehub: splined-11t-long }
part cassette-spacer thick "Thick" { thickness: 4.5 mm; freehub: splined-11t-short }
part cassette-spacer other "Other" { thickness: 1.85 mm; freehub: stepped-driver-long }
`;

function wheel(cassette: string, hub: string, more = "", hubSettings = ""): string {
  return `${cogs}\nbuild example "Example" {\n  drivetrain.cassette: ${cassette}\n  rear-wheel.hub: ${hub}${hubSettings}\n  ${more}\n}\n`;
}

describe("cogs on a hub", () => {
  it.each([
    ["short", "short-hub", "holds"],
    ["long", "long-hub", "holds"],
    ["short", "long-hub", "holds"],
    ["long", "short-hub", "fails"],
    ["ten", "short-hub", "fails"],
    ["short", "either-hub", "holds"],
    ["single", "long-hub", "holds"],
    ["short", "threaded", "fails"],
    ["short", "only-thread", "fails"],
    ["short", "blind-hub", "unknown"],
    ["blind", "short-hub", "unknown"],
    ["wheel", "short-hub", "notApplicable"],
    ["fixed", "threaded", "notApplicable"],
    ["none", "short-hub", "notApplicable"],
    ["short", "none", "notApplicable"],
  ])("%s on %s: freehub-body %s", (cassette, hub, outcome) => {
    expect(checkText(wheel(cassette, hub)).outcome(body)).toBe(outcome);
  });

  it.each([
    ["wheel", "threaded", "holds"],
    ["fixed", "only-thread", "holds"],
    ["wheel", "french", "fails"],
    ["wheel", "short-hub", "fails"],
    ["wheel", "blind-hub", "unknown"],
    ["short", "threaded", "notApplicable"],
    ["single", "long-hub", "notApplicable"],
  ])("%s on %s: freewheel-thread %s", (cassette, hub, outcome) => {
    expect(checkText(wheel(cassette, hub)).outcome("drivetrain/freewheel-thread")).toBe(outcome);
  });

  it("finds a cassette on a threaded hub once", () => {
    const text = checkText(wheel("short", "threaded"));
    const codes = text.findings
      .filter(({ outcome, severity }) => outcome === "fails" && severity === "error")
      .map(({ code }) => code);
    expect(codes).toEqual([body]);
  });

  it("says by how much a body is too short", () => {
    expect(finding(wheel("long", "short-hub"), body).message).toContain("1.85 mm too short");
  });

  it("names both counts of teeth, and points to where the standard states its own", () => {
    const text = wheel("ten", "short-hub");
    expect(finding(text, body).message).toMatch(/Smallest cog 10 t.*fewer than 11 t/);
    expect(pointedTo(text, body)).toEqual(["10-28 t", "splined-11t-short", "11 t"]);
  });

  it("asks of the body that is fitted, where the build says which", () => {
    expect(checkText(wheel("short", "either-hub", "", " { freehub-fitted: splined-11t-long }")).outcome(body)).toBe(
      "holds",
    );
    const wrong = wheel("short", "either-hub", "", " { freehub-fitted: stepped-driver }");
    expect(checkText(wrong).outcome(body)).toBe("fails");
    const mended = repaired(wrong, body).find(({ title }) => title.startsWith("Fit the freehub body"));
    expect(checkText(mended?.text ?? "").outcome(body)).toBe("holds");
    expect(checkText(wheel("short", "short-hub", "", " { freehub-fitted: stepped-driver }")).outcome(body)).toBe(
      "fails",
    );
  });

  it.each([
    ["short", "short-hub", "", "holds"],
    ["short", "long-hub", "", "fails"],
    ["short", "long-hub", "drivetrain.cassette-spacer: ring", "holds"],
    ["short", "short-hub", "drivetrain.cassette-spacer: ring", "fails"],
    ["short", "long-hub", "drivetrain.cassette-spacer: thick", "fails"],
    ["short", "long-hub", "drivetrain.cassette-spacer: other", "fails"],
    ["thin", "short-hub", "", "fails"],
    ["long", "short-hub", "", "notApplicable"],
    ["single", "long-hub", "", "notApplicable"],
    ["wheel", "threaded", "", "notApplicable"],
    ["short", "blind-hub", "", "unknown"],
  ])("%s on %s with %j: cassette-spacer %s", (cassette, hub, more, outcome) => {
    expect(checkText(wheel(cassette, hub, more)).outcome(spacer)).toBe(outcome);
  });

  it("inserts the spacer of the right thickness", () => {
    const text = wheel("short", "long-hub");
    expect(finding(text, spacer).message).toContain("1.85 mm");
    const mends = repaired(text, spacer);
    expect(mends.map(({ title }) => title)).toContain("Add Ring (ring) as drivetrain.cassette-spacer");
    for (const mend of mends) expect(checkText(mend.text).outcome(spacer), mend.title).not.toBe("fails");
  });
});

describe("cranks and their bearings", () => {
  function cranks(parts: string, drivetrain: string): string {
    return `${parts}\nbuild example "Example" {\n  frame: f\n  drivetrain { ${drivetrain} }\n}\n`;
  }
  const shell = (code: string, bracket: string) =>
    cranks(
      `part frame f "F" { bottom-bracket-shell: ${code} }\npart bottom-bracket b "B" { ${bracket} }`,
      "bottom-bracket: b",
    );

  it.each([
    ["threaded-1.370x24-73", "shell: threaded-1.370x24-73", "holds"],
    ["english-73", "shell: threaded-1.370x24-73", "holds"],
    ["threaded-1.370x24-68", "shell: threaded-1.370x24-73; shell-widths: 68 to 73 mm", "holds"],
    ["threaded-1.370x24-83", "shell: threaded-1.370x24-73; shell-widths: 68 to 73 mm", "fails"],
    ["threaded-1.370x24-68", "shell: threaded-1.370x24-73", "unknown"],
    ["threaded-36x24-70", "shell: threaded-1.370x24-68; shell-widths: 60 to 80 mm", "fails"],
    // Two French-sized threads that differ in the hand of one cup, and two English ones that differ in pitch.
    ["threaded-35x1-68-right-left", "shell: threaded-35x1-68-right-right; shell-widths: 60 to 80 mm", "fails"],
    ["threaded-1.370x26-71", "shell: threaded-1.370x24-68; shell-widths: 60 to 80 mm", "fails"],
    ["pressed-46-73", "shell: pressed-42-73; shell-widths: 60 to 80 mm", "fails"],
    ["pressed-42-73-asymmetric", "shell: pressed-42-73; shell-widths: 60 to 80 mm", "fails"],
    ["none", "shell: threaded-1.370x24-68", "fails"],
  ])("a frame with %s and a bracket that states %s: %s", (code, bracket, outcome) => {
    expect(checkText(shell(code, bracket)).outcome("drivetrain/bottom-bracket-shell")).toBe(outcome);
  });

  it("says in what two shells differ", () => {
    const text = shell("threaded-35x1-68-right-left", "shell: threaded-35x1-68-right-right");
    expect(finding(text, "drivetrain/bottom-bracket-shell").message).toContain(
      "right cup is right in one and left in the other",
    );
  });

  it("does not hold a pressed bearing's bore against a thread", () => {
    const text = shell("threaded-1.370x24-73", "shell: pressed-41-92");
    expect(finding(text, "drivetrain/bottom-bracket-shell").message).toMatch(
      /\): bearings are pressed into one and threaded into the other\. /,
    );
  });

  const spindles = (crank: string, bracket: string, width = 68) =>
    cranks(
      `part frame f "F" { bottom-bracket-shell: threaded-1.370x24-${width} }\npart crankset c "C" { ${crank} }\npart bottom-bracket b "B" { ${bracket} }`,
      "crankset: c; bottom-bracket: b",
    );

  it.each([
    [
      "spindle: square-taper-JIS; spindle-length: 113 mm",
      "spindle: square-taper-JIS; spindle-length: 113 mm",
      68,
      "holds",
    ],
    [
      "spindle: square-taper-JIS; spindle-length: 113 mm",
      "spindle: square-taper-JIS; spindle-length: 115 mm",
      68,
      "holds",
    ],
    [
      "spindle: square-taper-JIS; spindle-length: 113 mm",
      "spindle: square-taper-JIS; spindle-length: 115.1 mm",
      68,
      "fails",
    ],
    [
      "spindle: square-taper-JIS; spindle-length: 113 mm",
      "spindle: square-taper-JIS; spindle-length: 110.9 mm",
      68,
      "fails",
    ],
    ["spindle: square-taper-JIS", "spindle: square-taper-JIS; spindle-length: 113 mm", 68, "unknown"],
    ["spindle: square-taper-JIS; spindle-length: 113 mm", "spindle: square-taper-JIS", 68, "unknown"],
    ["spindle: round-24; shell-widths: 68 to 73 mm", "spindle: round-24", 73, "holds"],
    ["spindle: round-24; shell-widths: 68 to 73 mm", "spindle: round-24; spindle-length: none", 83, "fails"],
    ["spindle: round-24", "spindle: round-24", 73, "unknown"],
    ["spindle: square-taper-JIS; shell-widths: 68 mm", "spindle: round-24", 73, "notApplicable"],
  ])("cranks that state %s, a bracket %s, shell %d mm: spindle-length %s", (crank, bracket, width, outcome) => {
    expect(checkText(spindles(crank, bracket, width)).outcome("drivetrain/spindle-length")).toBe(outcome);
  });

  it("tells how far a spindle of the wrong length moves the ring", () => {
    const text = spindles(
      "spindle: square-taper-JIS; spindle-length: 113 mm",
      "spindle: square-taper-JIS; spindle-length: 122.5 mm",
    );
    expect(finding(text, "drivetrain/spindle-length").message).toMatch(/113 mm.*122.5 mm.*4.75 mm too far out/);
  });

  const spaced = (width: number, settings: string, supplied = "7.5 mm") =>
    cranks(
      `part frame f "F" { bottom-bracket-shell: threaded-1.370x24-${width} }\npart bottom-bracket b "B" { shell-widths: 68 to 73 mm; spacers-supplied: ${supplied} }`,
      `bottom-bracket: b { ${settings} }`,
    );
  const one = "shell-spacers-drive-side: 2.5 mm";
  const three = "shell-spacers-drive-side: 5 mm; shell-spacers-non-drive-side: 2.5 mm";

  it.each([
    [73, one, "7.5 mm", "holds"],
    [68, three, "7.5 mm", "holds"],
    [68, one, "7.5 mm", "fails"],
    [73, three, "7.5 mm", "fails"],
    [73, "", "7.5 mm", "holds"],
    [68, "", "none", "notApplicable"],
    [83, one, "7.5 mm", "notApplicable"],
  ])("shell %d mm with %j of %s: bearing-spacers %s", (width, settings, supplied, outcome) => {
    expect(checkText(spaced(width, settings, supplied)).outcome("drivetrain/bearing-spacers")).toBe(outcome);
  });

  it("sets the spacers to what is needed", () => {
    const mends = repaired(spaced(68, one), "drivetrain/bearing-spacers");
    expect(mends.length).toBe(2);
    for (const { title, text } of mends)
      expect(checkText(text).outcome("drivetrain/bearing-spacers"), title).toBe("holds");
  });

  it.each([
    [70, 66, "holds", undefined],
    [68, 66, "holds", undefined],
    [67.5, 66, "fails", "warning"],
    [66, 66, "fails", "error"],
    [65, 66, "fails", "error"],
  ])("arms at %d mm and stays at %d mm: %s", (arm, stay, outcome, severity) => {
    const text = checkText(`
part frame f "F" { crank-clearance: ${stay} mm }
part crankset c "C" { arm-inside: ${arm} mm }
build example "Example" { frame: f; drivetrain.crankset: c }
`);
    expect(text.outcome("drivetrain/crank-arm-clearance")).toBe(outcome);
    expect(text.of("drivetrain/crank-arm-clearance")[0]?.severity).toBe(severity);
  });
});

describe("rings, pedals and guides", () => {
  function ring(crank: string, ringMount: string, slot = "chainring"): string {
    return `
part crankset c "C" { ${crank} }
part chainring r "R" { teeth: 32 t; ${ringMount} }
build example "Example" { drivetrain { crankset: c; ${slot}: r } }
`;
  }

  it.each([
    ["ring-mount: 104x4", "ring-mount: 104x4", "chainring", "ring-mount", "holds"],
    ["ring-mount: 104x4", "ring-mount: 96x4-uneven", "chainring", "ring-mount", "fails"],
    ["ring-mount: 104x4", "teeth-note", "chainring", "ring-mount", "unknown"],
    ["ring-mount: none", "ring-mount: 104x4", "chainring", "ring-mount", "fails"],
    ["ring-mount: 104x4; inner-ring-mount: 64x4", "ring-mount: 64x4", "inner-chainring", "inner-ring-mount", "holds"],
    ["ring-mount: 104x4; inner-ring-mount: 64x4", "ring-mount: 104x4", "inner-chainring", "inner-ring-mount", "fails"],
    // Nothing said of the inner ring: it has the circle of the others.
    ["ring-mount: 110x5", "ring-mount: 110x5", "inner-chainring", "inner-ring-mount", "holds"],
    ["ring-mount: 110x5", "ring-mount: 74x5", "inner-chainring", "inner-ring-mount", "fails"],
  ])("cranks with %s and a ring with %s in %s: %s %s", (crank, mount, slot, instance, outcome) => {
    const text = checkText(ring(crank, mount === "teeth-note" ? 'note: "no mount"' : mount, slot));
    expect(text.instance("drivetrain/ring-mount", instance)).toBe(outcome);
  });

  it("knows the rings that come with the cranks", () => {
    const text = checkText(`
part crankset c "C" { rings: 48-32 t }
build example "Example" { drivetrain.crankset: c }
`);
    expect(text.instance("drivetrain/ring-mount", "ring-mount")).toBe("notApplicable");
  });
});

describe("the front derailleur on the frame", () => {
  const mount = "drivetrain/front-derailleur-mount";
  const pull = "drivetrain/front-derailleur-pull";

  function front(frame: string, derailleur: string, settings = ""): string {
    return `
part frame f "F" { ${frame} }
part front-derailleur d "D" { ${derailleur} }
build example "Example" { frame: f; drivetrain.front-derailleur: d ${settings} }
`
      .replace("{ frame: f; drivetrain.front-derailleur: d", "{\n  frame: f\n  drivetrain.front-derailleur: d")
      .replace(/ \}\n$/, "\n}\n");
  }

  it.each([
    ["front-derailleur-mount: band-34.9", "mount: band-34.9", "", "holds"],
    ["front-derailleur-mount: brazed-on", "mount: brazed-on", "", "holds"],
    ["front-derailleur-mount: brazed-on", "mount: band-34.9", "", "fails"],
    ["front-derailleur-mount: band-31.8", "mount: band-34.9", "", "fails"],
    ["front-derailleur-mount: band-31.8", "mount: band-34.9", "{ band-shim: 3.1 mm }", "holds"],
    ["front-derailleur-mount: band-34.9", "mount: band-31.8", "", "fails"],
    ["front-derailleur-mount: band-34.9", "mount: band-34.9", "{ band-shim: 3.1 mm }", "fails"],
    ["front-derailleur-mount: band-34.9; seat-tube-shape: round", "mount: band-34.9", "", "holds"],
    ["front-derailleur-mount: band-34.9; seat-tube-shape: shaped", "mount: band-34.9", "", "fails"],
    ["front-derailleur-mount: none", "mount: band-34.9", "", "fails"],
    ["front-derailleur-mount: none", "rings: 2", "", "fails"],
    ["front-derailleur-mount: band-34.9", "rings: 2", "", "unknown"],
    ['size: "M"', "mount: band-34.9", "", "unknown"],
  ])("%s with %s %s: %s", (frame, derailleur, settings, outcome) => {
    expect(checkText(front(frame, derailleur, settings)).outcome(mount)).toBe(outcome);
  });

  it("works out the shim, and only where one helps", () => {
    const small = front("front-derailleur-mount: band-28.6", "mount: band-31.8");
    const shim = repaired(small, mount).find(({ title }) => title.includes("band-shim"));
    expect(shim?.title).toContain("3.2 mm");
    expect(checkText(shim?.text ?? "").outcome(mount)).toBe("holds");
    const large = front("front-derailleur-mount: band-34.9", "mount: band-31.8");
    expect(repaired(large, mount).some(({ title }) => title.includes("band-shim"))).toBe(false);
  });

  const cable = "mount: brazed-on; actuation: cable";
  const frame = "front-derailleur-mount: brazed-on";
  it.each([
    [`${frame}; front-derailleur-pull: bottom`, `${cable}; pull-direction: bottom`, "holds"],
    [`${frame}; front-derailleur-pull: bottom`, `${cable}; pull-direction: either`, "holds"],
    [`${frame}; front-derailleur-pull: side`, `${cable}; pull-direction: either`, "fails"],
    [`${frame}; front-derailleur-pull: any; front-housing-stop: yes`, `${cable}; pull-direction: side`, "holds"],
    [`${frame}; front-derailleur-pull: any; front-housing-stop: no`, `${cable}; pull-direction: side`, "fails"],
    [`${frame}; front-derailleur-pull: any`, `${cable}; pull-direction: side`, "unknown"],
    [`${frame}; front-derailleur-pull: top`, `${cable}; pull-direction: bottom`, "fails"],
    [`${frame}; front-derailleur-pull: none`, `${cable}; pull-direction: bottom`, "fails"],
    [`${frame}; front-derailleur-pull: none`, "mount: brazed-on; actuation: electronic", "notApplicable"],
    [frame, `${cable}; pull-direction: bottom`, "unknown"],
    [`${frame}; front-derailleur-pull: top`, cable, "unknown"],
    ["front-derailleur-mount: none; front-derailleur-pull: none", `${cable}; pull-direction: bottom`, "notApplicable"],
  ])("%s with %s: pull %s", (frameFacts, derailleur, outcome) => {
    expect(checkText(front(frameFacts, derailleur)).outcome(pull)).toBe(outcome);
  });

  it.each([
    ["44 mm", "holds"],
    ["43.9 mm", "fails"],
  ])("a tyre that measures 44 mm with room for %s: %s", (room, outcome) => {
    const text = checkText(`
part front-derailleur d "D" { widest-tyre: ${room} }
part rim r "R" { inner-width: 23 mm }
part tyre t "T" { size: 42-622; measured-width: 44 mm; measured-on-rim: 23 mm }
build example "Example" { drivetrain.front-derailleur: d; rear-wheel { rim: r; tyre: t } }
`);
    expect(text.outcome("drivetrain/front-derailleur-tyre")).toBe(outcome);
  });
});
