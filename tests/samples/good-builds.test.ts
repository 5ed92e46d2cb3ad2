import { describe, expect, test } from "vitest";
import { checks } from "../../server/checks/index.ts";
import { kindByName } from "../../server/vocabulary/index.ts";
import { failures, openSamples, reportOf, sampleFiles } from "./workshop.ts";

const engine = openSamples();
const good = [...engine.workshop.declared("build")]
  .filter(({ uri }) => uri.startsWith("builds/"))
  .map(({ name }) => name);

describe("the good builds", () => {
  test("are a dozen at least, of every category that the workshop builds", () => {
    const categories = good.map((name) => {
      const category = reportOf(engine, name).assembly.fields.get("category");
      return category?.state === "stated" ? category.value : undefined;
    });
    expect(good.length).toBeGreaterThanOrEqual(12);
    expect([...new Set(categories)].sort()).toEqual([
      "cargo",
      "child",
      "city",
      "gravel",
      "mountain",
      "road",
      "touring",
      "track",
    ]);
  });

  test("are the bikes that the workshop builds", () => {
    expect([...good].sort()).toEqual([
      "birkrigg-54",
      "dent-57",
      "fellside-l",
      "fellside-m",
      "fleetwith-52",
      "haverigg-lt",
      "kentmere-56",
      "kirkgate-55",
      "lamb-16",
      "lorton-56",
      "torver-m",
      "ulpha-54",
      "wasdale-56",
    ]);
  });

  test.each(good)("%s: nothing fails and nothing is left unknown", (name) => {
    const report = reportOf(engine, name);
    expect(failures(report)).toEqual([]);
    const open = report.rows.filter(({ outcome }) => outcome === "unknown");
    expect(open.map(({ check, missing }) => `${check.code}: ${missing.map(({ what }) => what).join(", ")}`)).toEqual(
      [],
    );
    const { holds, fails, unknown, waived, notApplicable } = report.counts;
    const asked = [...checks, ...engine.checks.rules].map(({ code }) => code);
    expect(holds + fails + unknown + waived + notApplicable).toBe(asked.length);
    expect(report.rows.map(({ check }) => check.code).sort()).toEqual(asked.sort());
    expect(holds).toBeGreaterThan(15);
  });

  test.each(good)("%s: every slot of the vocabulary is said, and holds a part of a kind it takes", (name) => {
    const report = reportOf(engine, name);
    expect(report.rows.find(({ check }) => check.code === "build/missing-slot")?.outcome).toBe("holds");
    for (const [path, installed] of report.assembly.slots) {
      if (installed.state === "none") continue;
      expect(installed.part?.kind, path).toBeDefined();
    }
  });

  test("the waiver of the hardtail silences a chain that is two links longer than it need be, and nothing else", () => {
    const report = reportOf(engine, "fellside-l");
    expect(report.findings.map(({ code, outcome }) => `${code} ${outcome}`)).toEqual([
      "drivetrain/chain-length waived",
    ]);
    const file = "builds/fellside.ferrule";
    const text = sampleFiles.find(({ path }) => path === file)?.text ?? "";
    const bare = text
      .split("\n")
      .filter((line) => !line.trimStart().startsWith("waive "))
      .join("\n");
    const without = openSamples({ [file]: bare });
    expect(failures(reportOf(without, "fellside-l"))).toEqual(["drivetrain/chain-length drivetrain.chain.links"]);
  });

  test("the waiver has run out a day after its last", () => {
    expect(reportOf(openSamples({}, "2027-03-31"), "fellside-l").counts).toMatchObject({ fails: 0, waived: 1 });
    const late = reportOf(openSamples({}, "2027-04-01"), "fellside-l");
    expect(late.counts.waived).toBe(0);
    expect(failures(late)).toContain("drivetrain/chain-length drivetrain.chain.links");
  });

  test("every way of setting up a rear derailleur and of holding a control occurs", () => {
    const ways = new Set<string>();
    for (const name of good) {
      const { slots } = reportOf(engine, name).assembly;
      const stated = (path: string, fact: string): unknown => {
        const statement = slots.get(path)?.part?.facts.get(fact);
        return statement?.state === "stated" ? statement.value : undefined;
      };
      const setUp = stated("drivetrain.rear-derailleur", "set-up");
      if (typeof setUp === "string") ways.add(`set-up ${setUp}`);
      const controller = slots.get("drivetrain.rear-controller");
      if (controller?.state === "none" || !controller) continue;
      const shares = controller.settings.has("clamp");
      ways.add(controller.part?.kind?.name === "brake-lever" ? "built in" : shares ? "shared clamp" : "own band");
    }
    expect([...ways].sort()).toEqual([
      "built in",
      "own band",
      "set-up cable",
      "set-up direct-mount",
      "set-up electronic",
      "shared clamp",
    ]);
  });
});

describe("the libraries", () => {
  const parts = [...engine.workshop.declared("part")];

  test("hold at least 120 parts", () => {
    expect(parts.length).toBeGreaterThanOrEqual(120);
  });

  test("state every essential fact of every part", () => {
    const lacking: string[] = [];
    for (const declaration of parts) {
      const { facts } = engine.part(declaration);
      const kind = kindByName(declaration.kind ?? "");
      for (const [name, field] of Object.entries(kind?.fields ?? {})) {
        // A sprocket goes on by splines or by a thread, and one of the two is enough.
        if (!field.essential || facts.has(name) || (name === "freehub" && facts.has("thread"))) continue;
        lacking.push(`${declaration.name}: ${name}`);
      }
      for (const name of ["maker", "mass", "price"]) if (!facts.has(name)) lacking.push(`${declaration.name}: ${name}`);
    }
    expect(lacking).toEqual([]);
  });

  test("say nothing that has to be mended", () => {
    const wrong = sampleFiles
      .filter(({ path }) => path.startsWith("parts/") || !path.includes("/"))
      .flatMap(({ path }) => engine.findings(path).map(({ code, message }) => ({ path, code, message })));
    expect(wrong).toEqual([]);
  });
});

describe("rules and records", () => {
  const paths = sampleFiles.map(({ path }) => path).filter((path) => /^(?:rules\.|records\/)/.test(path));

  test("are read, and nothing that was measured is wrong", () => {
    expect(paths.length).toBeGreaterThan(1);
    const wrong = paths.flatMap((path) => engine.findings(path)).filter(({ outcome }) => outcome === "fails");
    expect(wrong.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
  });
});
