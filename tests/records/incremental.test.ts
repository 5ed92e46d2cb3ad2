import { expect, test } from "vitest";
import type { Engine } from "../../server/engine/engine.ts";
import { engineOf } from "./record-text.ts";

const parts = `part chain corrie.link "Link" { speeds: 12; wear-limit: 0.5 % }
part chain corrie.other "Other" { speeds: 12; wear-limit: 0.8 % }
`;
const build = `build example {
  drivetrain.chain: corrie.link { links: 116 }
}
`;
const record = (serial: string, lines: string): string => `record "${serial}" of example {\n  by: "K."\n${lines}\n}\n`;
const worn = record("A-2", "  date: 2026-11-20\n  drivetrain.chain-wear: 0.6 %");

function outcomes(engine: Engine, file: string): readonly string[] {
  return (engine.file(file)?.declarations ?? []).flatMap((declaration) =>
    (engine.record(declaration)?.rows ?? []).map(({ comparison, outcome }) => `${comparison.code} ${outcome}`),
  );
}

function codes(engine: Engine, file: string): readonly string[] {
  return engine.findings(file).map(({ code }) => code);
}

test("a record follows the parts, the build and the part that the build names", () => {
  const engine = engineOf({ parts, build, record: worn });
  expect(outcomes(engine, "record")).toEqual(["record/chain-wear fails"]);
  for (const [uri, text] of [
    ["parts", parts.replace("0.5 %", "0.7 %")],
    ["build", build.replace("corrie.link", "corrie.other")],
  ] as const) {
    const before = engine.file(uri)?.text;
    expect([...engine.update([{ uri, text }])], uri).toContain("record");
    expect(outcomes(engine, "record"), uri).toEqual(["record/chain-wear holds"]);
    engine.update([{ uri, text: before }]);
    expect(outcomes(engine, "record"), uri).toEqual(["record/chain-wear fails"]);
  }
});

test("a record waits for its build, and for what the build names", () => {
  const engine = engineOf({ record: worn });
  expect(codes(engine, "record")).toContain("model/unknown-build");
  expect([...engine.update([{ uri: "build", text: build }])]).toContain("record");
  expect(outcomes(engine, "record")).toEqual(["record/chain-wear unknown"]);
  expect([...engine.update([{ uri: "parts", text: parts }])]).toContain("record");
  expect(outcomes(engine, "record")).toEqual(["record/chain-wear fails"]);
  engine.update([{ uri: "build", text: undefined }]);
  expect(codes(engine, "record")).toContain("model/unknown-build");
});

test("a record is judged anew when another of its build comes, changes or goes, and not for those of others", () => {
  const engine = engineOf({ parts, build, record: worn });
  expect(codes(engine, "record")).not.toContain("record/date-order");
  const earlier = record("A-1", "  date: 2026-11-22");
  expect([...engine.update([{ uri: "other", text: earlier }])]).toContain("record");
  expect(codes(engine, "record")).toContain("record/date-order");
  expect([...engine.update([{ uri: "other", text: earlier.replace("11-22", "11-18") }])]).toContain("record");
  expect(codes(engine, "record")).not.toContain("record/date-order");
  engine.update([{ uri: "other", text: earlier }]);
  expect(codes(engine, "record")).toContain("record/date-order");
  engine.update([{ uri: "other", text: undefined }]);
  expect(codes(engine, "record")).not.toContain("record/date-order");
  expect([...engine.update([{ uri: "other", text: earlier.replace("of example", "of another") }])]).not.toContain(
    "record",
  );
});

test("a record that changes wakes no build and no library", () => {
  const engine = engineOf({ parts, build, record: worn });
  for (const uri of ["parts", "build", "record"]) engine.findings(uri);
  const libraries = engine.librariesRevision;
  const before = engine.workshop.build("example");
  const report = before && engine.report(before);
  expect([...engine.update([{ uri: "record", text: worn.replace("0.6", "0.4") }])]).toEqual(["record"]);
  expect(engine.librariesRevision).toBe(libraries);
  expect(before && engine.report(before)).toBe(report);
  expect(outcomes(engine, "record")).toEqual(["record/chain-wear holds"]);
});

test("a letter typed into a record wakes none of the others but those that point to it, and a move of one that stands twice does", () => {
  const one = record("A-1", "  date: 2026-11-22\n  drivetrain.chain-wear: 0.2 %");
  const engine = engineOf({ parts, build, record: worn, other: one });
  const twice = `${one}${record("A-1", "  date: 2026-11-18")}`;
  for (const uri of ["record", "other"]) engine.findings(uri);
  // One that points to it is woken, since what it points to moves.
  const isWoken = (text: string): readonly string[] => [...engine.update([{ uri: "other", text }])].sort();
  expect(isWoken(one.replace("0.2 %", "0.3 %"))).toEqual(["other", "record"]);
  const quiet = one.replace("2026-11-22", "2026-11-12");
  engine.update([{ uri: "other", text: quiet }]);
  for (const uri of ["record", "other"]) engine.findings(uri);
  expect(isWoken(quiet.replace("0.2 %", "0.3 %"))).toEqual(["other"]);
  engine.update([{ uri: "other", text: twice }]);
  expect(codes(engine, "record")).toContain("record/date-order");
  const [first, second] = twice.split(/(?<=\n\}\n)/);
  engine.update([{ uri: "other", text: `${second}${first}` }]);
  expect(codes(engine, "record")).not.toContain("record/date-order");
});

test("a record turns with the day", () => {
  const engine = engineOf({ parts, build, record: worn });
  expect(codes(engine, "record")).not.toContain("record/future-date");
  engine.today = "2026-11-19";
  expect(codes(engine, "record")).toContain("record/future-date");
});

test("a finding that points into another record moves with it", () => {
  const later = 'record "A-1" of example {\n  date: 2026-11-20\n  by: "K."\n}\n';
  const earlier = record("A-2", "  date: 2026-11-10");
  const engine = engineOf({ parts, build, first: later, second: earlier });
  const pointed = (): number | undefined => {
    const finding = engine.findings("second").find(({ code }) => code === "record/date-order");
    const place = finding?.related[0]?.place;
    return place && engine.range(place).start.character;
  };
  expect(pointed()).toBe("record ".length);
  engine.update([{ uri: "first", text: later.replace("record ", "record     ") }]);
  expect(pointed()).toBe("record     ".length);
});
