import { describe, expect, it } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { prelude } from "../../server/standards/index.ts";

/** The findings of as many parts of one name, by part. */
function ofOneName(count: number): readonly (readonly string[])[] {
  const uri = "file:///a.ferrule";
  const engine = new Engine({ today: "2026-11-25", prelude });
  const text = Array.from({ length: count }, (_, index) => `part chainring a.one { teeth: ${20 + (index % 30)} t }\n`);
  engine.update([{ uri, text: text.join("") }]);
  return (engine.file(uri)?.declarations ?? []).map((declaration) =>
    engine
      .findingsOf(declaration)
      .filter(({ code }) => code === "model/duplicate-name")
      .flatMap(({ message, related, place }) => {
        const at = place.declaration;
        expect(related.every((one) => one.place.declaration !== at)).toBe(true);
        return [message, ...related.map((one) => one.message)];
      }),
  );
}

describe("a name that several declarations have", () => {
  it("is an error at each, which points at the others", () => {
    const said = "a.one is declared 3 times; names of parts must be unique in a workshop.";
    expect(ofOneName(1)).toEqual([[]]);
    expect(ofOneName(3)).toEqual([0, 1, 2].map(() => [said, "also declared here", "also declared here"]));
  });

  it("is not pointed at from everywhere to everywhere when there are thousands", () => {
    const found = ofOneName(2000);
    expect(found).toHaveLength(2000);
    for (const [message, ...others] of found) {
      expect(message).toBe("a.one is declared 2000 times; names of parts must be unique in a workshop.");
      expect(others).toEqual([
        ...Array.from({ length: 15 }, () => "also declared here"),
        "also declared here, and 1983 times more",
      ]);
    }
  });
});
