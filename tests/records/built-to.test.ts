import { describe, expect, it, test } from "vitest";
import { specDigest } from "../../server/records/spec-digest.ts";
import { comparisons } from "../../server/records/table.ts";
import { recorded, uri } from "./record-text.ts";

const example = `
part rotor example.rotor "Rotor" { thickness: 1.8 mm; least-thickness: 1.5 mm }
part spokes example.spokes "Spokes" { spoke-head: elbow }
part stem example.stub "Stub" { length: 50 mm }

build example "Example" {
  front-brake.rotor: example.rotor
  rear-wheel.spokes: example.spokes
  cockpit.stem: example.stub { spacers-below: 15 mm }
}
`;

/** @param spec the line of the specification, if any. */
function record(spec: string, lines: readonly string[], build = example): string {
  return `${build}
record "A-1" of example {
  date: 2026-11-20
  by: "K. P."
${[spec, ...lines]
  .filter((line) => line !== "")
  .map((line) => `  ${line}\n`)
  .join("")}}
`;
}

const digest = (() => {
  const { engine, report } = recorded(record("", []));
  const build = engine.workshop.build("example");
  if (!build || report.builtTo?.today !== specDigest(engine.assemble(build))) throw new Error("no digest");
  return report.builtTo.today;
})();

const measured = [
  "front-brake.rotor-thickness: 1.4 mm",
  "cockpit.stem.spacers-below: 20 mm",
  "rear-wheel.tension.drive-side: 1000, 1010, 700, 1000 N",
];

describe("a record that states today's specification", () => {
  it.each([`spec: ${digest}`, `spec: ${digest.slice(0, 6)}`, `spec: "${digest}"`, `spec: ${digest.toUpperCase()}`])(
    "as %s is judged in full",
    (spec) => {
      const text = recorded(record(spec, measured));
      expect(text.report.builtTo?.state).toBe("current");
      expect(text.findings.map(({ code, severity, outcome }) => `${severity} ${code} ${outcome}`)).toEqual([
        "error record/rotor-thickness fails",
        "warning record/as-specified fails",
        "warning record/spoke-spread fails",
        "information record/missing-fact unknown",
      ]);
    },
  );
});

describe("a record that states none", () => {
  const text = recorded(record("", measured));

  it("is compared with the build as it stands, and says so", () => {
    expect(text.report.builtTo).toEqual({ state: "not-stated", today: digest });
    expect(text.of("record/no-spec")[0]).toMatchObject({ severity: "information", outcome: "unknown" });
    expect(text.report.counts.fails).toBe(3);
  });

  it("is offered today's digest, behind who measured", () => {
    const repaired = text.repaired("record/no-spec");
    expect(repaired).toContain(`  by: "K. P."\n  spec: ${digest}\n  front-brake`);
    expect(recorded(repaired).report.builtTo?.state).toBe("current");
  });

  it("also in a block of one line, and in an empty one", () => {
    for (const lines of [
      '{ date: 2026-11-20; by: "K."; front-brake.static-test: yes }',
      "{ front-brake.static-test: yes }",
      "{\n}",
    ]) {
      const repaired = recorded(`${example}\nrecord "A-1" of example ${lines}\n`).repaired("record/no-spec");
      expect(recorded(repaired).report.builtTo?.state, repaired).toBe("current");
    }
  });
});

describe("a record whose recipe has moved on", () => {
  const text = recorded(record("spec: 3f9a1c", measured));

  it("says so as information, with today's digest as a fix", () => {
    const [finding] = text.of("record/spec-moved-on");
    expect(finding).toMatchObject({ severity: "information", outcome: "unknown", path: "spec" });
    expect(finding?.message).toContain(`built to 3f9a1c, and example is ${digest} today`);
    expect(finding && text.at(finding)).toBe("3f9a1c");
    expect(recorded(text.repaired("record/spec-moved-on")).report.builtTo?.state).toBe("current");
  });

  it("does not fail by what the old specification may have said; what can hurt somebody stays a warning", () => {
    expect(text.findings.map(({ code, severity, outcome }) => `${severity} ${code} ${outcome}`)).toEqual([
      "information record/spec-moved-on unknown",
      "warning record/rotor-thickness unknown",
      "information record/as-specified unknown",
      // What the spokes say of each other rests on no recipe.
      "warning record/spoke-spread fails",
      "information record/missing-fact unknown",
    ]);
    const [rotor] = text.of("record/rotor-thickness");
    expect(rotor?.message).toContain(
      "By the recipe of today, not the one it was built to (3f9a1c): The rotor is 1.4 mm",
    );
    expect(rotor?.caution).toContain("brake fails");
  });

  it("does not hold by it either", () => {
    const good = recorded(record("spec: 3f9a1c", ["front-brake.rotor-thickness: 1.7 mm"]));
    expect(good.row("record/rotor-thickness")).toMatchObject({ outcome: "unknown", verdict: { outcome: "holds" } });
    expect(good.report.counts).toMatchObject({ holds: 0, fails: 0, unknown: 1 });
    expect(good.findings.map(({ code }) => code)).toEqual(["record/spec-moved-on"]);
    expect(good.of("record/spec-moved-on")[0]?.message).toContain("1 of 1 measurements agree");
  });
});

test("what rests on the measurements alone is said of each comparison", () => {
  expect(comparisons.filter(({ restsOn }) => restsOn === "record").map(({ code }) => code)).toEqual([
    "record/hanger-run-out",
    "record/spoke-spread",
    "record/slack-spoke",
    "record/run-out",
    "record/dish",
    "record/static-test",
  ]);
});

test("it moves on when a part in the build states something else, and back", () => {
  const text = recorded(record(`spec: ${digest}`, ["front-brake.rotor-thickness: 1.7 mm"]));
  const { engine } = text;
  const state = () => {
    const declaration = engine.workshop.lookup("record A-1");
    return declaration && engine.record(declaration)?.builtTo?.state;
  };
  expect(state()).toBe("current");
  const source = engine.file(uri)?.text ?? "";
  engine.update([{ uri, text: source.replace("length: 50 mm", "length: 60 mm") }]);
  expect(state()).toBe("moved-on");
  engine.update([{ uri, text: source.replace("\n\nbuild", "\n\n\n// A remark.\nbuild") }]);
  expect(state()).toBe("current");
});

describe("what is no digest", () => {
  it.each(["tomorrow", "3f9", "12 mm", "3f9a1g"])("%s is an error with today's as a fix", (spec) => {
    const text = recorded(record(`spec: ${spec}`, []));
    expect(text.of("record/spec-unreadable")[0]).toMatchObject({ severity: "error", outcome: "fails" });
    expect(text.repaired("record/spec-unreadable")).toContain(`  spec: ${digest}\n`);
  });

  it("none is as good as left out", () => {
    expect(recorded(record("spec: none", [])).report.builtTo?.state).toBe("not-stated");
  });
});
