import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { checkByCode, checks } from "../../server/checks/table.ts";
import { comparisonByCode, comparisons } from "../../server/records/table.ts";
import { findingCodes } from "../../server/reports/codes/index.ts";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return sources(path);
    return path.endsWith(".ts") && !path.startsWith("server/reports/codes/") ? [path] : [];
  });
}

/** Codes as the sources write them: whole, or without what comes before the slash where a helper puts it in front. */
function codesInSources(): Set<string> {
  const codes = new Set<string>();
  const add = (text: string, pattern: RegExp, prefix: string): void => {
    for (const [, code] of text.matchAll(pattern)) codes.add(`${prefix}${code}`);
  };
  for (const path of ["grammar", "server"].flatMap(sources)) {
    const text = readFileSync(join(root, path), "utf8");
    add(text, /"((?:language|value|model|build|expression|record)\/[a-z0-9-]+)"/g, "");
    if (path.startsWith("grammar/")) add(text, /\breport\(\s*(?:[\w.]+,\s*)?"([a-z0-9-]+)"/g, "language/");
    if (path.startsWith("server/values/")) add(text, /\b(?:error|warning)\(\s*"([a-z0-9-]+)"/g, "value/");
  }
  // Written by the helpers themselves.
  for (const severity of ["value/error", "value/warning"]) codes.delete(severity);
  return codes;
}

test("every code a finding can have is explained", () => {
  const codes = codesInSources();
  expect(codes.size).toBeGreaterThan(100);
  expect([...codes].filter((code) => !findingCodes.has(code) && !checkByCode(code) && !comparisonByCode(code))).toEqual(
    [],
  );
});

test("nothing is explained that no finding can have, and nothing twice", () => {
  const codes = codesInSources();
  expect([...findingCodes.keys()].filter((code) => !codes.has(code))).toEqual([]);
  expect([...checks, ...comparisons].filter(({ code }) => findingCodes.has(code)).map(({ code }) => code)).toEqual([]);
});

test("an explanation is a sentence", () => {
  for (const [code, text] of findingCodes) expect(text, code).toMatch(/^[A-Z].*\.$/);
});
