import { describe, expect, test } from "vitest";
import { format } from "../../grammar/format.ts";
import { Engine } from "../../server/engine/engine.ts";
import { prelude } from "../../server/standards/index.ts";
import { generateWorkshop } from "./generate-workshop.ts";

describe("generated workshops", () => {
  const size = { parts: 120, builds: 20, buildsPerFile: 4, partsPerFile: 30 };
  const files = generateWorkshop(size);

  test("are the same every time, and have the size asked for", () => {
    expect(generateWorkshop(size)).toEqual(files);
    expect(generateWorkshop({ ...size, seed: 1 })).not.toEqual(files);
    const all = [...files.values()].join("");
    const parts = all.match(/^part /gm)?.length ?? 0;
    expect(parts).toBeGreaterThan(100);
    expect(parts).toBeLessThan(140);
    expect(all.match(/^build /gm)).toHaveLength(20);
    expect([...files.keys()].filter((path) => path.startsWith("builds/"))).toHaveLength(5);
  });

  test("hold what a workshop would write: everything fits, all in canonical form", () => {
    const engine = new Engine({ today: "2026-11-25", prelude });
    engine.update([...files].map(([uri, text]) => ({ uri, text })));
    const all = [...files.keys()].flatMap((uri) => [...engine.findings(uri), ...engine.fileProblems(uri)]);
    // Facts that only some check asks for may be missing, as they are in any workshop.
    const found = all.filter(({ severity }) => severity !== "information");
    expect(found.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
    for (const build of engine.workshop.declared("build")) {
      expect(engine.report(build)?.counts.holds).toBeGreaterThan(25);
    }
    for (const text of files.values()) expect(format(text)).toEqual({ text });
  });
});
