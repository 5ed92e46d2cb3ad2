import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Maybe } from "../../server/model/need.ts";
import { Evaluation } from "../../server/rules/evaluate.ts";
import { everyPath, pathMeaning } from "../../server/rules/paths.ts";
import type { Rule } from "../../server/rules/rule.ts";
import { ruleCheck } from "../../server/rules/rule-check.ts";
import { decide } from "../../server/rules/truth.ts";
import { today, workshop } from "./support.ts";

/** Paths of every type, with the answers that a build may give. */
const lengths = ["cockpit.stem.spacers-below", "cockpit.stem.length", "drivetrain.front-chainline"];
const masses = ["frame.mass", "rider.mass", "cockpit.stem.mass"];
const counts = ["drivetrain.cassette.speeds", "drivetrain.rear-derailleur.total-capacity"];
const conditions = [
  "category is mountain",
  "lighting.bell is not none",
  "mountain in frame.categories",
  "category in road, track",
];

const numberOf = (paths: readonly string[], literals: readonly string[]): fc.Arbitrary<string> => {
  const { number } = fc.letrec<{ number: string }>((tie) => ({
    number: fc.oneof(
      { depthSize: "small", withCrossShrink: true },
      fc.constantFrom(...paths, ...literals),
      fc.tuple(fc.constantFrom("+", "-"), tie("number"), tie("number")).map(([sign, a, b]) => `(${a} ${sign} ${b})`),
      fc.tuple(tie("number"), fc.constantFrom("2", "0", "50 %", ...counts)).map(([a, b]) => `(${a} * ${b})`),
      fc.tuple(tie("number"), fc.constantFrom("2", "0", ...counts)).map(([a, b]) => `(${a} / ${b})`),
      fc
        .tuple(fc.constantFrom("min", "max", "sum"), tie("number"), tie("number"))
        .map(([f, a, b]) => `${f}(${a}, ${b})`),
      tie("number").map((a) => `abs(${a})`),
      fc.tuple(tie("number"), fc.constantFrom(...literals)).map(([a, b]) => `round(${a}, ${b})`),
    ),
  }));
  return number;
};

const { truth } = fc.letrec<{ truth: string }>((tie) => {
  const sign = fc.constantFrom("<", "<=", ">", ">=", "is", "is not");
  const compared = (number: fc.Arbitrary<string>) =>
    fc.tuple(number, sign, number).map(([a, s, b]) => `(${a} ${s} ${b})`);
  const length = numberOf(lengths, ["30 mm", "0 mm", "1 in"]);
  return {
    truth: fc.oneof(
      { depthSize: "small", withCrossShrink: true },
      fc.constantFrom(...conditions).map((one) => `(${one})`),
      compared(length),
      compared(numberOf(masses, ["1 kg", "0 g"])),
      fc.tuple(length, length, length).map(([a, b, c]) => `(${a} in ${b} to ${c})`),
      fc.constantFrom(...lengths, ...masses, "category").map((path) => `(${path} is none)`),
      fc.tuple(tie("truth"), fc.constantFrom("and", "or"), tie("truth")).map(([a, s, b]) => `(${a} ${s} ${b})`),
      tie("truth").map((a) => `(not ${a})`),
      fc.tuple(tie("truth"), tie("truth"), fc.nat(2)).map(([a, b, n]) => `(count(${a}, ${b}) >= ${n})`),
    ),
  };
});

const place = undefined as never;

function unknown(path: string): Maybe {
  return { state: "unknown", missing: [{ path, what: path, place }] };
}

/** What a build may say of a path once it says something: a value inside the bounds of its field, or none. */
function answers(path: string): fc.Arbitrary<Maybe> {
  const meaning = pathMeaning(path)!;
  const { type } = meaning;
  const value: fc.Arbitrary<unknown> =
    path === "category"
      ? fc.constantFrom("mountain", "road", "city")
      : path === "frame.categories"
        ? fc.constantFrom(["mountain"], ["road", "gravel"])
        : meaning.what === "slot"
          ? fc.constant({ name: "gill.bell" })
          : type.form === "number" && Object.keys(type.vector).length === 0
            ? fc.integer({ min: 1, max: 60 })
            : path.endsWith("mass")
              ? fc.integer({ min: path === "rider.mass" ? 8000 : 0, max: 30_000 })
              : fc.integer({ min: 0, max: 60 });
  return fc.oneof(
    {
      weight: 6,
      arbitrary: value.map(
        (one): Maybe => ({ state: "known", value: one, written: String(one), path, subject: "it", place }),
      ),
    },
    { weight: 1, arbitrary: fc.constant<Maybe>({ state: "none", path, place }) },
    // What it belongs to is not there.
    {
      weight: 1,
      arbitrary: fc.constant<Maybe>({ state: "none", path: path.slice(0, Math.max(0, path.lastIndexOf("."))), place }),
    },
  );
}

