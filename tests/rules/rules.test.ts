import { describe, expect, it } from "vitest";
import { mends } from "../../server/engine/repairs.ts";
import { asked, at, build, library, row, today, workshop } from "./support.ts";

const tallStack = `rule tall-stack "No more than 10 mm of spacers under a stem" {
  when: category is mountain
  require: cockpit.stem.spacers-below <= 10 mm
  severity: warning
  because: "Our carbon-steerer policy."
}
`;

function findingsOf(rules: string, builds = build, name = "example") {
  const { engine } = workshop(rules, builds);
  const declaration = engine.workshop.build(name)!;
  const found = engine.report(declaration)!.findings.filter(({ code }) => code.startsWith("rule/"));
  return { engine, declaration, found, finding: found[0]! };
}

describe("a breach", () => {
  it("is a finding with the code, the severity, the values and the reason of its rule", () => {
    const { found, finding } = findingsOf(tallStack);
    expect(found).toHaveLength(1);
    expect(finding).toMatchObject({
      code: "rule/tall-stack",
      severity: "warning",
      outcome: "fails",
      path: "cockpit.stem.spacers-below",
      message:
        "No more than 10 mm of spacers under a stem: cockpit.stem.spacers-below is 15 mm and has to be at most 10 mm. Our carbon-steerer policy.",
    });
  });

  it("stands at the value in the build, with the rule beside it", () => {
    const { finding } = findingsOf(tallStack);
    expect(finding.place.declaration.name).toBe("example");
    expect(at(finding)).toBe("15 mm");
    const [rule] = finding.related;
    expect([rule?.message, rule?.place.declaration.name, at({ place: rule!.place } as never)]).toEqual([
      "required by the house rule tall-stack",
      "tall-stack",
      "tall-stack",
    ]);
  });

  it("of a fact of a part stands where the part is named, with the fact beside it", () => {
    const { finding } = findingsOf("rule light { require: frame.mass <= 1.5 kg }\n");
    expect(at(finding)).toBe("moor.fellside");
    expect(finding.related.map(({ message, place }) => [message, at({ place } as never)])).toEqual([
      ["stated here", "1800 g"],
      ["required by the house rule light", "light"],
    ]);
  });

  it("of a worked-out number stands at what was stated beside it", () => {
    const { finding } = findingsOf(
      "rule spare { require: drivetrain.capacity-needed + 1 t <= drivetrain.rear-derailleur.total-capacity }\n",
    );
    expect(finding.path).toBe("drivetrain.rear-derailleur.total-capacity");
    expect(at(finding)).toBe("corrie.long");
    expect(finding.message).toBe(
      "House rule spare: drivetrain.capacity-needed + 1 t is 43 t and has to be at most 42 t (drivetrain.rear-derailleur.total-capacity).",
    );
  });

  it.each([
    ["category in road, gravel", "category is mountain and has to be road or gravel."],
    ["category not in mountain, gravel", "category is mountain and has to be none of mountain, gravel."],
    ["category is not mountain", "category is mountain and has to be anything but mountain."],
    ["track in frame.categories", "track has to be one of mountain, gravel (frame.categories)."],
    ["lighting.bell is not none", "lighting.bell is none, and there has to be one."],
    ["drivetrain.cassette is none", "drivetrain.cassette is corrie.wide, and there has to be none."],
    ["not cockpit.stem.spacers-below > 10 mm", "cockpit.stem.spacers-below is 15 mm and has to be at most 10 mm."],
    ["10 mm >= cockpit.stem.spacers-below", "cockpit.stem.spacers-below is 15 mm and has to be at most 10 mm."],
    ["20 mm < cockpit.stem.spacers-below", "cockpit.stem.spacers-below is 15 mm and has to be more than 20 mm."],
    [
      "cockpit.stem.spacers-below in 1 to 3 mm, 20 mm",
      "cockpit.stem.spacers-below is 15 mm and has to be 1 to 3 mm or 20 mm.",
    ],
    ["frame.price < GBP 700", "frame.price is GBP 725.00 and has to be less than GBP 700.00."],
    ["max(drivetrain.cassette.cogs) <= 50 t", "max(drivetrain.cassette.cogs) is 52 t and has to be at most 50 t."],
    // Only what is broken is named; of alternatives all are.
    ["frame.mass < 2 kg and frame.mass < 1 kg", "frame.mass is 1.8 kg and has to be less than 1 kg."],
    [
      "frame.mass < 1 kg or category is road",
      "frame.mass is 1.8 kg and has to be less than 1 kg, or category is mountain and has to be road.",
    ],
    ["frame.mass < 1 kg and rider.height < 2 m", "frame.mass is 1.8 kg and has to be less than 1 kg."],
    [
      "not (frame.mass > 1 kg or category is mountain)",
      "frame.mass is 1.8 kg and has to be at most 1 kg; category is mountain and has to be anything but mountain.",
    ],
    // Two numbers that only differ late are told apart.
    ["cockpit.stem.length <= 34.9999 mm", "cockpit.stem.length is 35 mm and has to be at most 34.9999 mm."],
  ])("is put into words: %s", (requirement, words) => {
    expect(asked(requirement)).toEqual({ outcome: "fails", message: `House rule r: ${words}` });
  });

  it("is said in the rule's own words, with the values put in, where it has some", () => {
    const rules = `rule tall {
  let: doubled = cockpit.stem.spacers-below * 2
  require: cockpit.stem.spacers-below <= 10 mm
  message: "{cockpit.stem.spacers-below} under {cockpit.stem} ({doubled} twice, in a {category} bike) is too much"
  because: "Steerers break."
  mend: "Order a longer head tube"
}
`;
    expect(findingsOf(rules).finding.message).toBe(
      "15 mm under moor.stub (30 mm twice, in a mountain bike) is too much. Steerers break. Order a longer head tube.",
    );
  });

  it("of a message with a name that nothing has is said at the name", () => {
    const { findings } = workshop('rule r {\n  require: category is road\n  message: "{category} {catgory}"\n}\n');
    expect(findings.map((finding) => [finding.code, at(finding)])).toEqual([["expression/unknown-path", "catgory"]]);
  });
});

