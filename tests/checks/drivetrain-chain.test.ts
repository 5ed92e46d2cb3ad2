import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

describe("drivetrain/chain-length", () => {
  const code = "drivetrain/chain-length";
  const bike = (
    links: string,
    {
      frame = "chainstay: 410 mm; rear-travel: none",
      rings = "50-34",
      cogs = "11-20-34",
      derailleur = "set-up: cable; total-capacity: 39 t",
    } = {},
  ): Pieces => ({
    frame: part("frame", frame),
    "drivetrain.crankset": part("crankset", `rings: ${rings} t`),
    "drivetrain.cassette": part("cassette", `cogs: ${cogs} t`),
    "drivetrain.rear-derailleur": part("rear-derailleur", derailleur),
    "drivetrain.chain": part("chain", "speeds: 11; closure: pin", links),
  });
  const text = (pieces: Pieces) => checkText(compose(pieces));

  it("wants 110 links for 50 t with 34 t at 410 mm", () => {
    // Open-belt geometry gives 106.767896; two more and up to an even number is 110, as the workshop's inch rule does.
    expect(text(bike("links: 110")).outcome(code)).toBe("holds");
    expect(text(bike("links: 108")).outcome(code)).toBe("fails");
    expect(text(bike("links: 112")).outcome(code)).toBe("fails");
  });

  it.each([
    // Open-belt geometry, re-derived by script: 112.0063 and 108.0048 round both; a new chain is 0 to 0.15 % longer
    // than nominal (ISO 606 and ISO 9633, from memory).
    ["48-34", "11-34", 450, 2, 114, "112.01", "114.01"],
    ["46-36", "11-36", 425, 4, 112, "108", "112"],
  ])(
    "asks %s with %s at %i mm for no link more than a new chain reaches",
    (rings, cogs, stay, allowance, links, exact, sum) => {
      const at = (cut: number, chainstay = stay) =>
        text(
          bike(`links: ${cut}`, {
            frame: `chainstay: ${chainstay} mm; rear-travel: none`,
            rings,
            cogs,
            derailleur: `set-up: cable; total-capacity: 49 t; chain-allowance-double: ${allowance}`,
          }),
        );
      expect(at(links).outcome(code)).toBe("holds");
      expect(at(links + 2).outcome(code)).toBe("holds");
      expect(at(links + 4).of(code)[0]?.message).toContain(`so ${links} are enough: it is too long by 4`);
      const [short] = at(links - 2).of(code);
      expect(short?.message).toContain(
        `takes ${exact} links round both, and ${allowance} for the derailleur make ${sum}: it is too short by 2. Cut a new one to ${links} links`,
      );
      expect(short?.repairs).toEqual([
        { kind: "set-setting", slot: "drivetrain.chain", setting: "links", value: String(links) },
      ]);
      // 0.05 links are 0.32 mm of chainstay.
      expect(at(links, stay + 0.2).outcome(code)).toBe("holds");
      expect(at(links, stay + 0.4).outcome(code)).toBe("fails");
    },
  );

  it("is an error with a caution when too short, and names both numbers", () => {
    const [finding] = text(bike("links: 108")).of(code);
    expect(finding).toMatchObject({ severity: "error", path: "drivetrain.chain.links" });
    expect(finding?.caution).toMatch(/tears/);
    expect(finding?.message).toMatch(
      /cut to 108 links, but 50 t with 34 t at 410 mm.*106\.77.*108\.77.*too short by 2.*110 links/,
    );
    expect(finding?.repairs).toEqual([
      { kind: "set-setting", slot: "drivetrain.chain", setting: "links", value: "110" },
    ]);
  });

  it("is a warning that names the slack gears when too long", () => {
    const [finding] = text(bike("links: 114")).of(code);
    expect(finding?.severity).toBe("warning");
    // Four links too many are 8 t of slack more: 34 t with 11 t needs 39 + 8 = 47 t of 39 t, 34 t with 20 t 38 t.
    expect(finding?.message).toContain("too long by 4. It hangs slack in 34×11.");
    expect(finding?.caution).toBeUndefined();
  });

  it("only mentions a pair of links too many that the cage still takes up", () => {
    const spare = text(bike("links: 112", { derailleur: "set-up: cable; total-capacity: 43 t" }));
    expect(spare.of(code)[0]).toMatchObject({ severity: "information" });
    const tight = text(bike("links: 112", { derailleur: "set-up: cable; total-capacity: 42 t" }));
    expect(tight.of(code)[0]).toMatchObject({ severity: "warning" });
  });

  it("says that slack cannot be told without the capacity", () => {
    const [finding] = text(bike("links: 112", { derailleur: "set-up: cable" })).of(code);
    expect(finding?.message).toContain("cannot be said");
    expect(finding?.severity).toBe("warning");
  });

  it("leaves an odd count that is long enough to parity", () => {
    // 106.77 + 2 = 108.77: 109 is long enough, 107 is not.
    expect(text(bike("links: 109")).outcome(code)).toBe("holds");
    expect(text(bike("links: 107")).outcome(code)).toBe("fails");
    expect(text(bike("links: 111")).outcome(code)).toBe("holds");
    expect(text(bike("links: 111")).outcome("drivetrain/chain-parity")).toBe("fails");
    expect(text(bike("links: 113")).outcome(code)).toBe("fails");
  });

  it("takes the derailleur maker's allowance by the kind of bike", () => {
    const allowances = "chain-allowance-rigid: 4; chain-allowance-sprung: 3; chain-allowance-double: 2";
    const derailleur = `set-up: electronic; total-capacity: 60 t; ${allowances}`;
    const single = { rings: "32", cogs: "10-20-51", derailleur };
    // 32 t with 51 t at 438 mm: 110.741689 by open-belt geometry. Rigid 114.74 makes 116, sprung 113.74 makes 114.
    const rigid = { ...single, frame: "chainstay: 438 mm; rear-travel: none" };
    expect(text(bike("links: 116", rigid)).outcome(code)).toBe("holds");
    expect(text(bike("links: 114", rigid)).outcome(code)).toBe("fails");
    const sprung = { ...single, frame: "chainstay: 438 mm; rear-travel: 130 mm; rear-centre-growth-full: 0 mm" };
    expect(text(bike("links: 114", sprung)).outcome(code)).toBe("holds");
    expect(text(bike("links: 112", sprung)).outcome(code)).toBe("fails");
    // Two rings at 410 mm: 108.77 makes 110.
    expect(text(bike("links: 110", { derailleur })).outcome(code)).toBe("holds");
  });

  it("passes two and four links where no maker says which, and no less and no more", () => {
    const single = { rings: "32", cogs: "10-20-51", frame: "chainstay: 438 mm; rear-travel: none" };
    // 110.74 with two make 112.74, with four 114.74, up to an even 116.
    for (const setUp of ["cable", "electronic"]) {
      const derailleur = `set-up: ${setUp}; total-capacity: 41 t`;
      const of = (links: number) => text(bike(`links: ${links}`, { ...single, derailleur })).of(code);
      expect(of(112)[0]?.severity, setUp).toBe("error");
      expect(of(114), setUp).toEqual([]);
      expect(of(116), setUp).toEqual([]);
      expect(of(118)[0]?.severity, setUp).toBe("warning");
    }
    const told = { ...single, derailleur: "set-up: cable; total-capacity: 41 t; chain-allowance-rigid: 2" };
    expect(text(bike("links: 116", told)).outcome(code)).toBe("fails");
  });

  it("sizes a sprung rear end where it is longest, and needs the growth for it", () => {
    const base = { rings: "32", cogs: "10-20-51", derailleur: "set-up: cable; chain-allowance-sprung: 2" };
    const frame = (growth: string) => ({ ...base, frame: `chainstay: 438 mm; rear-travel: 130 mm${growth}` });
    // Every 6.35 mm of growth is about one more pitch: 112.74 at 438 mm, 114.63 at 450 mm.
    expect(text(bike("links: 114", frame("; rear-centre-growth-full: 0 mm"))).outcome(code)).toBe("holds");
    expect(text(bike("links: 114", frame("; rear-centre-growth-full: 12 mm"))).outcome(code)).toBe("fails");
    expect(text(bike("links: 116", frame("; rear-centre-growth-full: 12 mm"))).outcome(code)).toBe("holds");
    const open = text(bike("links: 114", frame("")));
    expect(open.outcome(code)).toBe("unknown");
    expect(open.missing(code)).toContain("frame.rear-centre-growth-full");
  });

  it("takes three rings by the largest", () => {
    expect(text(bike("links: 110", { rings: "50-39-30" })).outcome(code)).toBe("holds");
    expect(text(bike("links: 108", { rings: "50-39-30" })).outcome(code)).toBe("fails");
  });

  it("takes the rearmost of dropouts that slide, in inches too", () => {
    expect(text(bike("links: 110", { frame: "chainstay: 395 to 410 mm; rear-travel: none" })).outcome(code)).toBe(
      "holds",
    );
    // 16.142 in = 410.0068 mm.
    expect(text(bike("links: 110", { frame: "chainstay: 16.142 in; rear-travel: none" })).outcome(code)).toBe("holds");
    expect(text(bike("links: 110", { frame: "chainstay: 16.5 in; rear-travel: none" })).outcome(code)).toBe("fails");
  });

  it("names what is missing", () => {
    const noLinks = text(bike(""));
    expect(noLinks.outcome(code)).toBe("unknown");
    expect(noLinks.missing(code)).toEqual(["drivetrain.chain.links"]);
    expect(text(bike("links: 110", { frame: "rear-travel: none" })).missing(code)).toEqual(["frame.chainstay"]);
    expect(text(bike("links: 110", { frame: "chainstay: 410 mm" })).missing(code)).toEqual(["frame.rear-travel"]);
  });

  it("is not asked of a belt, of a chain over an idler, or without a derailleur", () => {
    const belt = { ...bike(""), "drivetrain.chain": part("belt", "teeth: 118 t") };
    expect(text(belt).outcome(code)).toBe("notApplicable");
    const idler = bike("links: 90", { frame: "chainstay: 410 mm; rear-travel: none; idler-teeth: 16 t" });
    expect(text(idler).outcome(code)).toBe("notApplicable");
    expect(text({ ...bike("links: 90"), "drivetrain.rear-derailleur": "none" }).outcome(code)).toBe("notApplicable");
  });

  it("is mended by the number it offers", () => {
    for (const links of ["links: 106", "links: 116"]) {
      const [mend] = repaired(compose(bike(links)), code);
      expect(mend?.text).toContain("links: 110");
      expect(checkText(mend?.text ?? "").outcome(code)).toBe("holds");
    }
  });
});

