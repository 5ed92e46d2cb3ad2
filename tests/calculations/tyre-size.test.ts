import { describe, expect, it } from "vitest";
import { beadSeatDiameter, tyreSize } from "../../server/calculations/shared/tyre-size.ts";
import { Engine } from "../../server/engine/engine.ts";
import type { ResolvedCode } from "../../server/model/standard.ts";
import { readStandard } from "../../server/model/standard.ts";
import { prelude } from "../../server/standards/index.ts";

/** A bead seat as a workshop declares it. */
function declared(code: string, dimensions: string): ResolvedCode {
  const engine = new Engine({ today: "2026-11-26", prelude });
  engine.update([
    { uri: "memory:///a.ferrule", text: `standard bead-seat ${code} { ${dimensions}; source: "this test" }\n` },
  ]);
  const standard = engine.workshop.lookup(`standard bead-seat ${code}`);
  if (!standard) throw new Error(`no bead seat is named ${code}`);
  return { family: "bead-seat", code, standard: readStandard(standard) };
}

describe("the diameter of a bead seat", () => {
  it("is what its standard states, whatever it is called", () => {
    expect(beadSeatDiameter(declared("fell-seat", "diameter: 590 mm"))).toBe(590);
    expect(beadSeatDiameter(declared("591", "diameter: 590.5 mm"))).toBe(590.5);
  });
  it("is what its code says where nothing states it, and nothing where that is a name", () => {
    expect(beadSeatDiameter({ family: "bead-seat", code: "622" })).toBe(622);
    expect(beadSeatDiameter({ family: "bead-seat", code: "fell-seat" })).toBeUndefined();
    expect(beadSeatDiameter({ family: "bead-seat", code: "0" })).toBeUndefined();
  });
});

describe("the size of a tyre", () => {
  it.each([
    ["61-622", { width: 61, beadSeat: 622 }],
    ["44-fell-seat", { width: 44 }],
    ["0-622", undefined],
    ["large", undefined],
  ])("%s", (code, size) => {
    expect(tyreSize({ family: "tyre-designation", code })).toEqual(size);
  });
});
