import type { Verdict } from "../checks/define.ts";

/** What was said of one instance of a check, in a sentence. */
export function verdictText(verdict: Verdict): string {
  switch (verdict.outcome) {
    case "holds":
    case "fails":
      return verdict.message;
    case "unknown":
      return `not stated: ${verdict.missing.map(({ what }) => what).join("; ")}`;
    case "notApplicable":
      return verdict.reason;
  }
}
