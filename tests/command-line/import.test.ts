import { chmodSync, existsSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { buildOnce } from "./built.ts";
import { ferrule, folderWith } from "./run.ts";
import { workshopFile } from "./workshops.ts";

beforeAll(buildOnce, 120_000);

const list = [
  "SKU,Description,Weight (g),RRP,Cogs,Stock",
  "GL-1,Gill close,310,£84.00,11-13-15-17-19-21-24-28,4",
  "GL-2,Gill wide,heavy,£96.00,11-13-15-18-21-24-28-34,0",
  "GL-3,Gill wider,402.5,£99.00,11-13-15-18-22-27-34-42,2",
  "",
].join("\n");

/** A person's own file: nothing in it may get lost. */
const library = `// Cassettes of Gill, as the shop knows them.

/// Tried on the fellside, quiet.
part cassette gill.gl-1 "Gill close" {
  // Weighed here, with its lock ring.
  mass: 0.315 kg // on the small scale
  cogs: 11-13-15-17-19-21-24-28 t
  own { bin: "A3" }
}
`;

const read = (folder: string, path: string): string => readFileSync(join(folder, path), "utf8");

function workshop(files: Readonly<Record<string, string>> = {}): string {
  return folderWith({ "workshop.ferrule": workshopFile, "cassettes.csv": list, ...files });
}

/** A workshop whose list has its map, looked through. */
function mapped(files: Readonly<Record<string, string>> = {}): string {
  const folder = workshop(files);
  expect(ferrule(folder, ["import", "cassettes.csv"]).code).toBe(1);
  const map = read(folder, "cassettes.columns.json");
  writeFileSync(join(folder, "cassettes.columns.json"), map.replace('"cassettes.{SKU}"', '"gill.{SKU}"'));
  return folder;
}

describe("import of a supplier's list", () => {
  test("first writes a map to be looked through, and nothing else", () => {
    const folder = workshop();
    const { code, out } = ferrule(folder, ["import", "cassettes.csv", "--to", "gill.ferrule"]);
    expect(code).toBe(1);
    expect(out).toContain("Weight (g)");
    expect(out).toContain("mass in g");
    expect(out).toContain(
      "Rows become parts of the kind cassette, named cassettes.{SKU}, with the title {Description}.",
    );
    expect(out).toContain("Nothing was imported yet. Look through cassettes.columns.json");
    expect(readdirSync(folder).sort()).toEqual(["cassettes.columns.json", "cassettes.csv", "workshop.ferrule"]);
    expect(JSON.parse(read(folder, "cassettes.columns.json"))).toMatchObject({
      version: 1,
      kind: "cassette",
      name: "cassettes.{SKU}",
      title: "{Description}",
      decimals: "point",
    });
  });

  test("then takes sound rows, and names each other with line, column and reason", () => {
    const folder = mapped();
    const { code, out } = ferrule(folder, ["import", "cassettes.csv", "--to", "gill.ferrule"]);
    expect(out).toContain("cassettes.csv:3:3  rejected");
    expect(out).toContain("Weight (g): ");
    expect(out).toContain("2 new declarations, 0 the same already, 1 rejected");
    expect(code).toBe(1);
    expect(read(folder, "gill.ferrule")).toBe(`part cassette gill.gl-1 "Gill close" {
  supplier-code: "GL-1"
  mass: 310 g
  price: GBP 84.00
  cogs: 11-13-15-17-19-21-24-28 t
}

part cassette gill.gl-3 "Gill wider" {
  supplier-code: "GL-3"
  mass: 402.5 g
  price: GBP 99.00
  cogs: 11-13-15-18-22-27-34-42 t
}
`);
    expect(ferrule(folder, ["check"]).code).toBe(0);
    expect(ferrule(folder, ["format", "--check"]).code).toBe(0);
    // Once more: nothing new, nothing twice.
    const again = ferrule(folder, ["import", "cassettes.csv", "--to", "gill.ferrule"]);
    expect(again.out).toContain("0 new declarations, 2 the same already, 1 rejected");
  });

  test("a part that is there and differs is left as it is, and said so", () => {
    const folder = mapped({ "gill.ferrule": library });
    const { code, out } = ferrule(folder, ["import", "cassettes.csv", "--to", "gill.ferrule"]);
    expect(code).toBe(1);
    expect(out.replace(/\s+/g, " ")).toContain("mass 0.315 kg -> 310 g");
    expect(out).toContain("--update");
    expect(read(folder, "gill.ferrule").startsWith(library)).toBe(true);
    expect(read(folder, "gill.ferrule")).toContain("part cassette gill.gl-3");
  });

  test("--update writes what differs, and leaves comments and everything else", () => {
    const folder = mapped({ "own/gill.ferrule": library });
    const { out } = ferrule(folder, ["import", "cassettes.csv", "--to", "new.ferrule", "--update"]);
    expect(out).toContain("1 changed");
    expect(read(folder, "own/gill.ferrule")).toBe(
      library
        .replace("0.315 kg", "310 g")
        .replace('own { bin: "A3" }', 'own { bin: "A3" }\n  supplier-code: "GL-1"\n  price: GBP 84.00'),
    );
    expect(read(folder, "new.ferrule")).not.toContain("gl-1");
    expect(ferrule(folder, ["check"]).code).toBe(0);
  });

  test("--dry-run writes nothing at all", () => {
    const folder = workshop();
    expect(ferrule(folder, ["import", "cassettes.csv", "--dry-run"]).code).toBe(1);
    expect(readdirSync(folder)).not.toContain("cassettes.columns.json");
    const ready = mapped({ "gill.ferrule": library });
    const { out } = ferrule(ready, ["import", "cassettes.csv", "--to", "gill.ferrule", "--update", "--dry-run"]);
    expect(out).toContain("Would add 1 new declaration");
    expect(read(ready, "gill.ferrule")).toBe(library);
  });

  test("a map that is still open, or goes with another list, imports nothing", () => {
    const folder = mapped();
    const path = join(folder, "cassettes.columns.json");
    const map = read(folder, "cassettes.columns.json");
    writeFileSync(path, map.replace('"mass","unit":"g"', '"mass","unit":"?"'));
    const open = ferrule(folder, ["import", "cassettes.csv"]);
    expect(open.err).toContain("Weight (g): its unit");
    writeFileSync(path, map.replace('"column":"Stock"', '"column":"In stock"'));
    const other = ferrule(folder, ["import", "cassettes.csv"]);
    expect(other.err).toContain("The map has In stock");
    expect(other.err).toContain("The list has Stock");
    writeFileSync(path, map.replace('"mass"', '"weigth"'));
    const slip = ferrule(folder, ["import", "cassettes.csv"]);
    expect(slip.err).toContain("no kind of part has a fact weigth");
    expect([open.code, other.code, slip.code]).toEqual([2, 2, 2]);
    expect(existsSync(join(folder, "cassettes.ferrule"))).toBe(false);
  });

  test("a file that may not be written is left as it is, and nothing is left beside it", () => {
    const folder = mapped({ "gill.ferrule": library });
    chmodSync(join(folder, "gill.ferrule"), 0o444);
    const { code, err } = ferrule(folder, ["import", "cassettes.csv", "--to", "gill.ferrule"]);
    expect(err).toContain("gill.ferrule was left as it is: it is read-only");
    expect(code).toBe(2);
    expect(read(folder, "gill.ferrule")).toBe(library);
    expect(statSync(join(folder, "gill.ferrule")).mode & 0o777).toBe(0o444);
    expect(readdirSync(folder).filter((name) => name.endsWith(".tmp"))).toEqual([]);
  });

  test("a folder in the target's place is said to be one", () => {
    const { code, err } = ferrule(mapped({ "taken.ferrule/note.txt": "" }), [
      "import",
      "cassettes.csv",
      "--to",
      "taken.ferrule",
    ]);
    expect(code).toBe(2);
    expect(err).toContain("taken.ferrule was left as it is: a folder has that name.");
    expect(err).toContain("Once that is put right, the same command does the rest.");
  });

  test("what is no list is said in one line", () => {
    const folder = folderWith({ "empty.csv": "", "a.ferrule": "", "b.json": "[]" });
    expect(ferrule(folder, ["import"]).code).toBe(2);
    expect(ferrule(folder, ["import", "gone.csv"]).err).toContain("it does not exist");
    expect(ferrule(folder, ["import", "empty.csv"]).err).toContain("no row with titles");
    expect(ferrule(folder, ["import", "b.json"]).err).toContain("not a JSON object");
    expect(ferrule(folder, ["import", "empty.csv", "--to", "x.txt"]).code).toBe(2);
  });

  test("--format json says the same to a program", () => {
    const folder = mapped({ "gill.ferrule": library });
    const { out } = ferrule(folder, ["import", "cassettes.csv", "--to", "gill.ferrule", "--format", "json"]);
    expect(JSON.parse(out)).toMatchObject({
      schemaVersion: 1,
      dryRun: false,
      files: ["gill.ferrule"],
      added: ["gill.gl-3"],
      left: [
        {
          name: "gill.gl-1",
          differences: [
            { what: "supplier-code", after: '"GL-1"' },
            { what: "mass", before: "0.315 kg", after: "310 g" },
            { what: "price" },
          ],
        },
      ],
      rejected: [{ line: 3, column: 3, heading: "Weight (g)" }],
    });
  });
});

describe("what no text file can hold", () => {
  const titled = (title: string): string => `name,kind,title,mass\na.good,stem,Good,120 g\na.odd,stem,${title},130 g\n`;

  test.each([
    ["a nought", "Od\0d", "U+0000"],
    ["a nought alone", "\0", "U+0000"],
  ])("in a table is refused by its row: %s", (_, title, said) => {
    const folder = workshop({ "stems.csv": titled(title) });
    const { code, out } = ferrule(folder, ["import", "stems.csv"]);
    expect(code).toBe(1);
    expect(out.replace(/\s+/g, " ")).toContain(
      `stems.csv:3 rejected it holds the character ${said}, which no text file can hold`,
    );
    // What was written is read again: the part that is there is found there.
    expect(read(folder, "stems.ferrule")).toContain('part stem a.good "Good" {');
    const again = ferrule(folder, ["import", "stems.csv"]);
    expect(again.err).toBe("");
    expect(again.out).toContain("1 the same already, 1 rejected");
  });

  test.each([
    ["a nought", "\\u0000", "U+0000"],
    ["half a character", "\\ud83d", "U+D83D"],
  ])("in JSON is refused too: %s", (_, written, said) => {
    const folder = workshop();
    const exported = ferrule(workshop({ "gill.ferrule": library }), ["export", "gill.ferrule", "--format", "json"]).out;
    writeFileSync(join(folder, "odd.json"), exported.replaceAll("Gill close", `Gill ${written} close`));
    const { code, out } = ferrule(folder, ["import", "odd.json"]);
    expect(code).toBe(1);
    expect(out.replace(/\s+/g, " ")).toContain(`it holds the character ${said}`);
    expect(existsSync(join(folder, "odd.ferrule"))).toBe(false);
  });

  test("one stray byte costs its own row, and no letter of the others", () => {
    const rows = ["SKU,Description,Weight (g)", "GL-1,Rückgrat,310", "GL-2,Zwei \u00ff,320", "GL-3,Größe,330", ""];
    const bytes = Buffer.from(rows.join("\n"), "utf8");
    // The two bytes of the letter become one that no UTF-8 has.
    const at = bytes.indexOf(Buffer.from("\u00ff", "utf8"));
    const stray = Buffer.concat([bytes.subarray(0, at), Buffer.from([0xff]), bytes.subarray(at + 2)]);
    const folder = folderWith({ "workshop.ferrule": workshopFile, "saddles.csv": stray });
    ferrule(folder, ["import", "saddles.csv"]);
    for (const encoding of [undefined, "utf-8"]) {
      const map = JSON.parse(read(folder, "saddles.columns.json"));
      writeFileSync(join(folder, "saddles.columns.json"), JSON.stringify({ ...map, encoding }));
      const { out, code } = ferrule(folder, ["import", "saddles.csv"]);
      expect(out).toContain("saddles.csv:3:2  rejected\n  Description: the cell holds a character that cannot be read");
      expect(out).toContain("1 rejected.");
      expect(code).toBe(1);
    }
    const library = read(folder, "saddles.ferrule");
    expect(library).toContain('"Rückgrat"');
    expect(library).toContain('"Größe"');
    expect(library).not.toContain("Zwei");
  });

  test("a library as JSON that is no UTF-8 is not guessed at", () => {
    const folder = folderWith({
      "workshop.ferrule": workshopFile,
      "back.json": Buffer.from(
        '{"schemaVersion":1,"parts":[{"kind":"saddle","name":"a","title":"R\u00fcck"}]}',
        "latin1",
      ),
    });
    const { code, err } = ferrule(folder, ["import", "back.json"]);
    expect(code).toBe(2);
    expect(err).toContain("back.json cannot be read: it is not UTF-8 text");
  });

  test("a title that names the parts has to stand over one column", () => {
    const twice = workshop({ "stems.csv": "name,name,kind\na.one,a.two,stem\n" });
    const refused = ferrule(twice, ["import", "stems.csv"]);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain("Several columns of stems.csv are called name,");
    expect(existsSync(join(twice, "stems.ferrule"))).toBe(false);
    // The same with a map that somebody looked through.
    const folder = mapped();
    writeFileSync(join(folder, "cassettes.csv"), list.replace("RRP", "SKU"));
    expect(ferrule(folder, ["import", "cassettes.csv"]).err).toContain(
      "Several columns of cassettes.csv are called SKU,",
    );
    expect(existsSync(join(folder, "cassettes.ferrule"))).toBe(false);
  });

  test("of hundreds of rows with one name each names a few of the others", () => {
    const rows = Array.from({ length: 300 }, (_, index) => `a.one,stem,One,${100 + index} g\n`);
    const folder = workshop({ "stems.csv": `name,kind,title,mass\n${rows.join("")}` });
    const { out } = ferrule(folder, ["import", "stems.csv"]);
    expect(out.replace(/\s+/g, " ")).toContain(
      "a.one stands in line 3, line 4, line 5, line 6, line 7 and 294 more as well",
    );
    expect(out.length).toBeLessThan(100_000);
  });
});

test("a file that would be too long to be read again is left as it is", () => {
  const full = "// What was written down before.\n".repeat(254_200);
  const folder = workshop({ "stems.csv": "name,kind,title\na.one,stem,One\n", "stems.ferrule": full });
  const refused = ferrule(folder, ["import", "stems.csv"]);
  expect(refused.err).toMatch(/stems\.ferrule would come to 8388\d{3} characters, and at most 8388608 of a file are/);
  expect(refused.code).toBe(2);
  expect(readFileSync(join(folder, "stems.ferrule"), "utf8")).toBe(full);
  // A little less of it leaves room.
  writeFileSync(join(folder, "stems.ferrule"), full.slice(990));
  expect(ferrule(folder, ["import", "stems.csv"]).code).toBe(0);
});

describe("export", () => {
  test.each(["csv", "json"])("to %s and back gives the same library, with no map to look through", (format) => {
    const folder = workshop({ "gill.ferrule": library });
    const { out, code, err } = ferrule(folder, ["export", "gill.ferrule", "--format", format]);
    expect([code, err]).toEqual([0, ""]);
    const other = folderWith({ "workshop.ferrule": workshopFile, [`back.${format}`]: out });
    expect(ferrule(other, ["import", `back.${format}`]).code).toBe(0);
    const back = read(other, "back.ferrule");
    expect(back).toContain('/// Tried on the fellside, quiet.\npart cassette gill.gl-1 "Gill close" {');
    for (const line of ["mass: 0.315 kg", "cogs: 11-13-15-17-19-21-24-28 t", 'bin: "A3"']) expect(back).toContain(line);
    expect(ferrule(other, ["export", "back.ferrule", "--format", format]).out).toBe(out);
  });

  test("a declaration with an error is left out and named, and the exit code says so", () => {
    const folder = workshop({ "gill.ferrule": `${library}\npart cassette gill.odd "Odd" {\n  mass: heavy\n}\n` });
    const { out, err, code } = ferrule(folder, ["export", "--format", "json"]);
    expect(err).toContain("gill.ferrule:11  gill.odd was left out");
    expect(JSON.parse(out).parts).toHaveLength(1);
    expect(code).toBe(1);
  });

  test("a library may be larger as JSON than a source may be, and is read back", () => {
    const folder = workshop({ "gill.ferrule": library });
    const { out } = ferrule(folder, ["export", "gill.ferrule", "--format", "json"]);
    const other = folderWith({
      "workshop.ferrule": workshopFile,
      "back.json": `${out}${" ".repeat(25 * 1024 * 1024)}`,
    });
    expect(ferrule(other, ["import", "back.json"])).toMatchObject({ code: 0, err: "" });
    expect(read(other, "back.ferrule")).toContain("mass: 0.315 kg");
  });

  test("--to replaces a file whole, through a link too, and never a file of the workshop's own kind", () => {
    const folder = workshop({ "gill.ferrule": library, "old.csv": "what was there", "folder/x.txt": "" });
    symlinkSync("old.csv", join(folder, "link.csv"));
    const out = ferrule(folder, ["export", "gill.ferrule", "--format", "csv"]).out;
    for (const to of ["new.csv", "link.csv"]) {
      expect(ferrule(folder, ["export", "gill.ferrule", "--format", "csv", "--to", to])).toEqual({
        code: 0,
        out: "",
        err: "",
      });
    }
    expect([read(folder, "new.csv"), read(folder, "old.csv")]).toEqual([out, out]);
    const refused = (to: string) => ferrule(folder, ["export", "gill.ferrule", "--format", "csv", "--to", to]);
    expect(refused("folder")).toMatchObject({
      code: 2,
      err: expect.stringContaining("folder was not written: it is a folder"),
    });
    expect(refused("gill.ferrule")).toMatchObject({ code: 2, err: expect.stringContaining("is Ferrule's own") });
    expect(refused("absent/x.csv").code).toBe(2);
    expect(read(folder, "gill.ferrule")).toBe(library);
    expect(readdirSync(folder).sort()).toEqual([
      "cassettes.csv",
      "folder",
      "gill.ferrule",
      "link.csv",
      "new.csv",
      "old.csv",
      "workshop.ferrule",
    ]);
  });

  test("needs to be told the format", () => {
    expect(ferrule(workshop(), ["export"]).code).toBe(2);
  });
});
