import { describe, expect, test } from "vitest";
import { checksReading } from "../../server/checks/table.ts";
import { SlotJudge, withPart } from "../../server/engine/candidates.ts";
import { Engine } from "../../server/engine/engine.ts";
import { BuildEvaluation } from "../../server/engine/evaluate.ts";
import { prelude } from "../../server/standards/index.ts";
import { generateWorkshop } from "../bench/generate-workshop.ts";
import { seeded } from "../bench/random.ts";

const today = "2026-11-25";
const builds = "builds/builds-001.ferrule";
const files = generateWorkshop({ parts: 160, builds: 4, buildsPerFile: 4, partsPerFile: 80 });

function engineWith(texts: ReadonlyMap<string, string>): Engine {
  const engine = new Engine({ today, prelude });
  engine.update([...texts].map(([uri, text]) => ({ uri, text })));
  return engine;
}

/** Everything that a person would see of a file, and the answer of every instance of every check. */
function said(engine: Engine, uri: string): object {
  return {
    problems: engine.fileProblems(uri),
    findings: engine.findings(uri).map(({ code, severity, message, path, place, related, outcome }) => ({
      code,
      severity,
      message,
      path,
      outcome,
      at: engine.range(place),
      related: related.map((one) => [one.message, one.place.declaration.uri, engine.range(one.place)]),
    })),
    rows: (engine.file(uri)?.declarations ?? []).map((declaration) =>
      engine
        .report(declaration)
        ?.rows.map(({ check, outcome, instances }) => [
          check.code,
          outcome,
          instances.map(({ instance, verdict }) => [
            instance,
            verdict.outcome,
            verdict.outcome === "holds" || verdict.outcome === "fails" ? verdict.message : "",
          ]),
        ]),
    ),
  };
}

describe("what is kept from the letter before", () => {
  const names = [...files.values()].flatMap((text) => [...text.matchAll(/^part \S+ (\S+)/gm)].map(([, name]) => name));
  const edits = 90;

  test(`gives the same as working everything out anew, after each of ${edits} edits`, { timeout: 120_000 }, () => {
    const random = seeded(7);
    const texts = new Map(files);
    const engine = engineWith(texts);
    engine.setOpen(builds, true);
    engine.findings(builds);
    for (let count = 0; count < edits; count++) {
      const isLibrary = random.number(0, 11) === 0;
      const uri = isLibrary ? random.pick([...texts.keys()].filter((name) => name !== builds)) : builds;
      const text = edited(texts.get(uri) ?? "", random, names as string[]);
      texts.set(uri, text);
      engine.update([{ uri, text }]);
      // Sometimes several edits come before anybody asks.
      if (random.number(0, 3) === 0) continue;
      expect(said(engine, builds)).toEqual(said(engineWith(texts), builds));
    }
  });
});

/** One edit as a person makes it: another part, another number, a line in or out, a letter more or less. */
function edited(text: string, random: ReturnType<typeof seeded>, names: readonly string[]): string {
  const lines = text.split("\n");
  const index = random.number(0, lines.length - 1);
  const line = lines[index] ?? "";
  switch (random.number(0, 5)) {
    case 0:
      lines[index] = line.replace(/: \S+$/, `: ${random.pick(names)}`);
      break;
    case 1:
      lines[index] = line.replace(/\d+/, String(random.number(1, 300)));
      break;
    case 2:
      lines.splice(index, 0, random.pick(["", "  category: gravel", "    ", "  rider { mass: 90 kg }", "// a remark"]));
      break;
    case 3:
      if (!/^(build|part|standard|workshop)|^}/.test(line)) lines.splice(index, 1);
      break;
    case 4:
      lines[index] = line.replace(/: \S+/, ": none");
      break;
    default: {
      const at = random.number(0, line.length);
      lines[index] =
        line.slice(0, at) + random.pick(["x", "", "{", "}", ";", " "]) + line.slice(at + random.number(0, 1));
    }
  }
  return lines.join("\n");
}

describe("judging a library", () => {
  const engine = engineWith(files);
  const declaration = engine.file(builds)?.declarations[0];
  if (!declaration) throw new Error("no build");
  const assembly = engine.assemble(declaration);

  test.each([
    "drivetrain.cassette",
    "drivetrain.rear-derailleur",
    "drivetrain.rear-controller",
    "frame",
    "rear-wheel.hub",
    "rear-brake.lever",
    "cockpit.handlebar",
  ])("gives each part for %s the same answers as judging it alone", (slot) => {
    const judging = new SlotJudge(engine, assembly, slot);
    let judged = 0;
    for (const part of engine.workshop.declared("part")) {
      const candidate = judging.judge(engine.part(part));
      const evaluation = new BuildEvaluation(withPart(assembly, slot, engine.part(part)), engine.workshop);
      const alone = checksReading(slot).map(({ check, instance }) => ({
        code: check.code,
        instance: instance.name,
        verdict: evaluation.ask(check, instance),
      }));
      const failing = alone.flatMap(({ code, instance, verdict }) =>
        verdict.outcome === "fails" ? [`${code} ${instance}: ${verdict.message}`] : [],
      );
      const all = [...candidate.failures, ...candidate.standing];
      expect(all.map(({ code, instance, message }) => `${code} ${instance}: ${message}`).sort()).toEqual(
        failing.sort(),
      );
      expect([...candidate.unknown].sort()).toEqual(
        alone.flatMap(({ code, verdict }) => (verdict.outcome === "unknown" ? [code] : [])).sort(),
      );
      expect(candidate.holds).toBe(alone.filter(({ verdict }) => verdict.outcome === "holds").length);
      judged++;
    }
    expect(judged).toBeGreaterThan(100);
  });
});
