import { Engine } from "../../server/engine/engine.ts";
import type { Mend } from "../../server/engine/repairs.ts";
import type { Outcome } from "../../server/model/finding.ts";
import type {
  CollectedWorkshop,
  Location,
  ReportedBuild,
  ReportedFile,
  ReportedFinding,
} from "../../server/reports/collect.ts";

/**
 * Reports made by hand: what a person sees must not change because a check was added somewhere. Only the texts are
 * real, since excerpts are cut from them.
 */
export function made(texts: Readonly<Record<string, string>>) {
  const engine = new Engine({ today: "2026-11-25" });
  engine.update(Object.entries(texts).map(([path, text]) => ({ uri: `file:///${path}`, text })));

  /** The place of a stretch of a file: of its first occurrence. */
  const at = (path: string, stretch: string): Location => {
    const uri = `file:///${path}`;
    const start = texts[path]?.indexOf(stretch) ?? -1;
    if (start < 0) throw new Error(`${path} does not hold ${stretch}`);
    return { uri, path, range: engine.fileRange(uri, { start, end: start + stretch.length }) };
  };
  const finding = (path: string, stretch: string, rest: Partial<ReportedFinding> = {}): ReportedFinding => ({
    code: "example/code",
    severity: "error",
    outcome: "fails",
    message: "Something does not fit.",
    path: "",
    at: at(path, stretch),
    related: [],
    mends: () => [],
    ...rest,
  });
  const build = (
    path: string,
    name: string,
    rows: readonly Row[],
    findings: readonly ReportedFinding[] = [],
  ): ReportedBuild => {
    const declaration = engine.workshop.build(name);
    if (!declaration) throw new Error(`no build ${name}`);
    const counts: Record<Outcome, number> = { holds: 0, fails: 0, unknown: 0, waived: 0, notApplicable: 0 };
    for (const { outcome } of rows) counts[outcome]++;
    const report = { rows: rows.map(rowOf), counts } as unknown as ReportedBuild["report"];
    return { declaration, at: at(path, name), report, findings };
  };
  const workshop = (files: readonly MadeFile[]): CollectedWorkshop => ({
    engine,
    uris: files.map(({ path }) => `file:///${path}`),
    pathOf: (uri) => uri.replace("file:///", ""),
    files: files.map((file) => ({ records: [], ...file, uri: `file:///${file.path}` })),
  });
  return { at, finding, build, workshop };
}

/** A file as a test writes it; one without records need not say so. */
type MadeFile = Omit<ReportedFile, "uri" | "records"> & Partial<Pick<ReportedFile, "records">>;

/** A check's row as a test writes it. */
export interface Row {
  readonly code: string;
  readonly outcome: Outcome;
  readonly instances?: readonly {
    readonly name: string;
    readonly outcome: Exclude<Outcome, "waived">;
    readonly said: string;
  }[];
  readonly said?: string;
}

function rowOf({ code, outcome, instances, said = "" }: Row) {
  const own = outcome === "waived" ? "fails" : outcome;
  const all = (instances ?? [{ name: "", outcome: own, said }]).map((instance) => ({
    instance: instance.name,
    verdict:
      instance.outcome === "unknown"
        ? { outcome: "unknown", missing: instance.said.split("; ").map((what) => ({ path: what, what })) }
        : { outcome: instance.outcome, message: instance.said, reason: instance.said },
  }));
  const missing = all.flatMap(({ verdict }) => ("missing" in verdict ? (verdict.missing ?? []) : []));
  return { check: { code, title: code }, outcome, instances: all, missing };
}

export function mend(title: string): Mend {
  return { title, preferred: false, unfinished: false, edits: [] };
}