describe("names in a message", () => {
  it("are found where each of them stands", () => {
    const { findings } = workshop('rule r {\n  require: category is road\n  message: "{catgory} and {catgory}"\n}\n');
    const starts = findings.map(({ place }) => place.span.start);
    expect(findings.map(at)).toEqual(["catgory", "catgory"]);
    expect(new Set(starts).size).toBe(2);
  });
});

describe("a rule holds with what was compared", () => {
  it.each([
    ["cockpit.stem.spacers-below <= 20 mm", "cockpit.stem.spacers-below is 15 mm, at most 20 mm."],
    ["category is mountain", "category is mountain, as it has to be."],
    [
      "52 t in drivetrain.cassette.cogs",
      "52 t, one of 10-12-14-16-18-21-24-28-32-38-45-52 t (drivetrain.cassette.cogs).",
    ],
  ])("%s", (requirement, message) => {
    expect(asked(requirement)).toEqual({ outcome: "holds", message });
  });

  it("several requirements are required all", () => {
    expect(asked("category is mountain\n  require: frame.mass < 1 kg").outcome).toBe("fails");
    expect(asked("frame.mass < 1 kg\n  require: category is mountain").outcome).toBe("fails");
    expect(asked("frame.mass < 2 kg\n  require: category is mountain").outcome).toBe("holds");
  });
});

describe("when", () => {
  const requirement = "frame.mass < 1 kg";
  it.each([
    ["category is mountain", "fails", "frame.mass is 1.8 kg"],
    ["category is road", "notApplicable", "It is for builds of which this is true: category is road"],
    ["lighting.bell.mass > 10 g", "notApplicable", "lighting.bell is none"],
    ["rider.height > 180 cm", "unknown", "rider.height of the build"],
    ["rider.height > 180 cm and category is road", "notApplicable", "It is for builds"],
  ])("%s: %s", (when, outcome, message) => {
    const found = asked(requirement, { entries: `when: ${when}` });
    expect(found.outcome).toBe(outcome);
    expect(found.message).toContain(message);
  });

  it("is asked before anything that is required, whose facts are then not asked for", () => {
    expect(asked("rider.height > 180 cm", { entries: "when: category is road" }).outcome).toBe("notApplicable");
  });

  it("the last day counts, the day after does not", () => {
    expect(asked(requirement, { entries: `until: ${today}` }).outcome).toBe("fails");
    expect(asked(requirement, { entries: "until: 2026-11-24" })).toEqual({
      outcome: "notApplicable",
      message: "The rule applied until 2026-11-24",
    });
  });

  it("a day later the same engine says so", () => {
    const { engine } = workshop(`rule r {\n  require: ${requirement}\n  until: ${today}\n}\n`);
    expect(row(engine, "rule/r").outcome).toBe("fails");
    engine.today = "2026-11-26";
    expect(row(engine, "rule/r").outcome).toBe("notApplicable");
  });
});

