import {
  type Diagnostic,
  type DiagnosticRelatedInformation,
  DiagnosticSeverity,
  DiagnosticTag,
} from "vscode-languageserver-types";
import { checkByCode } from "../checks/table.ts";
import type { Engine } from "../engine/engine.ts";
import type { Declaration } from "../model/declaration.ts";
import type { Finding } from "../model/finding.ts";
import { comparisonByCode } from "../records/table.ts";
import { type ShownFinding, shownFindingsOf } from "./shared/findings.ts";
import { type ClientOptions, explanationUri } from "./shared/options.ts";
import { fileRangeOf } from "./shared/place.ts";

/** What a finding carries along, so that it is known again when the client asks for repairs. */
export interface DiagnosticData {
  readonly key: string;
  readonly outcome: Finding["outcome"];
}

export const diagnosticSource = "ferrule";

const severities: Readonly<Record<Finding["severity"], DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
};

/** How a client draws the text of these findings: struck through or faded. */
const tags: Readonly<Record<string, DiagnosticTag>> = {
  "language/former-name": DiagnosticTag.Deprecated,
  "build/idle-waiver": DiagnosticTag.Unnecessary,
};

/** The findings of a declaration as they were sent last, with what their ranges rest on. */
interface Shown {
  readonly findings: readonly Finding[];
  readonly client: ClientOptions;
  /** The line on which the declaration starts. */
  readonly line: number;
  /** Texts of the other files that related places stand in. */
  readonly texts: ReadonlyMap<string, string | undefined>;
  readonly diagnostics: readonly Diagnostic[];
}

/** A letter typed in one declaration leaves the others of its file as they were. */
const lastShown = new WeakMap<Declaration, Shown>();

/** Everything to be said of a file, as a client shows it. Needs the resolved model. */
export function diagnostics(engine: Engine, uri: string, client: ClientOptions): Diagnostic[] {
  const ofText = engine.fileProblems(uri).map(
    ({ code, severity, message, span }): Diagnostic => ({
      range: engine.fileRange(uri, span),
      severity: severities[severity],
      code,
      source: diagnosticSource,
      message,
    }),
  );
  const all = ofText;
  for (const declaration of engine.file(uri)?.declarations ?? []) {
    for (const one of diagnosticsOf(engine, declaration, client)) all.push(one);
  }
  return all;
}

function diagnosticsOf(engine: Engine, declaration: Declaration, client: ClientOptions): readonly Diagnostic[] {
  const findings = engine.findingsOf(declaration);
  const { line } = engine.lines(declaration.uri).position(declaration.start);
  const last = lastShown.get(declaration);
  if (
    last?.findings === findings &&
    last.client === client &&
    last.line === line &&
    [...last.texts].every(([uri, text]) => engine.file(uri)?.text === text)
  ) {
    return last.diagnostics;
  }
  const shown = shownFindingsOf(engine, declaration);
  const texts = new Map<string, string | undefined>();
  for (const { finding } of shown) {
    for (const { place } of finding.related) {
      const { uri } = place.declaration;
      // Inside one declaration places move together; another one of the same file may move by itself.
      if (place.declaration !== declaration) texts.set(uri, engine.file(uri)?.text);
    }
  }
  const converted = shown.map((one) => diagnostic(engine, one, client));
  lastShown.set(declaration, { findings, client, line, texts, diagnostics: converted });
  return converted;
}

/** One finding as a client shows it. */
export function diagnostic(engine: Engine, shown: ShownFinding, client: ClientOptions): Diagnostic {
  const { finding, place } = shown;
  const data: DiagnosticData = { key: shown.key, outcome: finding.outcome };
  const tag = tags[finding.code];
  const related = relatedPlaces(engine, shown, client);
  return {
    range: engine.range(place),
    severity: severities[finding.severity],
    code: finding.code,
    ...(client.explanationLinks && (checkByCode(finding.code) ?? comparisonByCode(finding.code))
      ? { codeDescription: { href: explanationUri(finding.code) } }
      : {}),
    source: diagnosticSource,
    message: finding.caution === undefined ? finding.message : `${finding.message}\nCaution: ${finding.caution}`,
    ...(tag === undefined ? {} : { tags: [tag] }),
    ...(related.length === 0 ? {} : { relatedInformation: related }),
    data,
  };
}

/**
 * Where both sides of a comparison were stated; first the finding's own place when it is shown elsewhere. What is not
 * known was stated nowhere: its repair leads to where it would be, and a list of such places would bury the others.
 */
function relatedPlaces(
  engine: Engine,
  { finding, place }: ShownFinding,
  client: ClientOptions,
): DiagnosticRelatedInformation[] {
  if (finding.outcome === "unknown") return [];
  const elsewhere = place === finding.place ? [] : [{ message: "it is stated here", place: finding.place }];
  return [...elsewhere, ...finding.related].map((related) => {
    const { uri, range } = fileRangeOf(engine, related.place);
    return { message: related.message, location: { uri: client.shownUri(uri), range } };
  });
}