describe("drivetrain/chain-supplied", () => {
  const code = "drivetrain/chain-supplied";
  const text = (links: string, chain: string, link: Pieces["drivetrain.closure-link"]) =>
    checkText(compose({ "drivetrain.chain": part("chain", chain, links), "drivetrain.closure-link": link }));
  const closure = part("closure-link", "reusable: yes");

  it("cuts one link fewer from the strip with a closure link, and as many with a pin", () => {
    const chain = "links-supplied: 114; closure: closure-link";
    expect(text("links: 114", chain, closure).outcome(code)).toBe("holds");
    expect(text("links: 115", chain, closure).outcome(code)).toBe("holds");
    expect(text("links: 116", chain, closure).outcome(code)).toBe("fails");
    const pinned = "links-supplied: 114; closure: pin";
    expect(text("links: 114", pinned, undefined).outcome(code)).toBe("holds");
    expect(text("links: 115", pinned, undefined).outcome(code)).toBe("fails");
  });

  it("counts the link of a spring clip as one too", () => {
    expect(text("links: 115", "links-supplied: 114; closure: spring-clip", undefined).outcome(code)).toBe("holds");
    expect(text("links: 116", "links-supplied: 114; closure: spring-clip", undefined).outcome(code)).toBe("fails");
  });

  it("needs to know how the chain closes only where that decides", () => {
    const open = "links-supplied: 114";
    expect(text("links: 114", open, undefined).outcome(code)).toBe("holds");
    expect(text("links: 115", open, undefined).outcome(code)).toBe("unknown");
    expect(text("links: 115", open, undefined).missing(code)).toEqual(["drivetrain.closure-link"]);
    expect(text("links: 116", open, undefined).outcome(code)).toBe("fails");
  });

  it("takes the worked-out length where none is stated", () => {
    const pieces = (supplied: number): Pieces => ({
      frame: part("frame", "chainstay: 410 mm; rear-travel: none"),
      "drivetrain.crankset": part("crankset", "rings: 50-34 t"),
      "drivetrain.cassette": part("cassette", "cogs: 11-34 t"),
      "drivetrain.rear-derailleur": part("rear-derailleur", "set-up: cable"),
      "drivetrain.chain": part("chain", `links-supplied: ${supplied}; closure: pin`),
    });
    expect(checkText(compose(pieces(110))).outcome(code)).toBe("holds");
    expect(checkText(compose(pieces(109))).outcome(code)).toBe("fails");
  });

  it("offers the worked-out length where more was to be cut than is needed", () => {
    const pieces = (links: number): Pieces => ({
      frame: part("frame", "chainstay: 410 mm; rear-travel: none"),
      "drivetrain.crankset": part("crankset", "rings: 50-34 t"),
      "drivetrain.cassette": part("cassette", "cogs: 11-34 t"),
      "drivetrain.rear-derailleur": part("rear-derailleur", "set-up: cable"),
      "drivetrain.chain": part("chain", "links-supplied: 108; closure: pin", `links: ${links}`),
    });
    const swap = { kind: "swap-part", slot: "drivetrain.chain" };
    const cut = { kind: "set-setting", slot: "drivetrain.chain", setting: "links", value: "110" };
    const [long] = checkText(compose(pieces(114))).of(code);
    expect(long?.repairs).toEqual([swap, cut]);
    expect(long?.related.map(({ message }) => message)).toEqual(["chain: links-supplied 108", "Example: links 114"]);
    expect(checkText(compose(pieces(110))).of(code)[0]?.repairs).toEqual([swap]);
  });

  it("names the length as sold when it is missing", () => {
    expect(text("links: 114", "closure: pin", undefined).missing(code)).toEqual(["drivetrain.chain.links-supplied"]);
  });
});

