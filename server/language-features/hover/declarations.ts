import type { Engine } from "../../engine/engine.ts";
import type { Declaration } from "../../model/declaration.ts";
import { readStandard } from "../../model/standard.ts";
import type { Statement } from "../../model/stated.ts";
import { specDigest } from "../../records/spec-digest.ts";
import { showValue } from "../../values/show.ts";
import type { Fields } from "../../vocabulary/define.ts";
import { familyByName } from "../../vocabulary/index.ts";
import { bullets, caution, code, paragraphs, placeLink, plain } from "../shared/markdown.ts";
import type { Meaning } from "../shared/meaning.ts";
import type { ClientOptions } from "../shared/options.ts";
import { usesOf } from "../shared/uses.ts";
import { recordHover } from "./records.ts";
import { ruleHover } from "./rules.ts";

/** How many facts are listed; the rest are one jump away. */
const mostFacts = 14;

/** A declaration as whoever names it wants to see it. */
export function declarationHover(engine: Engine, declaration: Declaration, client: ClientOptions): string {
  switch (declaration.keyword) {
    case "part":
      return partHover(engine, declaration, client);
    case "standard":
      return standardHover(engine, declaration, client);
    case "build":
      return buildHover(engine, declaration, client);
    case "rule":
      return ruleHover(engine, declaration, client);
    case "record":
      return recordHover(engine, declaration, client);
    default:
      return paragraphs(
        `**${plain(declaration.label || declaration.keyword)}**`,
        plain(declaration.tree.documentation),
        placeLinkOf(engine, declaration, client),
      );
  }
}

/** A part: title, kind, doc comment, key facts, and how many places name it. */
export function partHover(engine: Engine, declaration: Declaration, client: ClientOptions): string {
  const part = engine.part(declaration);
  return paragraphs(
    `**${plain(declaration.label)}** · ${code(declaration.name)} · ${plain(part.kind?.noun ?? declaration.kind ?? "a part")}${fromText(declaration)}`,
    plain(declaration.tree.documentation),
    factList(part.facts, part.kind?.fields ?? {}),
    part.kind?.caution === undefined ? undefined : caution(part.kind.caution),
    usedAndDeclared(engine, declaration, client),
  );
}

/** How many builds name a part, and where it is declared. */
export function usedAndDeclared(engine: Engine, declaration: Declaration, client: ClientOptions): string {
  const using = usesOf(engine, declaration).filter((use) => !use.isOwn && use.declaration.keyword === "build");
  const builds = new Set(using.map((use) => use.declaration)).size;
  const used = builds === 0 ? "No build names it" : builds === 1 ? "One build names it" : `${builds} builds name it`;
  return `${used}. ${placeLinkOf(engine, declaration, client)}`;
}

function fromText({ from }: Declaration): string {
  return from === undefined ? "" : `, from ${code(from)}`;
}

/** Facts in the order of the vocabulary, the essential ones first. */
export function factList(facts: ReadonlyMap<string, Statement>, fields: Fields): string {
  const names = Object.keys(fields).filter((name) => facts.has(name));
  const ordered = [
    ...names.filter((name) => fields[name]?.essential),
    ...names.filter((name) => !fields[name]?.essential),
  ];
  const lines = ordered
    .slice(0, mostFacts)
    .map((name) => `${plain(name)}: ${statementText(facts.get(name), name, fields)}`);
  const rest = ordered.length - lines.length;
  return bullets(rest > 0 ? [...lines, `and ${rest} more`] : lines);
}

function statementText(statement: Statement | undefined, name: string, fields: Fields): string {
  if (!statement || statement.state === "unreadable") return "cannot be read";
  if (statement.state === "none") return "none";
  const type = fields[name]?.type;
  const isPlain = type?.type === "quantity";
  const both = isPlain ? showValue(type, statement.value, { displayUnits: "both" }) : statement.written;
  // The written number stays in view; the other units stand behind it.
  const other = isPlain ? /\(.*\)$/.exec(both)?.[0] : undefined;
  return `${plain(statement.written)}${other === undefined ? "" : ` ${plain(other)}`}`;
}

