import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { prelude } from "../../server/standards/index.ts";
import { build, library, today } from "./support.ts";

const own = 'standard freehub-body yard "Ours" { aliases: ys }\n';

/** Texts that each file may hold: rules that name parts, codes, builds, and one another's names. */
const texts: Readonly<Record<string, readonly string[]>> = {
  "parts.ferrule": [
    library,
    library.replace("1800 g", "900 g"),
    library.replace("part bell gill.bell", "part bell gill.ding"),
    "",
  ],
  "more.ferrule": [
    "",
    own,
    "part cassette corrie.odd { freehub: ys }\n",
    `${own}part cassette corrie.wide { speeds: 9 }\n`,
  ],
  "builds.ferrule": [
    build,
    build.replace("category: mountain", 'category: mountain\n  waive rule/light "Asked" until 2027-01-01'),
    `${build}build second from example { cockpit.stem.spacers-below: 40 mm; drivetrain.cassette: corrie.close or corrie.odd }\n`,
    build.replace("category: mountain", "category: city"),
    "",
  ],
  "rules.ferrule": [
    "",
    'rule light "Light" { require: frame.mass <= 1 kg; expect { fails: example } }\n',
    'rule light "Light" { require: frame.mass <= 2 kg; expect { fails: second } }\n',
    "rule bell { require: lighting.bell is gill.bell; set { lighting.bell: gill.bell } }\n",
    "rule driver { when: drivetrain.cassette.freehub is yard; require: category is mountain; expect { not-applicable: example } }\n",
    "rule wrong { require: frame.mass <= 3 mm }\nrule low { require: cockpit.stem.spacers-below <= 20 mm; expect { holds: example; fails: second } }\n",
  ],
  "other-rules.ferrule": [
    "",
    "rule light { require: category is mountain }\n",
    "rule tall { require: cockpit.stem.spacers-below >= 20 mm }\n",
  ],
};
const names = Object.keys(texts);

function everything(engine: Engine): unknown {
  return names.map((uri) => ({
    uri,
    findings: engine.findings(uri).map(({ code, severity, message, outcome, path, place, related }) => ({
      code,
      severity,
      message,
      outcome,
      path,
      at: [place.declaration.uri, engine.range(place)],
      related: related.map((one) => [one.message, one.place.declaration.uri, engine.range(one.place)]),
    })),
    rows: engine
      .file(uri)
      ?.declarations.map((declaration) =>
        engine
          .report(declaration)
          ?.rows.flatMap(({ check, outcome }) => (check.code.startsWith("rule/") ? [`${check.code} ${outcome}`] : [])),
      ),
  }));
}

function fresh(held: ReadonlyMap<string, string>): Engine {
  const engine = new Engine({ today, prelude });
  engine.update([...held].map(([uri, text]) => ({ uri, text })));
  return engine;
}

const edits = fc.array(
  fc.tuple(fc.nat(names.length - 1), fc.nat(9), fc.boolean()).map(([file, text, looks]) => {
    const uri = names[file]!;
    return { uri, text: texts[uri]![text % texts[uri]!.length]!, looks };
  }),
  { minLength: 1, maxLength: 6 },
);

describe("an engine with rules", () => {
  it("says after any edits what a fresh one says, and names every file that they change", () => {
    fc.assert(
      fc.property(edits, fc.boolean(), (sequence, isOpen) => {
        const held = new Map(names.map((uri) => [uri, texts[uri]![0]!]));
        const engine = fresh(held);
        if (isOpen) for (const uri of names) engine.setOpen(uri, true);
        everything(engine);
        for (const { uri, text, looks } of sequence) {
          const said = new Map(
            names.map((one) => [one, JSON.stringify(engine.findings(one).map(({ code, message }) => [code, message]))]),
          );
          held.set(uri, text);
          const affected = engine.update([{ uri, text }]);
          if (!looks) continue;
          for (const one of names) {
            const now = JSON.stringify(engine.findings(one).map(({ code, message }) => [code, message]));
            if (!affected.has(one)) expect([one, now]).toEqual([one, said.get(one)]);
          }
        }
        expect(everything(engine)).toEqual(everything(fresh(held)));
      }),
      { numRuns: 60 },
    );
  });

  it("asks no build again for an edit of a part that only another build has", () => {
    const held = new Map(names.map((uri) => [uri, texts[uri]![1]!]));
    held.set("builds.ferrule", build);
    const engine = fresh(held);
    everything(engine);
    const affected = engine.update([{ uri: "more.ferrule", text: `${own}part saddle odd.one { mass: 3 g }\n` }]);
    expect([...affected]).toEqual(["more.ferrule"]);
  });

  it("wakes a rule by a name that was looked up in vain", () => {
    const engine = new Engine({ today, prelude });
    const rule = "rule r { require: drivetrain.cassette is north.ten; expect { holds: b } }\n";
    engine.update([{ uri: "rules.ferrule", text: rule }]);
    expect(engine.findings("rules.ferrule").map(({ code }) => code)).toEqual(["model/unknown-part"]);
    engine.update([{ uri: "p.ferrule", text: "part cassette north.ten { }\n" }]);
    expect(engine.findings("rules.ferrule").map(({ code }) => code)).toEqual(["model/unknown-build"]);
    engine.update([{ uri: "b.ferrule", text: "build b { drivetrain.cassette: north.ten }\n" }]);
    expect(engine.findings("rules.ferrule")).toEqual([]);
  });
});