describe("drivetrain/chain-parity", () => {
  const code = "drivetrain/chain-parity";
  const text = (links: string, chain = "closure: pin", more: Pieces = {}) =>
    checkText(
      compose({
        "drivetrain.chain": part("chain", chain, links),
        "drivetrain.rear-derailleur": "none",
        ...more,
      }),
    );

  it("closes at even counts only", () => {
    expect(text("links: 108").outcome(code)).toBe("holds");
    expect(text("links: 109").outcome(code)).toBe("fails");
    expect(text("links: 109").of(code)[0]?.repairs).toEqual([
      { kind: "set-setting", slot: "drivetrain.chain", setting: "links", value: "110" },
      { kind: "set-setting", slot: "drivetrain.chain", setting: "links", value: "108" },
    ]);
  });

  it("offers the worked-out number where that is the next one down", () => {
    const bike = text("links: 111", "closure: pin", {
      frame: part("frame", "chainstay: 410 mm; rear-travel: none"),
      "drivetrain.crankset": part("crankset", "rings: 50-34 t"),
      "drivetrain.cassette": part("cassette", "cogs: 11-34 t"),
      "drivetrain.rear-derailleur": part("rear-derailleur", "set-up: cable"),
    });
    expect(bike.of(code)[0]?.repairs[0]).toMatchObject({ value: "110" });
  });

  it("closes at any count with cranked links throughout, and at odd ones with one half link", () => {
    expect(text("links: 97", "closure: pin; half-link: yes").outcome(code)).toBe("holds");
    const half: Pieces = { "drivetrain.closure-link": part("closure-link", "half-link: yes") };
    expect(text("links: 97", "closure: closure-link", half).outcome(code)).toBe("holds");
    expect(text("links: 98", "closure: closure-link", half).outcome(code)).toBe("fails");
  });

  it("refuses a half link with a derailleur", () => {
    const pieces: Pieces = {
      "drivetrain.closure-link": part("closure-link", "half-link: yes"),
      "drivetrain.rear-derailleur": part("rear-derailleur", "speeds: 8"),
    };
    const found = text("links: 107", "closure: closure-link", pieces).of(code);
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toContain("without a derailleur");
  });

  it("is unknown without a count, or when nobody said what closes an odd one", () => {
    expect(text("").missing(code)).toEqual(["drivetrain.chain.links"]);
    expect(text("links: 97", "speeds: 1").missing(code)).toEqual(["drivetrain.closure-link"]);
    expect(text("links: 98", "speeds: 1").outcome(code)).toBe("holds");
  });
});

