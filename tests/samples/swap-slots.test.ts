import { expect, test } from "vitest";
import { failing, openSamples, reportOf, sampleFiles } from "./workshop.ts";

test("a check offers parts only for slots that it reads", () => {
  const engine = openSamples();
  const idle = new Set<string>();
  for (const { path } of sampleFiles) {
    for (const declaration of engine.file(path)?.declarations ?? []) {
      if (declaration.keyword !== "build") continue;
      for (const { code, repairs } of failing(reportOf(engine, declaration.name))) {
        for (const repair of repairs) {
          if (repair.kind !== "swap-part" || !engine.checks.byCode(code)) continue;
          if (!engine.checks.reading(repair.slot).some(({ check }) => check.code === code)) {
            idle.add(`${code} offers parts for ${repair.slot}`);
          }
        }
      }
    }
  }
  expect([...idle]).toEqual([]);
});
