import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, part } from "./compose.ts";

const code = "drivetrain/family-dimensions";

const running = (kind: string, facts: string, cog = "", ring = ""): string =>
  compose({
    "drivetrain.chain": part(kind, facts),
    ...(cog === "" ? {} : { "drivetrain.cassette": part("sprocket", `drive-family: ${cog}`) }),
    ...(ring === "" ? {} : { "drivetrain.chainring": part("belt-ring", `drive-family: ${ring}`) }),
  });

describe(code, () => {
  it.each([
    // 2.2 mm between the plates by the family of nine speeds; 0.2 mm either way.
    ["inner width", "chain", "drive-family: 9-speed; inner-width: 2.4 mm", "holds"],
    ["inner width", "chain", "drive-family: 9-speed; inner-width: 2.41 mm", "fails"],
    ["inner width", "chain", "drive-family: 9-speed; inner-width: 1.99 mm", "fails"],
    ["inner width", "chain", "drive-family: 3/32-inch; inner-width: 3.3 mm", "fails"],
    ["inner width", "chain", "drive-family: 1/8-inch; inner-width: 3.3 mm", "holds"],
    // 6.6 mm over the pins; 0.3 mm either way.
    ["outer width", "chain", "drive-family: 9-speed; outer-width: 6.9 mm", "holds"],
    ["outer width", "chain", "drive-family: 9-speed; outer-width: 6.91 mm", "fails"],
    ["outer width", "chain", "drive-family: 9-speed; outer-width: 5.9 mm", "fails"],
    // That family states none.
    ["outer width", "chain", "drive-family: 1/8-inch; outer-width: 8.6 mm", "notApplicable"],
    ["pitch", "belt", "drive-family: belt-11-centred; pitch: 11 mm", "holds"],
    ["pitch", "belt", "drive-family: belt-11-centred; pitch: 11.05 mm", "holds"],
    ["pitch", "belt", "drive-family: belt-11-centred; pitch: 11.1 mm", "fails"],
    ["pitch", "belt", "drive-family: belt-8-flanged; pitch: 11 mm", "fails"],
    ["pitch", "belt", "drive-family: belt-8-flanged", "notApplicable"],
    ["pitch", "belt", "drive-family: none; pitch: 11 mm", "notApplicable"],
    ["pitch", "belt", "pitch: 11 mm", "unknown"],
    ["pitch", "chain", "drive-family: 9-speed", "notApplicable"],
    ["inner width", "belt", "drive-family: belt-8-flanged; pitch: 8 mm", "notApplicable"],
  ])("%s of a %s of %s: %s", (instance, kind, facts, outcome) => {
    expect(checkText(running(kind, facts)).instance(code, instance)).toBe(outcome);
  });

  it("is grave for a pitch, and a warning for a width", () => {
    expect(checkText(running("belt", "drive-family: belt-11-centred; pitch: 8 mm")).of(code)[0]?.severity).toBe(
      "error",
    );
    expect(checkText(running("chain", "drive-family: 9-speed; inner-width: 2.6 mm")).of(code)[0]?.severity).toBe(
      "warning",
    );
  });

  it("holds a belt of no stated family against sprocket and ring", () => {
    const alone = "pitch: 8 mm";
    expect(checkText(running("belt", alone, "belt-8-flanged")).instance(code, "pitch")).toBe("holds");
    expect(checkText(running("belt", alone, "", "belt-8-flanged")).instance(code, "pitch")).toBe("holds");
    const [finding] = checkText(running("belt", alone, "belt-11-centred")).of(code);
    expect(finding?.message).toMatch(
      /a pitch of 8 mm, but cassette, which it is to run on, is of the family belt-11-c.* has 11 mm.*Fit one of 11 mm/,
    );
    expect(checkText(running("belt", alone, "", "belt-11-centred")).instance(code, "pitch")).toBe("fails");
    // Its own family comes first; another one on the cogs is found as such.
    const other = checkText(running("belt", "drive-family: belt-8-flanged; pitch: 8 mm", "belt-11-centred"));
    expect(other.instance(code, "pitch")).toBe("holds");
    expect(other.outcome("drivetrain/drive-family")).toBe("fails");
  });

  it("asks for a pitch that the family does not state", () => {
    const text = `standard drive-family own-belt "Own belt" { drive: belt; source: "this test" }
${running("belt", "drive-family: own-belt; pitch: 9.5 mm")}`;
    expect(checkText(text).missing(code)).toEqual(["drive-family.own-belt.pitch"]);
  });

  it("names both figures and mends the part", () => {
    const text = running("chain", "drive-family: 12-speed; inner-width: 2.38 mm; outer-width: 6.6 mm");
    const findings = checkText(text).of(code);
    expect(findings.map(({ message }) => message)).toEqual([
      "chain states an outer width of 6.6 mm, but its family 12-speed (Derailleur chain, 12 speeds) has 5.25 mm: a chain of another width fits other cogs and rings. Correct the outer width or the family of the part, or fit one of 5.25 mm.",
    ]);
    const [mend] = repaired(text, code);
    expect(mend?.text).toContain("outer-width: 5.25 mm");
    expect(checkText(mend?.text ?? "").instance(code, "outer width")).toBe("holds");
  });
});
