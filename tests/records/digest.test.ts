import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import type { Engine } from "../../server/engine/engine.ts";
import type { Assembly, Installed } from "../../server/model/assembly.ts";
import type { Statement } from "../../server/model/stated.ts";
import { fnv1a64 } from "../../server/records/hash.ts";
import { isDigest, isSameDigest, specDigest } from "../../server/records/spec-digest.ts";
import { engineOf } from "./record-text.ts";

describe("the hash", () => {
  // Test vectors of the Internet-Draft by Eastlake, Fowler, Noll and Vo, FNV-1a, 64 bits.
  it.each([
    ["", "cbf29ce484222325"],
    ["a", "af63dc4c8601ec8c"],
    ["foobar", "85944171f73967e8"],
  ])("of %j is %s", (text, hash) => {
    expect(fnv1a64(text)).toBe(hash);
  });

  it("is the one that whole numbers of any size give", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 40 }), (text) => {
        let hash = 0xcbf29ce484222325n;
        for (const byte of new TextEncoder().encode(text)) {
          hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
        }
        expect(fnv1a64(text)).toBe(hash.toString(16).padStart(16, "0"));
      }),
      { numRuns: 40 },
    );
  });
});

const parts = `
part rim moor.hoop "Hoop" {
  bead-seat: 622
  categories: mountain, gravel
  greatest-spoke-tension: 1250 N
  own { bin: "A3" }
}
part rim moor.hoop-wide "Hoop, wide" from moor.hoop { inner-width: 30 mm }
part stem moor.stub "Stub" { length: 50 mm; bar-torque: 4 to 6 N·m }
part stem moor.stub-60 "Stub 60" from moor.stub { length: 60 mm }
`;
const build = `
build example "Example" {
  category: mountain
  rider { mass: 78 kg; inseam: 845 mm }
  cockpit.stem: moor.stub { spacers-below: 15 mm }
  rear-wheel.rim: moor.hoop-wide
  front-wheel.spokes: none
}
`;

function digestIn(engine: Engine, name = "example"): string {
  const declaration = engine.workshop.build(name);
  if (!declaration) throw new Error(`no build ${name}`);
  return specDigest(engine.assemble(declaration));
}

function digestOf(...texts: readonly string[]): string {
  return digestIn(engineOf(Object.fromEntries(texts.map((text, index) => [`${index}.ferrule`, text]))));
}

const plain = digestOf(parts, build);

test("it is a word that nothing takes for a number, and that no formatter spells anew", () => {
  expect(plain).toMatch(/^[a-f][0-9a-f]{11}$/);
  expect(isDigest(plain)).toBe(true);
});

test("it is named in full or by six digits at least, in letters of any size", () => {
  expect(isSameDigest(plain, plain)).toBe(true);
  expect(isSameDigest(plain.slice(0, 6).toUpperCase(), plain)).toBe(true);
  expect(isSameDigest(plain.slice(0, 5), plain)).toBe(false);
  expect(isSameDigest("", plain)).toBe(false);
  expect(isSameDigest(plain.slice(1, 8), plain)).toBe(false);
  for (const text of ["3f9a1c", "ABCDEF", "0123456789abcdef"]) expect(isDigest(text)).toBe(true);
  for (const text of ["3f9a1", "3f9a1g", "3f9a1c today", "", "0123456789abcdef0"]) expect(isDigest(text)).toBe(false);
});

describe("it does not depend on", () => {
  it.each([
    ["comments and blank lines", build.replace("category", "// a remark\n\n  category")],
    [
      "how blocks are laid out",
      build.replace("rider { mass: 78 kg; inseam: 845 mm }", "rider.mass: 78 kg\n  rider {\n    inseam: 845 mm\n  }"),
    ],
    [
      "the order of what is stated",
      build
        .replace("mass: 78 kg; inseam: 845 mm", "inseam: 845 mm; mass: 78 kg")
        .replace("  category: mountain\n", "")
        .replace("\n}\n", "\n  category: mountain\n}\n"),
    ],
    ["units", build.replace("15 mm", "1.5 cm").replace("78 kg", "78000 g")],
    ["how a number is written", build.replace("15 mm", "15.0 mm")],
    ["the build's title", build.replace('"Example"', '"Another title"')],
    ["doc comments", `/// A bicycle.${build}`],
    ["waivers", build.replace("\n}\n", '\n  waive build/missing-slot at seat.post "Later" until 2027-01-01\n}\n')],
    ["the shop's own data", build.replace("\n}\n", '\n  own { shelf: "B" }\n}\n')],
  ])("%s", (_what, text) => {
    expect(text).not.toBe(build);
    expect(digestOf(parts, text)).toBe(plain);
  });

  it.each([
    ["a part's title", parts.replace('"Stub"', '"Short stem"')],
    ["a part's own data", parts.replace('"A3"', '"A4"')],
    ["the order of a set of words", parts.replace("mountain, gravel", "gravel, mountain")],
    ["parts that the build does not name", `${parts}part stem moor.long "Long" { length: 110 mm }\n`],
    [
      "where in a chain of bases a fact stands",
      parts.replace("{ inner-width: 30 mm }", "{ inner-width: 30 mm; bead-seat: 622 }"),
    ],
    [
      "the file and the order of declarations",
      parts
        .split("\npart ")
        .reverse()
        .map((one) => (one.trim() === "" ? "" : one.startsWith("part") ? one : `part ${one}`))
        .join("\n"),
    ],
  ])("%s", (_what, text) => {
    expect(text).not.toBe(parts);
    expect(digestOf(build, text)).toBe(plain);
  });

  it("the build's own name, nor on whether its values are its own or inherited", () => {
    const base = build.replace("build example", "build base");
    const derived = `${base}\nbuild example "Example" from base {\n}\n`;
    expect(digestOf(parts, derived)).toBe(plain);
    expect(digestIn(engineOf({ a: parts, b: base }), "base")).toBe(plain);
  });
});

