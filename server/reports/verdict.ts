import type { Verdict } from "../checks/define.ts";
import { combinationText, type InstanceResult } from "../engine/evaluate.ts";
import { missingWords } from "../model/need.ts";

/** Which place a check was asked of, and with which alternates, behind its code; empty for once of the whole build. */
export function instanceText({ instance, combination }: InstanceResult): string {
  const where = [instance, combination ? `with ${combinationText(combination)}` : ""].filter((word) => word !== "");
  return where.length === 0 ? "" : ` (${where.join(", ")})`;
}

/** What was said of one instance of a check, in a sentence. */
export function verdictText(verdict: Verdict): string {
  switch (verdict.outcome) {
    case "holds":
    case "fails":
      return verdict.message;
    case "unknown":
      return `${missingWords(verdict.missing)}: ${verdict.missing.map(({ what }) => what).join("; ")}`;
    case "notApplicable":
      return verdict.reason;
  }
}