describe("let", () => {
  it.each([
    ["let: total = cockpit.stem.length + cockpit.stem.spacers-below", "total is 50 mm"],
    ["let { total: cockpit.stem.length + cockpit.stem.spacers-below }", "total is 50 mm"],
    ["let: half = cockpit.stem.length / 2\n  let: whole = half * 2", "whole is cockpit.stem.length"],
    ["let { isTall: cockpit.stem.spacers-below > 10 mm }", "isTall and category is mountain"],
    ["let: part = lighting.bell", "part is none"],
    ["let: cogs = drivetrain.cassette.cogs", "52 t in cogs"],
  ])("%s", (entries, requirement) => {
    expect(asked(requirement, { entries })).toMatchObject({ outcome: "holds" });
  });

  it.each([
    ["let: a = 1\n  let: a = 2", "expression/definition", "a"],
    ["let: category = 1", "expression/definition", "category"],
    ["let: today = 1", "expression/definition", "today"],
    ["let: a <= 1", "expression/definition", "a <= 1"],
    ["let: 3 = 1", "expression/definition", "3"],
    ["let { a { b: 1 } }", "language/not-a-group", "a"],
  ])("%s is refused", (entries, code, place) => {
    const { findings } = workshop(`rule r {\n  ${entries}\n  require: category is road\n}\n`);
    expect(findings.map((finding) => [finding.code, at(finding)])).toEqual([[code, place]]);
  });

  it("a name stands for use after it, not before", () => {
    const { findings } = workshop("rule r {\n  require: total > 1\n  let: total = 2\n}\n");
    expect(findings.map(({ code }) => code)).toEqual(["expression/unknown-path"]);
  });

  it.each([
    ["let: a = a + 1", ["a"]],
    ["let: a = b\n  let: b = a", ["b"]],
    ["let { a: b; b: 2 }", ["b"]],
  ])("%s says that a name above it is missing, not that no build has it", (entries, places) => {
    const { findings } = workshop(`rule r {\n  ${entries}\n  require: category is road\n}\n`);
    expect(findings.map((finding) => at(finding))).toEqual(places);
    for (const { message } of findings) expect(message).toMatch(/stands for nothing here yet.*above it/);
  });

  it.each(["let: none = 1", "let: today = 1", "let: yes = 1"])("%s is a word of the language", (entry) => {
    const { findings } = workshop(`rule r {\n  ${entry}\n  require: category is road\n}\n`);
    expect(findings.map(({ code }) => code)).toEqual(["expression/definition"]);
  });

  it("empty braces in a message are told as what they are", () => {
    const { findings } = workshop('rule r { require: category is road; message: "Too {} long" }\n');
    expect(findings.map(({ message }) => message)).toEqual([
      "No name stands in these braces; put in a path or a name given by let.",
    ]);
  });
});