const paths = [...lengths, ...masses, ...counts, "category", "lighting.bell", "frame.categories"];
/** A build that says everything, and which of it another one leaves out. */
const facts = fc.record({
  whole: fc.tuple(...paths.map(answers)),
  left: fc.tuple(...paths.map(() => fc.boolean())),
});

function ruleOf(requirement: string): Rule | undefined {
  const { engine } = workshop(`rule r { require: ${requirement} }\n`, "", "");
  const declaration = engine.workshop.lookup("rule r");
  const rule = declaration && engine.rule(declaration);
  return rule && !rule.isWrong ? rule : undefined;
}

describe("rules of any kind", () => {
  it("are monotone: stating what was open never turns what was decided", () => {
    let decided = 0;
    fc.assert(
      fc.property(truth, facts, (requirement, { whole, left }) => {
        const rule = ruleOf(requirement);
        // A range that runs downwards is refused where it is written.
        fc.pre(rule !== undefined);
        const [requirementTyped] = rule!.requirements;
        const evaluate = (isLeft: readonly boolean[]) => {
          const said = new Map(paths.map((path, index) => [path, isLeft[index] ? unknown(path) : whole[index]!]));
          return new Evaluation(
            ({ path }) => said.get(path) ?? unknown(path),
            () => "it",
            () => [],
          ).truth(requirementTyped!);
        };
        const before = evaluate(left);
        const after = evaluate(left.map(() => false));
        if (before.state !== "open") {
          decided++;
          expect([requirement, after.state]).toEqual([requirement, before.state]);
        }
        // With everything stated nothing is open for want of a fact.
        if (after.state === "open") expect(after.reasons.map(({ why }) => why)).not.toContain("missing");
        expect(() => decide(before)).not.toThrow();
      }),
      { numRuns: 600 },
    );
    expect(decided).toBeGreaterThan(60);
  });

  it("give an answer for any text that was meant to be an expression", () => {
    const word = fc.constantFrom(
      ...everyPath().filter((_, index) => index % 41 === 0),
      ...[
        "30 mm",
        "12x148",
        "52 t",
        "GBP 3",
        "yes",
        "none",
        "today",
        "mountain",
        '"x"',
        "2026-01-01",
        "10-12 t",
        "27 ± 1 mm",
      ],
      ...["and", "or", "not", "is", "is not", "in", "not in", "to", "+", "-", "*", "/", "<", "<=", "=", "(", ")", ","],
      ...["min(", "max(", "sum(", "count(", "round(", "abs(", "1e400", "-", "∞", "{", "}", ":", ";", "//"],
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 14 }), fc.array(word, { maxLength: 5 }), (words, other) => {
        const { engine } = workshop(
          `rule r {\n  when: ${other.join(" ")}\n  let: x = ${other.join(" ")}\n  require: ${words.join(" ")}\n  message: "{${words[0]}} {${other[0]}}"\n  expect { holds: example }\n}\n`,
        );
        const report = engine.report(engine.workshop.build("example")!)!;
        expect(Object.values(report.counts).reduce((sum, one) => sum + one, 0)).toBe(report.rows.length);
        engine.findings("file:///rules.ferrule");
      }),
      { numRuns: 250 },
    );
  });

  it("say for every path that there is what it is of, and take any answer for it", () => {
    const odd: Maybe[] = [
      7,
      "x",
      true,
      [1, 2],
      ["a"],
      [],
      { code: "x", family: "axle" },
      { least: 1, greatest: 2 },
      { currency: "GBP", amount: 3 },
      null,
      undefined,
    ].map((value) => ({ state: "known", value, written: "", path: "p", subject: "", place }));
    for (const path of everyPath()) {
      const meaning = pathMeaning(path);
      expect([path, meaning?.type.form]).not.toEqual([path, undefined]);
      expect([path, meaning?.type.form]).not.toEqual([path, "wrong"]);
    }
    const rule = ruleOf(
      "count(category, frame.mass, drivetrain.cassette.cogs, frame.categories, template, frame.price) >= 0",
    )!;
    for (const answer of odd) {
      const evaluation = new Evaluation(
        () => answer,
        () => "it",
        () => [],
      );
      expect(["true", "false", "open"]).toContain(evaluation.truth(rule.requirements[0]!).state);
    }
    const check = ruleCheck(rule, today);
    expect(check.needs({ name: "" })).not.toEqual({});
  });
});
