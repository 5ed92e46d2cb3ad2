import type { Outcome, Severity } from "../model/finding.ts";
import { type CollectedWorkshop, collect, hasAtLeast } from "../reports/collect.ts";
import { coloured, plain } from "../reports/paint.ts";
import { textReport } from "../reports/text.ts";
import type { DisplayUnits } from "../values/show.ts";
import type { LeftOut } from "../workshop-files/list.ts";
import { exitCodes } from "./exit-codes.ts";
import { type KeptEngines, load } from "./load.ts";
import type { ReadWorkshop } from "./read-workshops.ts";
import { version } from "./version.ts";

/** Everything besides the files that the answer of `check` depends on. */
export interface CheckSettings {
  readonly format: string;
  readonly failOn: string;
  readonly list: readonly string[];
  readonly today: string;
  readonly width: number;
  readonly colour: boolean;
  /** Units in which numbers are shown; those that each workshop states when left out. */
  readonly units?: DisplayUnits;
  /** Where shown paths start. */
  readonly folder: string;
}

export interface CheckAnswer {
  /** The report, in pieces to be written one after another. */
  readonly pieces: readonly string[];
  readonly exitCode: number;
  /** Files that turned out to be no text. */
  readonly leftOut: readonly LeftOut[];
}

/**
 * Checks what was read and writes the report.
 * @param kept engines of an earlier answer, for one who asks again and again.
 */
export async function answerCheck(
  read: readonly ReadWorkshop[],
  settings: CheckSettings,
  kept?: KeptEngines,
): Promise<CheckAnswer> {
  const { today } = settings;
  const loaded = read.map((workshop) => load(workshop, today, settings.folder, settings.units, kept));
  const leftOut = loaded.flatMap((workshop) => workshop.leftOut);
  const collected = loaded.map((workshop, index) => ({
    ...collect(workshop),
    unread: [...(read[index]?.leftOut ?? []), ...workshop.leftOut].filter(({ serious }) => serious),
  }));
  const pieces = await report(collected, settings, today);
  if (leftOut.length > 0) return { pieces, leftOut, exitCode: exitCodes.usage };
  const failOn = settings.failOn as Severity | "never";
  const found = failOn !== "never" && collected.some(({ files }) => hasAtLeast(files, failOn));
  return { pieces, leftOut, exitCode: found ? exitCodes.findings : exitCodes.clean };
}

async function report(
  workshops: readonly CollectedWorkshop[],
  { format, width, colour, list }: CheckSettings,
  today: string,
): Promise<readonly string[]> {
  switch (format) {
    case "json": {
      const { jsonPieces } = await import("../reports/json.ts");
      return [...jsonPieces(workshops, today)];
    }
    case "github":
      return [(await import("../reports/github.ts")).githubReport(workshops)];
    case "junit":
      return [(await import("../reports/junit.ts")).junitReport(workshops)];
    case "sarif": {
      const { sarifReport } = await import("../reports/sarif.ts");
      return [`${JSON.stringify(sarifReport(workshops, version), undefined, 2)}\n`];
    }
    default:
      return [
        textReport(workshops, {
          width,
          paint: colour ? coloured : plain,
          list: list.map((word) => outcomes[word]).filter((outcome) => outcome !== undefined),
        }),
      ];
  }
}

const outcomes: Readonly<Record<string, Outcome>> = {
  holds: "holds",
  fails: "fails",
  unknown: "unknown",
  waived: "waived",
  "not-applicable": "notApplicable",
};