describe("the entries of a rule", () => {
  it.each([
    ["rule r { severity: warning }", "expression/no-requirement", "r"],
    ["rule r { require: category is road; requires: 3 }", "language/unknown-field", "requires"],
    ["rule r { require: category is road; severity: grave }", "value/unknown-word", "grave"],
    ["rule r { require: category is road; because: no }", "value/unquoted-text", "no"],
    ["rule r { require: category is road; until: soon }", "value/not-a-date", "soon"],
    ["rule r { require: category is road; severity: error; severity: warning }", "language/repeated", "severity"],
    ["rule r { require: category is road; expect: example }", "language/not-a-value", "example"],
    ["rule r { require: category is road; expect { hold: example } }", "language/unknown-field", "hold"],
    ["rule r { require: category is road; expect { holds: exmple } }", "model/unknown-build", "exmple"],
    ["rule r { require: category is road; set { frame.mass: 3 kg } }", "expression/not-settable", "frame.mass"],
    [
      "rule r { require: category is road; set { drivetrain.capacity-needed: 3 t } }",
      "expression/not-settable",
      "drivetrain.capacity-needed",
    ],
    ["rule r { require: category is road; set { category: raod } }", "value/unknown-word", "raod"],
    ["rule r { require: category is road; set { cockpit.stem.spacers-below: 3 kg } }", "value/wrong-dimension", "kg"],
    [
      "rule r { require: category is road; set { cockpit.stem.spacer: 3 mm } }",
      "expression/unknown-path",
      "cockpit.stem.spacer",
    ],
    ["rule r { require: category is road; set { lighting.bell: gill.bel } }", "model/unknown-part", "gill.bel"],
    ['rule r { require: category is road; waive a/b "c" }', "language/misplaced-waive", 'waive a/b "c"'],
  ])("%s", (rules, code, place) => {
    const { findings } = workshop(`${rules}\n`);
    expect(findings.map((finding) => [finding.code, at(finding)])).toEqual([[code, place]]);
  });

  it.each([
    "rule r { require: category is }",
    "rule r { require: 1 mm < cockpit.stem.spacers-below < 10 mm }",
    "rule r { require: frame.mass > 5 g ) }",
    "rule r { when category is road; require: category is road }",
    "rule r { let a = 3 mm; require: category is mountain }",
    "rule r { require: category is mountain; requre: frame.mass < 1 g }",
    "rule r {\n  require: category is mountain,\n}",
  ])("%s is asked of no build: what was read of it is not all that was meant", (text) => {
    const { engine, findings } = workshop(`${text}\n`);
    expect(findings.length).toBeGreaterThan(0);
    expect(row(engine, "rule/r").outcome).toBe("not asked");
  });

  it("a name declared twice is said at both, and the first by file and place counts", () => {
    const { engine, findings } = workshop(
      "rule r { require: category is mountain }\nrule r { require: category is road }\n",
    );
    expect(findings.map(({ code }) => code)).toEqual(["model/duplicate-name", "model/duplicate-name"]);
    expect(row(engine, "rule/r").outcome).toBe("holds");
  });
});

describe("expect", () => {
  const builds = `${build}
build short "Short" from example { cockpit.stem.spacers-below: 5 mm }
build road "Road" from example { category: road }
build open "Open" from example { remove: cockpit.stem.spacers-below }
build either "Either" from example { cockpit.stem.spacers-below: 5 mm; drivetrain.cassette: corrie.wide or corrie.close }
`;
  const rule = (expects: string, requirement = "cockpit.stem.spacers-below <= 10 mm"): string =>
    `rule r {\n  when: category is mountain\n  require: ${requirement}\n  expect { ${expects} }\n}\n`;

  it("is content where the rule comes out so", () => {
    const { findings } = workshop(
      rule("holds: short, either; fails: example; not-applicable: road; unknown: open"),
      builds,
    );
    expect(findings).toEqual([]);
  });

  it.each([
    [
      "holds: example",
      "example",
      /^The rule is expected to hold for example, but it fails: .*is 15 mm and has to be at most 10 mm\.$/,
    ],
    ["fails: short", "short", /expected to fail for short, but it holds: .*is 5 mm, at most 10 mm\.$/],
    ["holds: short, road", "road", /expected to hold for road, but it does not apply: It is for builds/],
    ["fails: open", "open", /expected to fail for open, but it cannot be checked: not stated: spacers-below/],
    ["unknown: example", "example", /expected to be unknown for example, but it fails/],
    ["not-applicable: example", "example", /expected to not apply for example, but it fails/],
  ])("%s is a finding at the name", (expects, place, message) => {
    const { findings } = workshop(rule(expects), builds);
    expect(findings.map((finding) => [finding.code, finding.severity, at(finding)])).toEqual([
      ["model/expectation", "error", place],
    ]);
    expect(findings[0]?.message).toMatch(message);
    expect(findings[0]?.related[0]?.place.declaration.name).toBe(place);
  });

  it("tries every combination of alternates", () => {
    const { findings } = workshop(rule("holds: either", "drivetrain.cassette is corrie.wide"), builds);
    expect(findings.map(({ code }) => code)).toEqual(["model/expectation"]);
    expect(findings[0]?.message).toContain("but it fails: With corrie.close as drivetrain.cassette: House rule r: ");
  });

  it("tries the rule itself: a waiver in the build changes nothing", () => {
    const waived = build.replace("category: mountain", 'category: mountain\n  waive rule/r "Owner asked"');
    expect(workshop(rule("fails: example"), waived).findings).toEqual([]);
  });

  it("is tried again when a build, or a part in it, changes", () => {
    const { engine } = workshop(rule("fails: example", "frame.mass < 1 kg"), builds);
    const said = (): readonly string[] => engine.findings("file:///rules.ferrule").map(({ code }) => code);
    expect(said()).toEqual([]);
    const lighter = engine.update([{ uri: "file:///parts.ferrule", text: library.replace("1800 g", "900 g") }]);
    expect(lighter.has("file:///rules.ferrule")).toBe(true);
    expect(said()).toEqual(["model/expectation"]);
    engine.update([{ uri: "file:///parts.ferrule", text: library }]);
    expect(said()).toEqual([]);
    const other = engine.update([
      { uri: "file:///builds.ferrule", text: builds.replace("category: mountain", "category: city") },
    ]);
    expect(other.has("file:///rules.ferrule")).toBe(true);
    expect(said()).toEqual(["model/expectation"]);
  });
});

