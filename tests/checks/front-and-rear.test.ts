import { describe, expect, it } from "vitest";
import { rankCandidates } from "../../server/engine/ranking.ts";
import { checkText, repaired } from "./check-text.ts";

/** Hubs, wheels bought whole and thru axles at the end that they are made for. */

const code = "frame/front-and-rear";

const ends = [
  ["front", "rear"],
  ["rear", "front"],
] as const;

const parts = `
part fork t.fork "Fork" { axle: 15x110 }
part frame t.frame "Frame" { rear-axle: 12x148 }
part hub t.front "Front hub" { wheel: front; axle: 15x110 }
part hub t.rear "Rear hub" { wheel: rear; axle: 12x148 }
part hub t.front-bare "Front hub, bare" { wheel: front }
part hub t.rear-bare "Rear hub, bare" { wheel: rear }
part hub t.either "Hub for either" { wheel: none }
part hub t.unsaid "Hub" { spoke-holes: 32 }
part built-wheel t.front-wheel "Front wheel" { wheel: front }
part built-wheel t.rear-wheel "Rear wheel" { wheel: rear }
part rim t.rim "Rim" { bead-seat: 622 }
part thru-axle t.front-pin "Front pin" { wheel: front; axle: 15x110 }
part thru-axle t.rear-pin "Rear pin" { wheel: rear; axle: 12x148 }
part thru-axle t.front-bare-pin "Front pin, bare" { wheel: front }
part thru-axle t.rear-bare-pin "Rear pin, bare" { wheel: rear }
part thru-axle t.unsaid-pin "Pin" { axle: 12x148 }
part quick-release t.front-skewer "Front skewer" { wheel: front }
part quick-release t.rear-skewer "Rear skewer" { wheel: rear }
part axle-nuts t.nuts "Nuts" { thread: "M10 x 1" }
`;

const text = (end: string, wheel: string, rest = ""): string =>
  `${parts}\nbuild example "Example" {\n  ${rest}\n  ${end}-wheel { ${wheel} }\n}\n`;

describe.each(ends)("at the %s wheel", (end, other) => {
  it.each([
    [`hub: t.${end}`, "holds"],
    [`hub: t.${end}-bare`, "holds"],
    [`hub: t.${other}`, "fails"],
    [`hub: t.${other}-bare`, "fails"],
    ["hub: t.either", "notApplicable"],
    ["hub: t.unsaid", "unknown"],
    ["hub: none", "notApplicable"],
    ["tyre: none", "unknown"],
    [`hub: t.${end}-wheel; rim: t.${end}-wheel`, "holds"],
    [`hub: t.${other}-wheel; rim: t.${other}-wheel`, "fails"],
    // One that was named in one place only is a wheel bought whole all the same.
    [`rim: t.${other}-wheel`, "fails"],
    [`hub: none; rim: t.${other}-wheel`, "fails"],
    [`rim: t.${end}-wheel`, "holds"],
    ["hub: none; rim: t.rim", "notApplicable"],
    // Two that differ are found as such; the hub's answer is taken.
    [`hub: t.${end}; rim: t.${other}-wheel`, "holds"],
    [`hub: t.${other}; rim: t.${end}-wheel`, "fails"],
  ])("the hub of { %s }: %s", (wheel, outcome) => {
    expect(checkText(text(end, wheel)).instance(code, `${end} hub`)).toBe(outcome);
  });

  it.each([
    [`axle: t.${end}-pin`, "holds"],
    [`axle: t.${other}-bare-pin`, "fails"],
    // Size and thread decide about one that is for neither wheel alone.
    ["axle: t.unsaid-pin", "notApplicable"],
    [`axle: t.${end}-skewer`, "notApplicable"],
    [`axle: t.${other}-skewer`, "notApplicable"],
    ["axle: t.nuts", "notApplicable"],
    ["axle: none", "notApplicable"],
    ["tyre: none", "unknown"],
  ])("the thru axle of { %s }: %s", (wheel, outcome) => {
    expect(checkText(text(end, wheel)).instance(code, `${end} thru axle`)).toBe(outcome);
  });

  it("names the fact that is missing", () => {
    const { row } = checkText(text(end, "hub: t.unsaid"));
    const asked = row(code).instances.find(({ instance }) => instance === `${end} hub`)?.verdict;
    expect(asked).toMatchObject({ missing: [{ path: `${end}-wheel.hub.wheel` }] });
  });

  it("says once of a wheel bought whole what is wrong with it", () => {
    const found = checkText(text(end, `hub: t.${other}-wheel; rim: t.${other}-wheel`)).of(code);
    expect(found).toMatchObject([
      {
        path: `${end}-wheel.hub`,
        message: `${other === "front" ? "Front" : "Rear"} wheel is a ${other} wheel, but the build fits it at the ${end}: fit a ${end} wheel.`,
        caution: expect.stringMatching(/^A wheel whose hub/),
      },
    ]);
  });

  it("says what to fit in place of hub and thru axle, each by itself", () => {
    const found = checkText(text(end, `hub: t.${other}-bare; axle: t.${other}-bare-pin`)).of(code);
    expect(found.map(({ path, message, caution }) => [path, message.replace(/^.*, bare /, ""), caution])).toEqual([
      [
        `${end}-wheel.hub`,
        `is made for the ${other} wheel, but the build fits it at the ${end}: fit a hub for the ${end} wheel.`,
        expect.stringMatching(/^A wheel whose hub/),
      ],
      [
        `${end}-wheel.axle`,
        `is made for the ${other} wheel, but the build fits it at the ${end}: fit a thru axle for the ${end} wheel.`,
        expect.stringMatching(/^A wheel whose axle/),
      ],
    ]);
  });

  it("leaves to the axle what is found by its size", () => {
    const holders = "fork: t.fork; frame: t.frame";
    const hub = checkText(text(end, `hub: t.${other}; axle: t.${end}-pin`, holders));
    expect(hub.instance(code, `${end} hub`)).toBe("notApplicable");
    expect(hub.instance("wheel/axle", end)).toBe("fails");
    expect(hub.of(code)).toEqual([]);
    const pin = checkText(text(end, `hub: t.${end}; axle: t.${other}-pin`, holders));
    expect(pin.instance(code, `${end} thru axle`)).toBe("notApplicable");
    expect(pin.instance("wheel/thru-axle", end)).toBe("fails");
    expect(pin.of(code)).toEqual([]);
  });

  it("finds a hub whose end caps make it as wide as its place", () => {
    const size = end === "front" ? "15x110" : "12x148";
    const { of, instance } = checkText(
      `part hub t.capped "Capped" { wheel: ${other}; axle-options: ${size} }\n${text(
        end,
        `hub: t.capped { axle-fitted: ${size} }`,
        "fork: t.fork; frame: t.frame",
      )}`,
    );
    expect(instance("wheel/axle", end)).toBe("holds");
    expect(of(code).map(({ path }) => path)).toEqual([`${end}-wheel.hub`]);
  });
});