describe("drivetrain/closure-link", () => {
  const code = "drivetrain/closure-link";
  const text = (chain: string, link: Pieces["drivetrain.closure-link"]) =>
    checkText(compose({ "drivetrain.chain": part("chain", chain), "drivetrain.closure-link": link }));
  const link = (facts: string) => part("closure-link", facts);
  const eleven = "speeds: 11; drive-family: 11-speed; closure: closure-link";

  it("wants the chain's family and number of speeds", () => {
    expect(text(eleven, link("speeds: 11; drive-family: 11-speed")).outcome(code)).toBe("holds");
    expect(text(eleven, link("speeds: 10; drive-family: 10-speed")).outcome(code)).toBe("fails");
    expect(text(eleven, link("speeds: 12; drive-family: 12-speed")).outcome(code)).toBe("fails");
    // The same number, another family.
    const twelve = "speeds: 12; drive-family: 12-speed; closure: closure-link";
    expect(text(twelve, link("speeds: 12; drive-family: 12-speed-large-roller")).outcome(code)).toBe("fails");
  });

  it("says too wide or too narrow by the numbers, where families do not tell", () => {
    const wide = text("speeds: 11; closure: closure-link", link("speeds: 10")).of(code)[0];
    expect(wide?.message).toContain("too wide");
    const narrow = text("speeds: 11; closure: closure-link", link("speeds: 12")).of(code)[0];
    expect(narrow?.message).toContain("too narrow");
  });

  it("takes chains for five to eight speeds for one width, and nine for another", () => {
    const outcome = (chain: number, closing: number) =>
      text(`speeds: ${chain}; closure: closure-link`, link(`speeds: ${closing}`)).outcome(code);
    expect(outcome(7, 8)).toBe("unknown");
    expect(outcome(8, 9)).toBe("fails");
    expect(outcome(9, 8)).toBe("fails");
  });

  it("misses a link that the chain needs", () => {
    const found = text(eleven, "none").of(code);
    expect(found).toHaveLength(1);
    expect(found[0]?.repairs).toEqual([{ kind: "insert-part", slot: "drivetrain.closure-link" }]);
    expect(text("speeds: 11; closure: pin", "none").outcome(code)).toBe("notApplicable");
    expect(text("speeds: 1; closure: spring-clip", undefined).outcome(code)).toBe("notApplicable");
    expect(text("speeds: 11", "none").missing(code)).toEqual(["drivetrain.chain.closure"]);
  });

  it("is unknown while the link is not chosen, and names all facts that it lacks", () => {
    expect(text(eleven, undefined).missing(code)).toEqual(["drivetrain.closure-link"]);
    expect(text(eleven, link("reusable: no")).missing(code)).toEqual([
      "drivetrain.closure-link.drive-family",
      "drivetrain.closure-link.speeds",
    ]);
  });
});