describe("rules are checks", () => {
  it("are asked anew while the build is edited in an open file", () => {
    const { engine } = workshop(tallStack, build.replace("15 mm", "5 mm"));
    engine.setOpen("file:///builds.ferrule", true);
    expect(row(engine, "rule/tall-stack").outcome).toBe("holds");
    engine.update([{ uri: "file:///builds.ferrule", text: build }]);
    expect(row(engine, "rule/tall-stack").outcome).toBe("fails");
  });

  it("are counted, one row each, behind the checks of the program, by name whatever their order", () => {
    const rules = ["rule b { require: category is mountain }", "rule a { require: category is road }"];
    const of = (texts: readonly string[]) => {
      const { engine } = workshop(`${texts.join("\n")}\n`);
      return engine.report(engine.workshop.build("example")!)!;
    };
    const report = of(rules);
    const none = of([]);
    expect(report.rows.length).toBe(none.rows.length + 2);
    expect(report.rows.slice(-2).map(({ check, outcome }) => [check.code, outcome])).toEqual([
      ["rule/a", "fails"],
      ["rule/b", "holds"],
    ]);
    expect([report.counts.fails - none.counts.fails, report.counts.holds - none.counts.holds]).toEqual([1, 1]);
    expect(
      of(rules.toReversed())
        .rows.slice(-2)
        .map(({ check }) => check.code),
    ).toEqual(["rule/a", "rule/b"]);
  });

  it("are waived like any check", () => {
    const waived = (line: string) =>
      findingsOf(tallStack, build.replace("category: mountain", `category: mountain\n  ${line}`));
    const { finding } = waived('waive rule/tall-stack "Owner asked" until 2027-01-31');
    expect(finding).toMatchObject({ outcome: "waived", severity: "information", code: "rule/tall-stack" });
    expect(finding.message).toMatch(/^Waived until 2027-01-31: Owner asked \(No more than 10 mm/);
    const { engine } = waived('waive rule/tall-stack at cockpit.stem "Owner asked" until 2027-01-31');
    expect(row(engine, "rule/tall-stack").outcome).toBe("waived");
    const elsewhere = waived('waive rule/tall-stack at drivetrain.cassette "Owner asked" until 2027-01-31');
    expect(elsewhere.finding.outcome).toBe("fails");
    const misspelt = waived('waive rule/tal-stack "Owner asked" until 2027-01-31');
    const unknown = misspelt.engine
      .report(misspelt.declaration)!
      .findings.find(({ code }) => code === "build/unknown-waiver");
    expect(unknown?.message).toBe("No check has the code rule/tal-stack. Did you mean rule/tall-stack?");
  });

  it("are asked of every combination of alternates, each clash once", () => {
    const builds = build.replace("cassette: corrie.wide", "cassette: corrie.wide or corrie.close");
    const { found } = findingsOf("rule r { require: drivetrain.cassette.freehub is stepped-driver }\n", builds);
    expect(found.map(({ message }) => message)).toEqual([
      "With corrie.close as drivetrain.cassette: House rule r: drivetrain.cassette.freehub is splined-11t-short and has to be stepped-driver.",
    ]);
  });

  it("ask for what they need, with everything else that waits for it", () => {
    const { engine, declaration } = findingsOf("rule r { require: rider.height < 180 cm }\n");
    const missing = engine
      .report(declaration)!
      .findings.filter(({ code, message }) => code === "build/missing-fact" && message.includes("rule/r"));
    expect(missing).toHaveLength(1);
    expect(missing[0]?.message).toContain("rider.height of the build");
  });

  it("are of a build's own text: a variant inherits what it does not mend", () => {
    const builds = `${build}\nbuild tall from example { cockpit.stem.spacers-below: 40 mm }\nbuild same from example { }\n`;
    const { finding: tall } = findingsOf(tallStack, builds, "tall");
    expect([tall.place.declaration.name, at(tall)]).toEqual(["tall", "40 mm"]);
    const { finding: same } = findingsOf(tallStack, builds, "same");
    expect(same.place.declaration.name).toBe("same");
    expect(same.related[0]?.message).toMatch(/inherited from example/);
  });
});

describe("repairs", () => {
  const titles = (rules: string, builds = build): readonly string[] => {
    const { engine, declaration, finding } = findingsOf(rules, builds);
    return mends(engine, declaration, finding).map(({ title }) => title);
  };
  const applied = (rules: string, builds = build): string => {
    const { engine, declaration, finding } = findingsOf(rules, builds);
    const [first] = mends(engine, declaration, finding);
    let text = builds;
    const lines = engine.lines("file:///builds.ferrule");
    for (const { range, newText } of [...(first?.edits ?? [])].reverse()) {
      text = text.slice(0, lines.offset(range.start)) + newText + text.slice(lines.offset(range.end));
    }
    return text;
  };

  it("a setting compared with a number is set to it", () => {
    expect(applied(tallStack)).toContain("spacers-below: 10 mm");
    expect(findingsOf(tallStack, applied(tallStack)).found).toEqual([]);
  });

  it("what the rule sets comes first", () => {
    const rules = tallStack.replace(
      "severity: warning",
      "severity: warning\n  set { cockpit.stem.spacers-below: 5 mm; category: road }",
    );
    expect(titles(rules)[0]).toMatch(/5 mm/);
    expect(titles(rules)).toContain("Build it for road use (category: road)");
    expect(findingsOf(rules, applied(rules)).found).toEqual([]);
  });

  it("a slot that must not be empty is filled, with what the rule names or with any part that fits", () => {
    const rule = "rule bell { require: lighting.bell is not none }\n";
    expect(findingsOf(rule, applied(rule)).found).toEqual([]);
    expect(titles(rule)[0]).toMatch(/gill\.bell/);
    const named = "rule bell { require: lighting.bell is not none; set { lighting.bell: gill.bell } }\n";
    expect(titles(named)[0]).toBe("Add Gill bell (gill.bell) as lighting.bell");
    expect(findingsOf(named, applied(named)).found).toEqual([]);
  });

  it("a word is written as it has to be", () => {
    const rule = "rule r { require: category is road }\n";
    expect(titles(rule)[0]).toBe("Build it for road use (category: road)");
    expect(findingsOf(rule, applied(rule)).found).toEqual([]);
  });

  it("a setting is set to the border of what is forbidden where the border is allowed", () => {
    const forbidden = "rule r { require: not cockpit.stem.spacers-below > 10 mm }\n";
    expect(applied(forbidden)).toContain("spacers-below: 10 mm");
    expect(
      titles("rule r { require: not cockpit.stem.spacers-below <= 20 mm }\n").filter((title) => /20 mm/.test(title)),
    ).toEqual([]);
  });

  it("no part is offered that another rule forbids", () => {
    const rule = "rule r { require: drivetrain.cassette.freehub is splined-11t-short }\n";
    expect(titles(rule).filter((title) => /corrie\.close/.test(title))).toHaveLength(1);
    const both = `${rule}rule other { require: drivetrain.cassette is not corrie.close }\n`;
    const { engine, declaration, found } = findingsOf(both);
    const finding = found.find(({ code }) => code === "rule/r")!;
    expect(mends(engine, declaration, finding).filter(({ title }) => /corrie\.close/.test(title))).toEqual([]);
  });

  it("nothing is written that would not mend it: what has to be less than a number is not set to it", () => {
    expect(
      titles("rule r { require: cockpit.stem.spacers-below < 10 mm }\n").filter((title) => /10 mm/.test(title)),
    ).toEqual([]);
  });
});
