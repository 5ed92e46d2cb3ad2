import { describe, expect, it } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { prelude } from "../../server/standards/index.ts";

const library = `
part frame moor.fellside "Fellside" { mass: 2 kg }
part fork moor.gill "Gill" { mass: 900 g }
part stem moor.stub "Stub" { length: 35 mm }
part stem moor.long "Long" { length: 90 mm }
build base "Base" {
  frame: moor.fellside
  fork: moor.gill
  cockpit.stem: moor.stub { spacers-below: 15 mm; spacers-above: 5 mm }
}
`;

/** What a build lays together, by path, and the codes of what is wrong with its text. */
function laid(builds: string, name = "one") {
  const engine = new Engine({ today: "2026-11-25", prelude });
  engine.update([{ uri: "file:///all.ferrule", text: library + builds }]);
  const { assembly } = engine.report(engine.workshop.build(name)!)!;
  const slots = [...assembly.slots].map(([path, { name: part, settings }]) => {
    const set = [...settings].map(([key, one]) => `${key} ${one.state === "stated" ? one.written : one.state}`);
    return `${path}: ${[part, ...set].join(" ")}`;
  });
  return { slots, findings: assembly.findings };
}

describe("the entries of a build have no order", () => {
  const wanted = ["frame: moor.fellside", "fork: moor.gill", "cockpit.stem: moor.long spacers-below 10 mm"];

  it.each([
    ["cockpit.stem: moor.long", "cockpit.stem.spacers-below: 10 mm"],
    ["cockpit.stem.spacers-below: 10 mm", "cockpit.stem: moor.long"],
    ["cockpit { stem.spacers-below: 10 mm }", "cockpit.stem: moor.long"],
    ["cockpit { stem { spacers-below: 10 mm } }", "cockpit { stem: moor.long }"],
    ["cockpit.stem { spacers-below: 10 mm }", "cockpit.stem: moor.long"],
  ])("%s then %s: a new part, and the setting on it", (first, second) => {
    const { slots, findings } = laid(`build one from base {\n  ${first}\n  ${second}\n}\n`);
    expect(findings).toEqual([]);
    expect([...slots].sort()).toEqual([...wanted].sort());
  });

  it("nor have those of a build without a base", () => {
    const { slots, findings } = laid(
      "build one {\n  cockpit.stem.spacers-below: 10 mm\n  cockpit.stem: moor.long\n}\n",
    );
    expect(findings).toEqual([]);
    expect(slots).toEqual(["cockpit.stem: moor.long spacers-below 10 mm"]);
  });

  it.each([
    ["remove: fork", "fork: moor.gill"],
    ["fork: moor.gill", "remove: fork"],
  ])("%s then %s: what is inherited goes, what the build states stays", (first, second) => {
    const { slots, findings } = laid(`build one from base {\n  ${first}\n  ${second}\n}\n`);
    expect(findings).toEqual([]);
    expect(slots).toContain("fork: moor.gill");
  });

  it("removing what only the build itself states is an error, and takes nothing away", () => {
    const { slots, findings } = laid("build one {\n  fork: moor.gill\n  remove: fork\n}\n");
    expect(findings.map(({ code, message }) => [code, message])).toEqual([
      ["model/nothing-to-remove", "Nothing inherited stands at fork."],
    ]);
    expect(slots).toEqual(["fork: moor.gill"]);
  });

  it("a setting is removed from what is inherited, and may be set anew in any order", () => {
    const { slots } = laid(
      "build one from base {\n  cockpit.stem.spacers-above: 10 mm\n  remove: cockpit.stem.spacers-above, cockpit.stem.spacers-below\n}\n",
    );
    expect(slots).toContain("cockpit.stem: moor.stub spacers-above 10 mm");
  });
});

describe("remove", () => {
  it("of a group says what stands in it, and offers that", () => {
    const { findings } = laid("build one from base {\n  remove: cockpit\n}\n");
    expect(findings.map(({ message }) => message)).toEqual([
      "cockpit is a group and is removed by what stands in it: cockpit.stem.",
    ]);
    expect(findings[0]?.repairs).toMatchObject([{ title: "Write cockpit.stem" }]);
  });

  it("of a misspelt path offers the nearest", () => {
    const { findings } = laid("build one from base {\n  remove: cockpit.stm\n}\n");
    expect(findings[0]?.message).toBe("Nothing inherited stands at cockpit.stm. Did you mean cockpit.stem?");
  });
});
