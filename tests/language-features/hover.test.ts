import { describe, expect, test } from "vitest";
import { hover } from "../../server/language-features/hover.ts";
import { plainHelp } from "../../server/language-features/shared/options.ts";
import { library, type Marked, marked, richClient, textAt } from "./support.ts";

function said(source: Marked): string {
  const answer = hover(source.engine, source.uri, source.position, richClient);
  if (!answer) return "";
  const [expected] = source.ranges;
  if (expected) expect(answer.range).toEqual(expected.range);
  return (answer.contents as { value: string }).value;
}

const build = (body: string): Marked =>
  marked({ "parts.ferrule": library, "build.ferrule": `build x "X" {\n${body}\n}\n` });
const part = (line: string): Marked => marked({ "a.ferrule": `part cassette x "X" {\n  ${line}\n}\n` });

describe("fields and values", () => {
  test("a field says what it is, its type and unit, and what leaving it out means", () => {
    const text = said(part("[|lock<|>ring-torque|]: 40 N·m"));
    expect(text).toContain("**lockring-torque** of a cassette");
    expect(text).toContain("Torque of the lock-ring.");
    expect(text).toMatch(/torque in `N·m` \(also .*`lbf·in`/);
    expect(text).toContain("Left out, it is not known");
    expect(said(part("body-spacer<|>: 1 mm"))).toContain("Left out, there is none.");
  });

  test("a quantity is read in metric and in inch units", () => {
    expect(said(build("  rider { height: [|7<|>1|] in }"))).toContain("Read as `1803 mm (71 in)`");
    expect(said(part("lockring-torque: 40<|> N·m"))).toContain("`40 N·m (354 lbf·in)`");
  });

  test("a word of a set says what it means", () => {
    expect(said(build("  category: [|grav<|>el|]"))).toContain("**gravel**: Unpaved");
  });

  test("a former or unknown name, a comment and a blank say nothing", () => {
    expect(said(part("no-such<|>-field: 3"))).toBe("");
    expect(said(part("speeds: 12 // twel<|>ve"))).toBe("");
    expect(said(part("own { bin<|>: 3 }"))).toBe("");
  });
});

describe("names of other declarations", () => {
  test("a part says its title, kind, remark, facts and how many builds use it", () => {
    const source = marked({
      "parts.ferrule": library,
      "b.ferrule": `build a "A" {\n  drivetrain { cassette: corrie.wide-10-52 }\n}\nbuild b "B" {\n  drivetrain { cassette: corrie.close-11-34 or corrie.wide<|>-10-52 }\n}\n`,
    });
    const text = said(source);
    expect(text).toContain("**Corrie wide 10-52** · `corrie.wide-10-52` · a cassette");
    expect(text).toContain("Twelve-speed wide-range cassette, stocked by the box.");
    expect(text).toContain("- cogs: 10-12-14-16-18-21-24-28-32-38-45-52 t");
    expect(text).toContain("mass: 372 g (0.82 lb)");
    expect(text).toContain("2 builds name it");
    expect(text).toMatch(/\[parts\.ferrule:3\]\(file:\/\/\/workshop\/parts\.ferrule#L3\)/);
  });

  test("a code says the standard's title, dimensions, other names and source", () => {
    const text = said(part("freehub: [|step<|>ped-driver|]"));
    expect(text).toContain("**Stepped driver, 10 t** · `stepped-driver` · a freehub body");
    expect(text).toContain("body-length: 34.95 mm");
    expect(text).toContain("Also written `stepped-driver-short`");
    expect(text).toContain("Source:");
    expect(text).toContain("Comes with Ferrule.");
    expect(said(part("freehub: no-such<|>-body"))).toContain("No standard `freehub-body no-such-body` is declared");
  });

  test("each half of a composite code says its own", () => {
    const tyre = (value: string): Marked => marked({ "a.ferrule": `part headset x "X" {\n  upper: ${value}\n}\n` });
    expect(said(tyre("[|ZS<|>44|]/28.6"))).toContain("A half of `ZS44/28.6`");
  });

  test("kinds, families, keywords and the build's own name", () => {
    expect(said(marked({ "a.ferrule": `part [|cass<|>ette|] x "X" { }` }))).toContain("a cassette");
    expect(said(marked({ "a.ferrule": `standard freehub<|>-body x "X" { }` }))).toContain("a freehub body");
    expect(said(marked({ "a.ferrule": `bu<|>ild x "X" { }` }))).toContain("A whole bicycle");
    expect(said(marked({ "a.ferrule": `build x<|> "X" { }` }))).toMatch(/\d+ fail, \d+ cannot be made/);
  });
});

describe("slots of a build", () => {
  const failing = (line: string): Marked =>
    build(`  drivetrain {\n    ${line}\n    cassette: corrie.wide-10-52\n    crankset: corrie.arm-32\n  }`);

  test("what fails there comes first, with the comparison, its working, and where each side was stated", () => {
    const text = said(failing("rear-derailleur: [|corrie.sh<|>ort-12|]"));
    const [first = ""] = text.split("\n\n- speeds");
    expect(first).toContain("✗ **The cage takes up the slack of every gear** · `drivetrain/cage-capacity`");
    expect(first).toContain("Capacity needed 42 t");
    expect(first).toMatch(
      /`drivetrain\.rear-derailleur\.total-capacity`: 26 t \(Corrie short 12, \[parts\.ferrule:\d+\]/,
    );
    expect(first).toMatch(/`drivetrain\.cassette\.cogs`: 10-.*-52 t \(Corrie wide 10-52, \[parts\.ferrule:5\]/);
    expect(first).toContain("  - Cogs: 52 t − 10 t = 42 t");
    expect(first).toContain("> **Caution:** A chain cut short");
  });

  test("what is open is one question, and what holds is counted and named", () => {
    const text = said(failing("rear-derailleur: corrie.long<|>-12"));
    expect(text).toMatch(/\*\*Checks that read this slot\*\*: [1-9]\d* hold, 0 fail, [1-9]\d* cannot be checked/);
    expect(text).toContain("✓ `drivetrain/cage-capacity` Capacity needed 42 t");
    expect(text).toMatch(/\? Not stated, so that it cannot be checked: .*which frame is fitted/);
  });

  test("the numbers worked out from it are shown with their working", () => {
    const text = said(failing("rear-derailleur: none\n    ca<|>ssette: corrie.wide-10-52"));
    expect(text).toContain("**Worked out from it**");
    expect(text).toContain("`drivetrain.capacity-needed` = 42 t");
    expect(text).toMatch(/ {2}- `drivetrain\.crankset\.rings`: 32 t \(Corrie arm 32, \[parts\.ferrule:\d+\]/);
  });

  test("an empty slot says what goes there and what leaving it out means", () => {
    expect(said(build("  drivetrain {\n    ha<|>nger:\n  }"))).toContain("a hanger");
    expect(said(build("  drivetrain {\n    ch<|>ain: none\n  }"))).toContain("none, as stated");
  });

  test("a waiver's code says what the check asks, why, and what came of it here", () => {
    const text = said(build('  waive [|drivetrain/cage<|>-capacity|] "for now" until 2027-01-01'));
    expect(text).toContain("The cage takes up the slack of every gear");
    expect(text).toContain("total capacity");
    expect(text).toContain("In this build it cannot be checked for want of facts.");
  });
});

describe("what people wrote", () => {
  test("is never taken for marks, links or tags", () => {
    const source = marked({
      "parts.ferrule": `/// See [here](command:evil) and <b>this</b> *now*\npart cassette x "a\\_b [c](d) <i>" { }\n`,
      "b.ferrule": `build y "Y" {\n  drivetrain { cassette: x<|> }\n}\n`,
    });
    const text = said(source);
    expect(text).not.toMatch(/\[here\]\(command/);
    expect(text).not.toMatch(/<b>|<i>/);
    // Without marks it reads as it was written.
    const read = plainHelp(text).value;
    expect(read).toContain("See [here](command:evil) and <b>this</b> *now*");
  });

  test("the range is that of the word, whatever is around it", () => {
    const source = build("  drivetrain { cassette: corrie.wide<|>-10-52; chain: none }");
    const answer = hover(source.engine, source.uri, source.position, richClient);
    expect(answer?.range && textAt(source.engine, source.uri, answer.range)).toBe("corrie.wide-10-52");
  });
});
