import type { Declaration } from "../model/declaration.ts";
import type { Finding } from "../model/finding.ts";
import { problemFinding, textFinding } from "../model/read-fields.ts";
import { readStandard } from "../model/standard.ts";
import { workshopFieldsOf } from "../model/workshop-fields.ts";
import { type RecordContext, type RecordReport, reportRecord } from "../records/report.ts";
import { rulesKey } from "../rules/rule.ts";
import { ruleCheck } from "../rules/rule-check.ts";
import { type BuildReport, reportBuild } from "./build-report.ts";
import type { Engine } from "./engine.ts";
import { BuildEvaluation } from "./evaluate.ts";
import { expectationFindings } from "./expectations.ts";
import { duplicateNames, settingNames, undeclaredCodes, undeclaredMates } from "./names.ts";

/** What is known of one declaration by itself. */
export interface Analysis {
  readonly findings: readonly Finding[];
  readonly lookups: readonly string[];
  readonly report?: BuildReport;
  readonly record?: RecordReport;
}

/** The newest language this program knows. */
export const newestLanguage = 1;

/**
 * Works out everything to be said of one declaration by itself, and the names that it rests on.
 * @param earlier what was known of a build before the last edit, where that may serve again.
 */
export function analyse(engine: Engine, declaration: Declaration, earlier: () => BuildReport | undefined): Analysis {
  const { workshop } = engine;
  const lookups = [declaration.key];
  const duplicates = duplicateNames(declaration, workshop);
  switch (declaration.keyword) {
    case "part": {
      const part = engine.part(declaration);
      lookups.push(...part.lookups);
      const codes = undeclaredCodes(declaration, part.facts, part.kind?.fields ?? {}, "", workshop, lookups);
      return { findings: [...part.findings, ...codes, ...duplicates], lookups };
    }
    case "standard": {
      const standard = readStandard(declaration);
      const mates = declaration.builtIn ? [] : undeclaredMates(standard, workshop, lookups);
      return { findings: [...standard.findings, ...mates, ...duplicates], lookups };
    }
    case "build": {
      lookups.push("workshop", rulesKey);
      const report = engine.shown(() =>
        reportBuild(
          engine.assemble(declaration),
          workshop,
          engine.checks,
          engine.today,
          engine.languageNumber,
          earlier(),
        ),
      );
      lookups.push(...report.lookups);
      const settings = settingNames(report.assembly, workshop, lookups);
      return { findings: [...report.findings, ...settings, ...duplicates], lookups, report };
    }
    case "workshop": {
      const findings: Finding[] = declaration.tree.problems.map((problem) => problemFinding(declaration, problem));
      const fields = workshopFieldsOf(declaration, findings);
      const language = fields.get("language");
      if (language?.state === "stated" && typeof language.value === "number" && language.value > newestLanguage) {
        findings.push(
          textFinding(
            declaration,
            language.place.span,
            "model/language-number",
            `This workshop is written for language ${language.value}; this program knows up to ${newestLanguage}.`,
          ),
        );
      }
      return { findings: [...findings, ...duplicates], lookups };
    }
    case "rule": {
      const rule = engine.rule(declaration);
      lookups.push(...rule.lookups, "workshop");
      if (rule.isWrong) return { findings: [...rule.findings, ...duplicates], lookups };
      const tried = engine.shown(() => expectationFindings(ruleCheck(rule, engine.today), engine));
      lookups.push(...tried.lookups);
      return { findings: [...rule.findings, ...tried.findings, ...duplicates], lookups };
    }
    case "record": {
      const record = engine.shown(() => reportRecord(declaration, recordContext(engine)));
      lookups.push(...record.lookups);
      return { findings: [...record.findings, ...duplicates], lookups, record };
    }
  }
}

function recordContext(engine: Engine): RecordContext {
  return {
    workshop: engine.workshop,
    today: engine.today,
    build: (declaration) => {
      const report = engine.report(declaration);
      return report && { bike: report.evaluation, lookups: report.lookups };
    },
    bike: (assembly) => new BuildEvaluation(assembly, engine.workshop),
  };
}