describe("drivetrain/closure-link-reuse", () => {
  const code = "drivetrain/closure-link-reuse";
  const text = (facts: string, settings = "") =>
    checkText(compose({ "drivetrain.closure-link": part("closure-link", facts, settings) }));

  it("fails only a once-only link that has been closed before", () => {
    expect(text("reusable: no", "used-before: yes").outcome(code)).toBe("fails");
    expect(text("reusable: no", "used-before: no").outcome(code)).toBe("holds");
    expect(text("reusable: no").outcome(code)).toBe("holds");
    expect(text("reusable: yes", "used-before: yes").outcome(code)).toBe("holds");
  });

  it("is unknown when a used link does not say whether it may be", () => {
    expect(text("speeds: 12", "used-before: yes").missing(code)).toEqual(["drivetrain.closure-link.reusable"]);
  });

  it("carries its caution, and is kept as a warning when waived", () => {
    const composed = compose({ "drivetrain.closure-link": part("closure-link", "reusable: no", "used-before: yes") });
    expect(checkText(composed).of(code)[0]?.caution).toMatch(/parts under load/);
    const waived = composed.replace(
      /\}\n$/,
      '  waive drivetrain/closure-link-reuse "Test ride in the yard only" until 2026-12-31\n}\n',
    );
    const after = checkText(waived);
    expect(after.outcome(code)).toBe("waived");
    expect(after.findings.find((finding) => finding.code === code)).toMatchObject({
      outcome: "waived",
      severity: "warning",
    });
  });
});

