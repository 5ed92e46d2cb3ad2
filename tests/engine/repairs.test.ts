import { describe, expect, it } from "vitest";
import { quantities } from "../../server/calculations/table.ts";
import { checks } from "../../server/checks/table.ts";
import { Engine } from "../../server/engine/engine.ts";
import { type Mend, mends } from "../../server/engine/repairs.ts";
import { settingTitle } from "../../server/engine/set-settings.ts";
import { readValue } from "../../server/values/read.ts";
import { slots } from "../../server/vocabulary/index.ts";
import { checkText, repaired } from "../checks/check-text.ts";

describe("a repair that sets something says what is done at the bench", () => {
  it.each([
    ["drivetrain.closure-link", "used-before", "no", "Fit a new closure link"],
    ["drivetrain.chain", "links", "110", "Cut the chain to 110 links"],
    ["rear-wheel.hub", "arm-fixed", "yes", "Fix the arm to the frame"],
    ["seat.remote", "clamp", "none", "Fit it with a band of its own"],
    ["seat.remote", "clamp", "front-brake.lever", "Mount it on the clamp of front-brake.lever"],
    ["front-brake.hose", "entry", "external", "Run the hose outside"],
    ["seat.saddle", "rail-position", "5 mm", "Move the saddle back: clamp its rails 5 mm in front of their middle"],
    ["seat.saddle", "rail-position", "-15 mm", "Move the saddle forward: clamp its rails 15 mm behind their middle"],
  ])("%s.%s: %s", (slot, setting, value, words) => {
    expect(settingTitle({ slot, setting, value })).toBe(`${words} (${slot}.${setting}: ${value})`);
  });

  it("names field and value where nobody put it into words", () => {
    const of = (value: string): string =>
      settingTitle({ slot: "drivetrain.closure-link", setting: "used-before", value });
    expect(of("yes")).toBe("Set drivetrain.closure-link.used-before to yes");
  });

  it("whatever a check proposes to set", () => {
    const proposed = checks
      .filter(({ examples }) => examples.fails !== "")
      .flatMap(({ code, examples }) =>
        checkText(examples.fails)
          .of(code)
          .flatMap(({ repairs }) => repairs),
      )
      .flatMap((repair) => (repair.kind === "set-setting" ? [settingTitle(repair)] : []));
    expect(proposed.length).toBeGreaterThan(20);
    expect(proposed.filter((title) => title.startsWith("Set ") && / to /.test(title) && !title.includes("("))).toEqual(
      [],
    );
  });

  it("an instruction has one place for the value, unless it is for one value alone", () => {
    const numbers = new Set(quantities.map(({ path }) => path));
    for (const { path, settings } of slots.values()) {
      for (const [name, { deed, type, workedOutAs }] of Object.entries(settings)) {
        const where = `${path}.${name}`;
        if (typeof deed === "string") expect(deed.split("{}"), where).toHaveLength(2);
        else {
          for (const [value, words] of Object.entries(deed ?? {})) {
            const isValue =
              value === "none" ||
              readValue(type, [{ kind: "word", text: value, span: { start: 0, end: 1 } }]).value !== undefined;
            const isForMany = ["otherwise", "positive", "negative"].includes(value);
            expect(isForMany ? words.includes("{}") : isValue, `${where} ${value}`).toBe(true);
          }
        }
        if (workedOutAs === undefined) continue;
        const number = workedOutAs.includes(".") ? workedOutAs : `${path.slice(0, path.indexOf("."))}.${workedOutAs}`;
        expect(numbers.has(number), `${where} ${number}`).toBe(true);
      }
    }
  });
});

const bar = `
standard control-clamp a.fitting "Fitting on the lever" { form: shared; source: "this example" }
part handlebar a.drop "Drop" { control-diameter: 23.8 mm; clamp-diameter: 31.8 mm }
part brake-lever a.stop "Stop" { mount: band-23.8; clamp-offers: a.fitting }
part brake-lever a.bare "Bare" { mount: band-23.8; clamp-offers: none }
`;

describe("a part that needs a setting is offered with it", () => {
  it("a control on the lever's clamp in place of one whose band does not fit the bar", () => {
    const text = `${bar}
part shift-controller a.band "Band" { mount: band-22.2 }
part shift-controller a.pod "Pod" { mount: a.fitting }
build example "One" {
  cockpit { handlebar: a.drop; grips: none }
  front-brake.lever: none
  rear-brake.lever: a.stop { side: right }
  drivetrain { rear-controller: a.band { side: right }; front-controller: none }
  seat.remote: none
}
`;
    const [first] = repaired(text, "cockpit/control-diameter");
    expect(first?.title).toBe(
      "Fit Pod (a.pod) as drivetrain.rear-controller. Mount it on the clamp of rear-brake.lever (drivetrain.rear-controller.clamp: rear-brake.lever)",
    );
    expect(first?.text).toContain("rear-controller: a.pod { side: right; clamp: rear-brake.lever }");
    const after = checkText(first?.text ?? "");
    expect(after.outcome("cockpit/control-diameter")).not.toBe("fails");
    expect(after.instance("cockpit/clamp-interface", "drivetrain.rear-controller")).toBe("holds");
  });

  it("a lever that lends its clamp, and the control on it", () => {
    const text = `${bar}
part shift-controller a.pod "Pod" { mount: a.fitting }
build example "One" {
  cockpit { handlebar: a.drop; grips: none }
  front-brake.lever: none
  rear-brake.lever: a.bare { side: right }
  drivetrain { rear-controller: a.pod { side: right }; front-controller: none }
  seat.remote: none
}
`;
    const [first] = repaired(text, "cockpit/clamp-interface");
    expect(first?.title).toBe(
      "Fit Stop (a.stop) as rear-brake.lever. Mount it on the clamp of rear-brake.lever (drivetrain.rear-controller.clamp: rear-brake.lever)",
    );
    expect(checkText(first?.text ?? "").of("cockpit/clamp-interface")).toEqual([]);
  });

  it("no control for a clamp that nothing on the bar lends", () => {
    const text = `${bar}
part shift-controller a.band "Band" { mount: band-22.2 }
part shift-controller a.pod "Pod" { mount: a.fitting }
build example "One" {
  cockpit { handlebar: a.drop; grips: none }
  front-brake.lever: none
  rear-brake.lever: a.bare
  drivetrain { rear-controller: a.band; front-controller: none }
  seat.remote: none
}
`;
    expect(repaired(text, "cockpit/control-diameter")).toEqual([]);
  });
});