describe("parts that are offered", () => {
  const library = `
part fork a.fork "Fork" { axle: 15x110 }
part hub a.front "Front" { wheel: front; axle: 15x110 }
part hub a.rear-alike "Rear, as wide" { wheel: rear; axle: 15x110 }
part hub a.narrow "Front, narrow" { wheel: front; axle: 15x100 }
part hub a.rear-bare "Rear, bare" { wheel: rear }
part rim a.rim "Rim" { bead-seat: 622 }
part built-wheel a.wheel "Front wheel" { wheel: front; axle: 15x110 }
part built-wheel a.rear-wheel "Rear wheel" { wheel: rear; axle: 15x110 }
`;
  const bike = (wheel: string): string => `${library}
build example "Bike" {
  fork: a.fork
  front-wheel { ${wheel} }
}
`;
  const titles = (wheel: string, found: string): readonly string[] =>
    repaired(bike(wheel), found).map(({ title }) => title);

  it("for a hub too narrow are no rear hubs", () => {
    expect(titles("hub: a.narrow", "wheel/axle")).toContain("Fit Front (a.front) as front-wheel.hub");
    expect(titles("hub: a.narrow", "wheel/axle").filter((title) => title.includes("a.rear"))).toEqual([]);
  });

  it("for a rear hub in front are front ones that fit the fork", () => {
    const offered = repaired(bike("hub: a.rear-alike; rim: a.rim"), code);
    expect(offered.map(({ title }) => title)).toEqual(["Fit Front (a.front) as front-wheel.hub"]);
    const mended = checkText(offered[0]?.text ?? "");
    expect(mended.instance(code, "front hub")).toBe("holds");
    expect(mended.instance("wheel/axle", "front")).toBe("holds");
  });

  it("for a rear wheel in front are front wheels, in both places", () => {
    expect(titles("hub: a.rear-wheel; rim: a.rear-wheel", code)).toEqual([
      "Fit Front wheel (a.wheel) as front-wheel.hub and front-wheel.rim",
    ]);
  });

  it("are ranked with what is wrong with a rear hub in front", () => {
    const { engine, report } = checkText(bike("hub: a.front"));
    const failures = new Map(
      rankCandidates(engine, report.assembly, "front-wheel.hub").map(({ part, failures }) => [
        part.declaration.name,
        failures.map((failure) => failure.code),
      ]),
    );
    expect(failures.get("a.front")).toEqual([]);
    expect(failures.get("a.rear-alike")).toEqual([code]);
    expect(failures.get("a.rear-bare")).toEqual([code]);
    expect(failures.get("a.narrow")).toEqual(["wheel/axle"]);
  });
});