describe("drivetrain/chain-width", () => {
  const code = "drivetrain/chain-width";
  const text = (chain: string, cassette: string, more: Pieces = {}) =>
    checkText(
      compose({ "drivetrain.chain": part("chain", chain), "drivetrain.cassette": part("cassette", cassette), ...more }),
    );

  it("is an error with a chain too wide and a warning with one too narrow", () => {
    expect(text("speeds: 10", "speeds: 10").outcome(code)).toBe("holds");
    expect(text("speeds: 9", "speeds: 10").of(code)[0]?.severity).toBe("error");
    expect(text("speeds: 11", "speeds: 10").of(code)[0]?.severity).toBe("warning");
  });

  it("takes chains for five to eight speeds for one width", () => {
    expect(text("speeds: 8", "speeds: 7").outcome(code)).toBe("holds");
    expect(text("speeds: 6", "speeds: 8").outcome(code)).toBe("holds");
    expect(text("speeds: 8", "speeds: 9").outcome(code)).toBe("fails");
    expect(text("speeds: 9", "speeds: 8").outcome(code)).toBe("fails");
  });

  it("leaves a fault of the families to the check of families", () => {
    const both = text("speeds: 9; drive-family: 9-speed", "speeds: 10; drive-family: 10-speed");
    expect(both.outcome(code)).toBe("notApplicable");
    expect(both.outcome("drivetrain/drive-family")).toBe("fails");
  });

  it("leaves a cassette for another number to the check of speeds", () => {
    const derailleur: Pieces = { "drivetrain.rear-derailleur": part("rear-derailleur", "speeds: 12; set-up: cable") };
    const both = text("speeds: 12", "speeds: 11", derailleur);
    expect(both.outcome(code)).toBe("notApplicable");
    expect(both.instance("drivetrain/speeds", "rear-derailleur")).toBe("fails");
  });

  it("is not asked of one cog, nor of a belt", () => {
    expect(text("speeds: 8", "cogs: 18 t").outcome(code)).toBe("notApplicable");
    const belt = compose({
      "drivetrain.chain": part("belt", "teeth: 118 t"),
      "drivetrain.cassette": part("sprocket", "cogs: 24 t"),
    });
    expect(checkText(belt).outcome(code)).toBe("notApplicable");
  });

  it("names both numbers when both are missing", () => {
    const open = text("closure: pin", "freehub: none");
    expect(open.outcome(code)).toBe("unknown");
    expect(open.missing(code)).toContain("drivetrain.chain.speeds");
    expect(open.missing(code)).toContain("drivetrain.cassette.speeds");
  });
});