describe("a setting that nobody stated", () => {
  const bike = (chain: string, derailleur = "set-up: cable"): string => `
part cassette a.cogs "Cogs" { cogs: 11-13-15-17-19-21-24-28-32-36 t; speeds: 10 }
part crankset a.crank "Crank" { rings: 46 t }
part frame a.frame "Frame" { chainstay: 415 mm; rear-travel: none }
part chain a.chain "Chain" { speeds: 10 }
part rear-derailleur a.arm "Arm" { largest-cog: 36 t; ${derailleur} }
build example "One" {
  frame: a.frame
  drivetrain { rear-derailleur: a.arm; cassette: a.cogs; crankset: a.crank; ${chain}; front-derailleur: none }
}
`;
  const offered = (text: string): readonly Mend[] => {
    const { engine, report, findings } = checkText(text);
    const asked = findings.find(({ path }) => path === "drivetrain.chain.links");
    return asked ? mends(engine, report.assembly.declaration, asked) : [];
  };

  it("is stated as it was worked out, or by hand", () => {
    const found = offered(bike("chain: a.chain"));
    expect(found.map(({ title, unfinished }) => [title, unfinished])).toEqual([
      ["Cut the chain to 110 links (drivetrain.chain.links: 110), as worked out", false],
      ["State drivetrain.chain.links here", true],
    ]);
    expect(found[0]?.edits.map(({ newText }) => newText)).toEqual([" { links: 110 }"]);
    expect(checkText(bike("chain: a.chain { links: 110 }")).outcome("drivetrain/chain-length")).toBe("holds");
  });

  it("is stated by hand where nothing can be worked out", () => {
    expect(offered(bike("chain: a.chain", "")).map(({ title }) => title)).toEqual([
      "State drivetrain.chain.links here",
    ]);
  });

  it("is not asked for once it is there", () => {
    expect(offered(bike("chain: a.chain { links: 110 }"))).toEqual([]);
  });
});

describe("parts that are offered", () => {
  const small = 'part rear-derailleur a.small "Small" { largest-cog: 36 t }\n';
  const libraries = (offered: string): string => `
part cassette a.cogs "Cogs" { cogs: 11-13-15-17-19-21-24-28-32-42 t; speeds: 10 }
${small}${offered}`;
  const large = (name: string): string => `part rear-derailleur a.${name} "${name}" { largest-cog: 46 t }\n`;
  const build = (name: string, more = ""): string =>
    `build ${name} "${name}" {\n  drivetrain { rear-derailleur: a.small; cassette: a.cogs${more} }\n}\n`;

  /** What is offered for the fault of a build, and the text that the first offer leaves behind. */
  function offered(engine: Engine, name: string): { readonly titles: readonly string[]; readonly text: string } {
    const declaration = engine.workshop.lookup(`build ${name}`);
    if (!declaration) throw new Error(`there is no ${name}`);
    const finding = engine.findingsOf(declaration).find(({ code }) => code === "drivetrain/largest-cog");
    const found = finding ? mends(engine, declaration, finding) : [];
    const text = engine.file("builds")?.text ?? "";
    const [edit] = found[0]?.edits ?? [];
    if (!edit) return { titles: [], text };
    const lines = engine.lines("builds");
    const [start, end] = [lines.offset(edit.range.start), lines.offset(edit.range.end)];
    return {
      titles: found.map(({ title }) => title).filter((title) => title.startsWith("Fit ")),
      text: text.slice(0, start) + edit.newText + text.slice(end),
    };
  }

  it("are looked for again when a library or the build changes, and stand where the build stands", () => {
    const engine = new Engine({ today: "2026-11-25" });
    const update = (uri: string, text: string): unknown => engine.update([{ uri, text }]);
    const fits = (name: string): string => `Fit ${name} (a.${name}) as drivetrain.rear-derailleur`;
    update("parts", libraries(large("one")));
    update("builds", build("first") + build("second"));
    expect(offered(engine, "first").titles).toEqual([fits("one")]);
    expect(offered(engine, "second").titles).toEqual([fits("one")]);

    // Another build before it: the same offer, further down.
    const pushed = `${build("new", "; chain: none")}\n${build("first")}`;
    update("builds", pushed);
    expect(offered(engine, "first")).toEqual({
      titles: [fits("one")],
      text: pushed.replace(build("first"), build("first").replace("a.small", "a.one")),
    });

    update("parts", libraries(large("one") + large("two")));
    expect(offered(engine, "first").titles).toEqual([fits("one"), fits("two")]);
    update("parts", libraries(large("two")));
    expect(offered(engine, "first").titles).toEqual([fits("two")]);
    update("parts", libraries(""));
    expect(offered(engine, "first").titles).toEqual([]);
    update("more", large("three"));
    expect(offered(engine, "first").titles).toEqual([fits("three")]);

    // A rule of the house speaks against it.
    update("rules", "rule ours {\n  require: drivetrain.rear-derailleur is not a.three\n}\n");
    expect(offered(engine, "first").titles).toEqual([]);
  });
});