describe("it changes with", () => {
  it.each([
    ["a field of the build", build.replace("78 kg", "79 kg")],
    ["a field that is added", build.replace("mass: 78 kg;", "mass: 78 kg; height: 1800 mm;")],
    ["a field that is taken away", build.replace("mass: 78 kg; ", "")],
    ["a word", build.replace("category: mountain", "category: gravel")],
    ["a setting", build.replace("15 mm", "16 mm")],
    ["another part of equal facts", build.replace("moor.stub ", "moor.stub-60 ")],
    ["an alternate", build.replace("moor.hoop-wide", "moor.hoop-wide or moor.hoop")],
    ["a slot that is stated to be empty", build.replace("  front-wheel.spokes: none\n", "")],
    ["something that cannot be read", build.replace("15 mm", "15 furlongs")],
  ])("%s", (_what, text) => {
    expect(text).not.toBe(build);
    expect(digestOf(parts, text)).not.toBe(plain);
  });

  it.each([
    ["a fact of a part", parts.replace("length: 50 mm", "length: 51 mm")],
    ["a fact of a part's base", parts.replace("1250 N", "1300 N")],
    ["an end of a range", parts.replace("4 to 6 N·m", "4 to 5 N·m")],
    ["a fact that is none", parts.replace("inner-width: 30 mm", "inner-width: none")],
    ["a word of a set", parts.replace("mountain, gravel", "mountain")],
    ["a part's kind", parts.replace("part stem moor.stub ", "part handlebar moor.stub ")],
  ])("%s", (_what, text) => {
    expect(text).not.toBe(parts);
    expect(digestOf(build, text)).not.toBe(plain);
  });
});

describe("on a sample with everything in it", () => {
  const files = readdirSync("samples", { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ferrule"))
    .map((entry) => relative("samples", join(entry.parentPath, entry.name)));
  const engine = engineOf(Object.fromEntries(files.map((file) => [file, readFileSync(join("samples", file), "utf8")])));
  const declaration = engine.workshop.build("fellside-l");
  if (!declaration) throw new Error("no sample");
  const assembly = engine.assemble(declaration);
  const before = specDigest(assembly);

  /** Another value of the same sort: a number one more, a text longer, no for yes. */
  function another(value: unknown): unknown {
    if (typeof value === "number") return Number.isFinite(value) ? value + 1 : value;
    if (typeof value === "string") return `${value}x`;
    if (typeof value === "boolean") return !value;
    if (Array.isArray(value)) return [...value.slice(0, -1), another(value.at(-1))];
    const members = Object.entries(value as object);
    const last = members.findLast(([, member]) => another(member) !== member);
    return Object.fromEntries(members.map(([name, member]) => [name, name === last?.[0] ? another(member) : member]));
  }

  function changed(statements: ReadonlyMap<string, Statement>, name: string): ReadonlyMap<string, Statement> {
    const statement = statements.get(name);
    const other = statement?.state === "stated" ? another(statement.value) : 0;
    return new Map(statements).set(name, { ...statement, state: "stated", value: other } as Statement);
  }

  /** Every assembly that differs in one stated value. */
  function* variations(): Iterable<readonly [string, Assembly]> {
    for (const name of assembly.fields.keys()) yield [name, { ...assembly, fields: changed(assembly.fields, name) }];
    for (const [path, installed] of assembly.slots) {
      const withSlot = (other: Installed): Assembly => ({
        ...assembly,
        slots: new Map(assembly.slots).set(path, other),
      });
      for (const name of installed.settings.keys()) {
        yield [`${path}.${name}`, withSlot({ ...installed, settings: changed(installed.settings, name) })];
      }
      const { part } = installed;
      for (const name of part?.facts.keys() ?? []) {
        if (part)
          yield [`${path}.${name}`, withSlot({ ...installed, part: { ...part, facts: changed(part.facts, name) } })];
      }
    }
  }

  it("every value that is stated of a build and its parts changes it, and no two changes give one digest", () => {
    const digests = new Map([[before, "nothing"]]);
    const same: string[] = [];
    let count = 0;
    for (const [path, other] of variations()) {
      // A third of them is enough for one run; they are some eight hundred.
      if (count++ % 3 !== 0) continue;
      const digest = specDigest(other);
      const known = digests.get(digest);
      if (known !== undefined) same.push(`${path} like ${known}`);
      digests.set(digest, path);
    }
    expect(count).toBeGreaterThan(600);
    expect(same).toEqual([]);
  });
});