/** A standard: title, dimensions, what it mates with, other names, source. */
export function standardHover(engine: Engine, declaration: Declaration, client: ClientOptions): string {
  const standard = readStandard(declaration);
  const { family, dimensions } = standard;
  const aside = new Set(["aliases", "mates", "published", "source", "note"]);
  const own = new Map([...dimensions].filter(([name]) => !aside.has(name)));
  const said = (name: string): string | undefined => {
    const statement = dimensions.get(name);
    return statement?.state === "stated" ? String(statement.value) : undefined;
  };
  const published = said("published");
  const source = said("source");
  const note = said("note");
  return paragraphs(
    `**${plain(declaration.label)}** · ${code(declaration.name)} · ${plain(family?.noun ?? declaration.kind ?? "")}`,
    plain(declaration.tree.documentation),
    factList(own, family?.fields ?? {}),
    bullets([
      ...(standard.mates.length > 0 ? [`Also mates with ${standard.mates.map(code).join(", ")}.`] : []),
      ...(standard.aliases.length > 0 ? [`Also written ${standard.aliases.map(code).join(", ")}.`] : []),
      ...(published === undefined ? [] : [`Published: ${plain(published)}`]),
      ...(source === undefined ? [] : [`Source: ${plain(source)}`]),
      ...(note === undefined ? [] : [plain(note)]),
    ]),
    `${declaration.builtIn ? "Comes with Ferrule. " : ""}${placeLinkOf(engine, declaration, client)}`,
  );
}

/** A code: its standard, and the whole composite when the place is in one of its halves. */
export function codeHover(engine: Engine, meaning: Extract<Meaning, { what: "code" }>, client: ClientOptions): string {
  const { at, code: written, resolved, whole } = meaning;
  const family = familyByName(written.family);
  const noun = family?.noun ?? written.family;
  const halves = resolved?.halves?.map(({ name, value, code: half }) => {
    const title = half?.standard?.declaration.title;
    return `${plain(name)}: ${code(half?.code ?? String(value ?? ""))}${title === undefined ? "" : ` ${plain(title)}`}`;
  });
  const standard = resolved?.halves ? undefined : resolved?.standard;
  return paragraphs(
    whole === undefined ? undefined : `A half of ${code(whole.code)}.`,
    standard ? standardHover(engine, standard.declaration, client) : `${code(written.code)} · ${plain(noun)}`,
    halves ? bullets(halves) : undefined,
    resolved || !engine.complete
      ? undefined
      : `No standard ${code(`${written.family} ${written.code}`)} is declared, so it cannot be compared with anything.`,
    `${plain(at.name)}: ${plain(at.field.description)}`,
  );
}

/** A build: its title, base, and the five counts. */
export function buildHover(engine: Engine, declaration: Declaration, client: ClientOptions): string {
  const report = engine.report(declaration);
  const { holds = 0, fails = 0, unknown = 0, waived = 0, notApplicable = 0 } = report?.counts ?? {};
  return paragraphs(
    `**${plain(declaration.label)}** · ${code(declaration.name)} · a build${fromText(declaration)}`,
    plain(declaration.tree.documentation),
    report &&
      `Of its checks ${fails} fail, ${unknown} cannot be made for want of facts, ${waived} are waived, ${holds} hold and ${notApplicable} do not apply.`,
    report && `Specification, for records of bicycles built to it: ${code(`spec: ${specDigest(report.assembly)}`)}.`,
    placeLinkOf(engine, declaration, client),
  );
}

function placeLinkOf(engine: Engine, declaration: Declaration, client: ClientOptions): string {
  return `Declared in ${placeLink(engine, { declaration, span: declaration.headerSpan }, client)}.`;
}
