import { describe, expect, it } from "vitest";
import { idleParts } from "../../server/checks/shared/idle-parts.ts";
import { checkText, repaired } from "./check-text.ts";

const code = "build/unused-part";

/** For each rule a build in which the part is idle, and what makes it of use. */
const cases: readonly (readonly [name: string, idle: string, used: readonly [from: string, to: string]])[] = [
  [
    "tensioner-beside-derailleur",
    `part chain-tensioner a.one "One" {}
part rear-derailleur a.two "Two" {}
build example "One" { drivetrain { chain-tensioner: a.one; rear-derailleur: a.two } }`,
    ["rear-derailleur: a.two", "rear-derailleur: none"],
  ],
  [
    "link-beside-pin",
    `part closure-link a.one "One" {}
part chain a.two "Two" { closure: pin }
build example "One" { drivetrain { closure-link: a.one; chain: a.two } }`,
    ["closure: pin", "closure: closure-link"],
  ],
  [
    "link-beside-belt",
    `part closure-link a.one "One" {}
part belt a.two "Two" {}
build example "One" { drivetrain { closure-link: a.one; chain: a.two } }`,
    ["part belt", "part chain"],
  ],
  [
    "remote-of-rigid-post",
    `part remote a.one "One" {}
part seatpost a.two "Two" { dropper-travel: none }
build example "One" { seat { remote: a.one; post: a.two } }`,
    ["dropper-travel: none", "dropper-travel: 100 mm"],
  ],
  [
    "remote-of-post-with-lever",
    `part remote a.one "One" {}
part seatpost a.two "Two" { dropper-travel: 100 mm; control: lever }
build example "One" { seat { remote: a.one; post: a.two } }`,
    ["control: lever", "control: cable"],
  ],
  [
    "remote-of-rigid-fork",
    `part remote a.one "One" { serves: fork }
part fork a.two "Two" { travel: none }
build example "One" { cockpit.remote: a.one; fork: a.two }`,
    ["travel: none", "travel: 120 mm"],
  ],
  [
    "remote-of-no-shock",
    `part remote a.one "One" { serves: shock }
build example "One" { cockpit.remote: a.one; rear-shock: none }`,
    ["serves: shock", "serves: fork"],
  ],
  [
    "remote-of-nothing-sprung",
    `part remote a.one "One" { serves: both }
part fork a.two "Two" { travel: none }
build example "One" { cockpit.remote: a.one; fork: a.two; rear-shock: none }`,
    ["travel: none", "travel: 120 mm"],
  ],
  [
    "shock-in-rigid-frame",
    `part rear-shock a.one "One" {}
part frame a.two "Two" { rear-travel: none }
build example "One" { rear-shock: a.one; frame: a.two }`,
    ["rear-travel: none", "rear-travel: 120 mm"],
  ],
  [
    "battery-of-nothing",
    `part battery a.one "One" {}
part rear-derailleur a.two "Two" { power: none }
part front-derailleur a.three "Three" { actuation: cable }
part shift-controller a.four "Four" { power: none }
build example "One" {
  drivetrain { battery: a.one; rear-derailleur: a.two; front-derailleur: a.three; rear-controller: a.four; front-controller: a.four }
}`,
    ["actuation: cable", "actuation: electronic"],
  ],
  [
    "cable-of-electronic-derailleur",
    `part cable a.one "One" {}
part rear-derailleur a.two "Two" { set-up: electronic }
build example "One" { drivetrain { rear-cable: a.one; rear-derailleur: a.two } }`,
    ["part cable", "part wire"],
  ],
  [
    "front-rotor-beside-rim-brake",
    `part rotor a.one "One" {}
part rim-brake a.two "Two" {}
build example "One" { front-brake { rotor: a.one; caliper: a.two } }`,
    ["part rim-brake", "part caliper"],
  ],
  [
    "rear-rotor-beside-rim-brake",
    `part rotor a.one "One" {}
part rim-brake a.two "Two" {}
build example "One" { rear-brake { rotor: a.one; caliper: a.two } }`,
    ["part rim-brake", "part caliper"],
  ],
  [
    "front-valve-beside-tube",
    `part valve a.one "One" {}
part tube a.two "Two" {}
build example "One" { front-wheel { valve: a.one; tube: a.two } }`,
    ["tube: a.two", "tube: none"],
  ],
  [
    "rear-valve-beside-tube",
    `part valve a.one "One" {}
part tube a.two "Two" {}
build example "One" { rear-wheel { valve: a.one; tube: a.two } }`,
    ["tube: a.two", "tube: none"],
  ],
  [
    "dynamo-of-no-lamp",
    `part dynamo a.one "One" {}
part lamp a.two "Two" {}
build example "One" { lighting { dynamo: a.one; front-lamp: none; rear-lamp: none } }`,
    ["rear-lamp: none", "rear-lamp: a.two"],
  ],
  [
    "hanger-of-nothing",
    `part hanger a.one "One" {}
part chain-tensioner a.two "Two" {}
build example "One" { drivetrain { hanger: a.one; rear-derailleur: none; chain-tensioner: none } }`,
    ["chain-tensioner: none", "chain-tensioner: a.two"],
  ],
  [
    "adapter-of-no-derailleur",
    `part derailleur-adapter a.one "One" {}
part rear-derailleur a.two "Two" {}
build example "One" { drivetrain { derailleur-adapter: a.one; rear-derailleur: none } }`,
    ["rear-derailleur: none", "rear-derailleur: a.two"],
  ],
];

describe(code, () => {
  it("has a case for every rule", () => {
    expect(cases.map(([name]) => name)).toEqual(idleParts.map(({ name }) => name));
  });
  it.each(cases)("%s: idle, of use, gone", (name, idle, [from, to]) => {
    expect(idle.split(from)).toHaveLength(2);
    const found = checkText(idle);
    expect(found.instance(code, name)).toBe("fails");
    expect(found.of(code)).toHaveLength(1);
    expect(found.of(code)[0]).toMatchObject({
      severity: name === "shock-in-rigid-frame" ? "warning" : "information",
      path: idleParts.find((rule) => rule.name === name)?.slot,
    });
    expect(checkText(idle.replace(from, to)).instance(code, name)).toBe("holds");
    const gone = repaired(idle, code).find(({ title }) => /none|empty|out/i.test(title));
    expect(gone && checkText(gone.text).instance(code, name)).toBe("notApplicable");
  });
  it("finds a battery of nothing on a bike with one ring too", () => {
    expect(
      checkText(`
part battery a.one "One" {}
part rear-derailleur a.two "Two" { power: none }
part shift-controller a.four "Four" { power: none }
build example "One" {
  drivetrain {
    battery: a.one
    rear-derailleur: a.two
    front-derailleur: none
    rear-controller: a.four
    front-controller: none
  }
}
`).instance(code, "battery-of-nothing"),
    ).toBe("fails");
  });
  it("is open while what decides it is", () => {
    const text = (post: string): string => `
part seatpost a.post "Post" { ${post} }
part remote a.thumb "Thumb" {}
build example "One" { seat { post: a.post; remote: a.thumb } }
`;
    expect(checkText(text("")).instance(code, "remote-of-rigid-post")).toBe("unknown");
    expect(checkText(text("")).missing(code)).toContain("seat.post.dropper-travel");
  });
  it("asks no place that is still open", () => {
    expect(checkText(`build example "One" {}`).outcome(code)).toBe("notApplicable");
  });
});
