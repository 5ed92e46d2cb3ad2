import { Engine } from "../../server/engine/engine.ts";
import type { Finding } from "../../server/model/finding.ts";
import { prelude } from "../../server/standards/index.ts";

export const today = "2026-11-25";

/** Parts of every type of fact: numbers, ranges of the three roles, lists, words, codes, yes or no, money, text. */
export const library = `
part cassette corrie.wide "Corrie wide" {
  speeds: 12
  cogs: 10-12-14-16-18-21-24-28-32-38-45-52 t
  freehub: stepped-driver
  mass: 372 g
  price: GBP 184.00
}
part cassette corrie.close "Corrie close" {
  speeds: 12
  cogs: 11-12-13-14-15-17-19-21-24-27-30-34 t
  freehub: splined-11t-short
  mass: 310 g
  price: EUR 150.00
}
part crankset corrie.arm "Corrie arm" { rings: 32 t; mass: 620 g }
part rear-derailleur corrie.long "Corrie long" { speeds: 12; total-capacity: 42 t; largest-cog: 52 t; mass: 290 g; price: GBP 90.00 }
part stem moor.stub "Moor stub" { length: 35 mm; bar-bore: 31.8 mm; mass: 120 g; price: GBP 60.00; material: aluminium; steerer-torque: 5 to 8 N·m }
part rim beck.trail "Beck trail" { tyre-width: 50 to 65 mm; mass: 478 g; tyre-seat: 622 }
part bell gill.bell "Gill bell" { mass: 40 g }
part frame moor.fellside "Moor Fellside" { mass: 1800 g; price: GBP 725.00; material: steel; categories: mountain, gravel }
part frame moor.silent "Moor silent" { price: GBP 500.00 }
`;

/** A build that says something of every kind. */
export const build = `
build example "Example" {
  category: mountain
  rider { mass: 78 kg; inseam: 845 mm }
  frame: moor.fellside
  drivetrain {
    rear-derailleur: corrie.long
    front-derailleur: none
    cassette: corrie.wide
    crankset: corrie.arm
  }
  cockpit { stem: moor.stub { spacers-below: 15 mm } }
  rear-wheel { rim: beck.trail }
}
`;

export interface Workshop {
  readonly engine: Engine;
  /** Findings of the file with the rules. */
  readonly findings: readonly Finding[];
}

/** A workshop of the library, some builds and some rules. */
export function workshop(rules: string, builds = build, parts = library): Workshop {
  const engine = new Engine({ today, prelude });
  engine.update([
    { uri: "file:///parts.ferrule", text: parts },
    { uri: "file:///builds.ferrule", text: builds },
    { uri: "file:///rules.ferrule", text: rules },
  ]);
  return { engine, findings: engine.findings("file:///rules.ferrule") };
}

/** What a rule with one requirement comes to for the build `example`: its outcome, with its message or reason. */
export function asked(
  requirement: string,
  { builds = build, entries = "", parts = library }: { builds?: string; entries?: string; parts?: string } = {},
): { readonly outcome: string; readonly message: string } {
  const { engine, findings } = workshop(`rule r {\n  ${entries}\n  require: ${requirement}\n}\n`, builds, parts);
  const wrong = findings.filter(({ severity }) => severity === "error");
  if (wrong.length > 0)
    return { outcome: "wrong", message: wrong.map(({ code, message }) => `${code}: ${message}`).join("\n") };
  return row(engine, "rule/r");
}

/** The first-named bike's answer to a check. */
export function row(engine: Engine, code: string, name = "example"): { outcome: string; message: string } {
  const declaration = engine.workshop.build(name);
  const found = declaration && engine.report(declaration)?.rows.find(({ check }) => check.code === code);
  if (!found) return { outcome: "not asked", message: "" };
  const verdict = found.instances[0]?.verdict;
  const message =
    verdict?.outcome === "unknown"
      ? verdict.missing.map(({ what }) => what).join("; ")
      : verdict?.outcome === "notApplicable"
        ? verdict.reason
        : (verdict?.message ?? "");
  return { outcome: found.outcome, message };
}

/** What a text says of itself where a finding stands. */
export function at({ place }: Finding): string {
  return place.declaration.text.slice(place.span.start, place.span.end);
}