describe("drivetrain/drive-family", () => {
  const code = "drivetrain/drive-family";
  const bike = (chain: string, cassette: string, ring: string, more: Pieces = {}): Pieces => ({
    "drivetrain.chain": part("chain", `drive-family: ${chain}`),
    "drivetrain.cassette": part("cassette", `drive-family: ${cassette}`),
    "drivetrain.crankset": part("crankset", `rings: 38 t; drive-family: ${ring}`),
    "drivetrain.rear-derailleur": "none",
    ...more,
  });
  const text = (pieces: Pieces, standards = "") => checkText(compose(pieces, standards));
  const plain = "12-speed";
  const large = "12-speed-large-roller";

  it("holds for one family and fails for two with the same number of speeds", () => {
    expect(text(bike(plain, plain, plain)).outcome(code)).toBe("holds");
    expect(text(bike(plain, large, plain)).outcome(code)).toBe("fails");
    expect(text(bike(plain, plain, large)).outcome(code)).toBe("fails");
    expect(text(bike(large, plain, plain)).outcome(code)).toBe("fails");
  });

  it("finds the odd one out, once", () => {
    expect(
      text(bike(large, plain, plain))
        .of(code)
        .map(({ path }) => path),
    ).toEqual(["drivetrain.chain"]);
    expect(
      text(bike(plain, large, plain))
        .of(code)
        .map(({ path }) => path),
    ).toEqual(["drivetrain.cassette"]);
    expect(
      text(bike(plain, plain, large))
        .of(code)
        .map(({ path }) => path),
    ).toEqual(["drivetrain.crankset"]);
    const [finding] = text(bike(large, plain, plain)).of(code);
    expect(finding?.related).toHaveLength(3);
    expect(finding?.repairs[0]).toEqual({ kind: "swap-part", slot: "drivetrain.chain" });
  });

  it("lets a wider single-speed chain run on narrower teeth, and not the reverse", () => {
    // Wikibooks, Chain sizes: a 1/8 in chain runs on 3/32 in teeth; the reverse does not go.
    expect(text(bike("1/8-inch", "3/32-inch", "3/32-inch")).outcome(code)).toBe("holds");
    expect(text(bike("1/8-inch", "3/32-inch", "1/8-inch")).outcome(code)).toBe("holds");
    expect(text(bike("3/32-inch", "1/8-inch", "3/32-inch")).outcome(code)).toBe("fails");
  });

  it("takes the half-inch chains of up to eight speeds for one family, and nine for another", () => {
    expect(text(bike("8-speed", "7-speed", "6-speed")).outcome(code)).toBe("holds");
    expect(text(bike("3/32-inch", "3/32-inch", "8-speed")).outcome(code)).toBe("holds");
    expect(text(bike("9-speed", "8-speed", "9-speed")).outcome(code)).toBe("fails");
  });

  it("goes by the mates that standards name", () => {
    const standards = `
standard drive-family odd { drive: chain; pitch: 12.7 mm; mates: 12-speed }
standard drive-family even { drive: chain; pitch: 12.7 mm }
`;
    expect(text(bike("odd", plain, plain), standards).outcome(code)).toBe("holds");
    expect(text(bike("even", plain, plain), standards).outcome(code)).toBe("fails");
  });

  it("fails on what is known, whatever else is not", () => {
    const open = text({ ...bike(plain, large, plain), "drivetrain.crankset": part("crankset", "rings: 38 t") });
    expect(open.outcome(code)).toBe("fails");
    const unknown = text({ ...bike(plain, plain, plain), "drivetrain.crankset": part("crankset", "rings: 38 t") });
    expect(unknown.outcome(code)).toBe("unknown");
    expect(unknown.missing(code)).toEqual(["drivetrain.crankset.drive-family"]);
  });

  it("compares rings and cogs with each other while the chain is not chosen", () => {
    const { "drivetrain.chain": _, ...rest } = bike("", large, plain);
    expect(text(rest).outcome(code)).toBe("fails");
  });

  it("compares each ring that is turned, by the part that it belongs to", () => {
    const inner = (family: string) =>
      text({
        ...bike(plain, plain, plain),
        "drivetrain.crankset": part("crankset", `rings: 46-30 t; drive-family: ${plain}`),
        "drivetrain.inner-chainring": part("chainring", `teeth: 28 t; drive-family: ${family}`),
      });
    expect(inner(plain).outcome(code)).toBe("holds");
    expect(
      inner(large)
        .of(code)
        .map(({ path }) => path),
    ).toEqual(["drivetrain.inner-chainring"]);
  });

  it("compares pulleys only where their maker limits them", () => {
    const derailleur = (facts: string): Pieces => ({
      "drivetrain.rear-derailleur": part("rear-derailleur", `speeds: 12; ${facts}`),
    });
    expect(text(bike(plain, plain, plain, derailleur(""))).outcome(code)).toBe("holds");
    expect(text(bike(plain, plain, plain, derailleur(`drive-family: ${large}`))).outcome(code)).toBe("fails");
  });

  it("leaves a derailleur for another number of speeds, its pulleys with it, to the check of speeds", () => {
    const found = text({
      ...bike("12-speed", "12-speed", "12-speed"),
      "drivetrain.cassette": part("cassette", "speeds: 12; drive-family: 12-speed"),
      "drivetrain.rear-derailleur": part("rear-derailleur", "speeds: 11; set-up: cable; drive-family: 11-speed"),
    });
    expect(found.outcome(code)).toBe("notApplicable");
    expect(found.instance("drivetrain/speeds", "rear-derailleur")).toBe("fails");
    // A ring of the wrong family is a fault of its own beside that.
    const ring = text({
      ...bike("12-speed", "11-speed", "12-speed-large-roller"),
      "drivetrain.cassette": part("cassette", "speeds: 11; drive-family: 11-speed"),
      "drivetrain.rear-derailleur": part("rear-derailleur", "speeds: 12; set-up: cable"),
    });
    expect(ring.of(code).map(({ path }) => path)).toEqual(["drivetrain.crankset"]);
  });

  it("names what of three differs from each other", () => {
    const found = text(bike("11-speed", "12-speed", "12-speed-large-roller")).of(code);
    expect(found).toHaveLength(1);
    expect(found[0]?.path).toBe("drivetrain.cassette");
    expect(found[0]?.message).toContain("does not go with chain (11-speed) and crankset (12-speed-large-roller)");
    const two = text(bike("11-speed", "12-speed", "11-speed")).of(code);
    expect(two[0]?.message).toContain("does not go with chain (11-speed):");
  });

  it("leaves a cassette for another number of speeds to the check of speeds", () => {
    const found = text({
      ...bike("12-speed", "11-speed", "12-speed"),
      "drivetrain.cassette": part("cassette", "speeds: 11; drive-family: 11-speed"),
      "drivetrain.rear-derailleur": part("rear-derailleur", "speeds: 12; set-up: cable"),
    });
    expect(found.outcome(code)).toBe("notApplicable");
    expect(found.instance("drivetrain/speeds", "rear-derailleur")).toBe("fails");
  });
});
