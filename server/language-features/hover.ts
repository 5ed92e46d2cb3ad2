import type { Hover, Position } from "vscode-languageserver-types";
import type { DeclarationKeyword } from "../../grammar/tree.ts";
import type { Engine } from "../engine/engine.ts";
import type { Declaration } from "../model/declaration.ts";
import { checkHover, comparison, failingAt, outcomeWords } from "./hover/checks.ts";
import { buildHover, codeHover, declarationHover } from "./hover/declarations.ts";
import { fieldHover, readingOf, wordHover } from "./hover/fields.ts";
import { numberHover } from "./hover/numbers.ts";
import { measuredHover, specHover } from "./hover/records.ts";
import { functionHover, localHover, ruleHover, valuesInBuilds } from "./hover/rules.ts";
import { filledSlotHover, slotHover } from "./hover/slots.ts";
import { code, paragraphs, plain } from "./shared/markdown.ts";
import { type Meaning, meaningAt } from "./shared/meaning.ts";
import type { ClientOptions } from "./shared/options.ts";
import { locate, rangeOf } from "./shared/place.ts";

const keywordWords: Readonly<Record<DeclarationKeyword, string>> = {
  workshop: "What holds for the whole workshop: its name, language and currency. There is one under a root.",
  part: "What the workshop knows of a component: typed facts of its kind. A part may derive from another.",
  build:
    "A whole bicycle: which part goes into which slot, and how each is installed. A build may derive from another.",
  standard: "A mating interface as data: its dimensions, what it mates with, other names for it, and its source.",
  rule: "A constraint of the workshop's own on its builds.",
  record: "What was measured on a bicycle as built.",
};

/** What stands at a position, explained; `undefined` where nothing does. Needs the resolved model. */
export function hover(engine: Engine, uri: string, position: Position, client: ClientOptions): Hover | undefined {
  const located = locate(engine, uri, position);
  if (!located) return undefined;
  const { declaration, offset } = located;
  const meaning = meaningAt(engine.workshop, declaration, offset);
  if (!meaning) return undefined;
  const text = textOf(engine, declaration, meaning, client);
  if (text === "") return undefined;
  return {
    contents: client.helpText(text),
    range: rangeOf(engine, declaration, meaning.span),
  };
}

function textOf(engine: Engine, declaration: Declaration, meaning: Meaning, client: ClientOptions): string {
  const text = helpOf(engine, declaration, meaning, client);
  const path = declaration.keyword === "rule" ? pathOf(meaning) : undefined;
  return path === undefined ? text : paragraphs(text, valuesInBuilds(engine, declaration, path, client));
}

/** The path of a build that a word of a rule names. */
function pathOf(meaning: Meaning): string | undefined {
  if (meaning.what === "slot" || meaning.what === "number") return meaning.path;
  return meaning.what === "field" ? meaning.at.path : undefined;
}

function helpOf(engine: Engine, declaration: Declaration, meaning: Meaning, client: ClientOptions): string {
  const report = engine.report(declaration);
  switch (meaning.what) {
    case "keyword":
      return paragraphs(`**${meaning.keyword}**`, keywordWords[meaning.keyword]);
    case "kind":
      return meaning.kind
        ? paragraphs(
            `**${plain(meaning.name)}** · ${plain(meaning.kind.noun)}`,
            plain(meaning.kind.description),
            essentials(meaning.kind.fields),
            meaning.kind.caution === undefined ? undefined : `> **Caution:** ${plain(meaning.kind.caution)}`,
          )
        : "";
    case "family":
      return meaning.family
        ? paragraphs(`**${plain(meaning.name)}** · ${plain(meaning.family.noun)}`, plain(meaning.family.description))
        : "";
    case "own-name":
      return meaning.declaration.keyword === "build"
        ? paragraphs(buildHover(engine, declaration, client), comparisonsAt(engine, declaration, "", client))
        : declarationHover(engine, meaning.declaration, client);
    case "reference": {
      if (meaning.slot !== undefined && report) {
        const slot = report.assembly.slots.get(meaning.slot);
        // The first of several alternates is the one that is fitted; the others are parts like any other.
        if (slot?.name === meaning.name) return filledSlotHover(engine, report, slot.slot, client);
      }
      return meaning.target
        ? declarationHover(engine, meaning.target, client)
        : `No ${meaning.keyword} is declared with the name ${code(meaning.name)}.`;
    }
    case "group":
      return paragraphs(`**${plain(meaning.name)}**`, plain(meaning.description));
    case "slot":
      if (declaration.keyword === "record") {
        return paragraphs(measuredHover(engine, declaration, meaning.path, client), slotHover(meaning.slot, undefined));
      }
      return report ? filledSlotHover(engine, report, meaning.slot, client) : slotHover(meaning.slot, undefined);
    case "field":
      return paragraphs(
        measuredAt(engine, declaration, meaning.at.path, client),
        comparisonsAt(engine, declaration, meaning.at.path, client),
        fieldHover(meaning.at),
        statedInBuild(engine, declaration, meaning.at.path, meaning.at.name),
      );
    case "value":
      return paragraphs(
        // A digest is written without quotes, so that it reads as no text.
        isSpec(declaration, meaning.at.path)
          ? undefined
          : readingOf(meaning.at.field, meaning.entry.value.tokens, meaning.at.name),
        measuredAt(engine, declaration, meaning.at.path, client),
        comparisonsAt(engine, declaration, meaning.at.path, client),
        fieldHover(meaning.at),
      );
    case "word":
      return paragraphs(
        measuredAt(engine, declaration, meaning.at.path, client),
        comparisonsAt(engine, declaration, meaning.at.path, client),
        wordHover(meaning),
      );
    case "code":
      return codeHover(engine, meaning, client);
    case "number":
      return report ? numberHover(engine, report, meaning.path, client) : plain(meaning.description);
    case "local":
      return localHover(engine, declaration, meaning.local, client);
    case "function":
      return functionHover(meaning.function);
    case "rule-entry":
      return paragraphs(`**${plain(meaning.name)}**`, plain(meaning.description));
    case "check": {
      const own = report?.rows.find(({ check }) => check.code === meaning.code);
      return paragraphs(
        meaning.rule
          ? ruleHover(engine, meaning.rule, client)
          : checkHover(meaning.code, engine.checks.byCode(meaning.code)),
        own && `In this build ${outcomeWords[own.outcome]}.`,
      );
    }
  }
}

function essentials(fields: Readonly<Record<string, { readonly essential?: boolean }>>): string {
  const names = Object.keys(fields).filter((name) => fields[name]?.essential);
  return names.length === 0 ? "" : `Expected of it: ${names.map(code).join(", ")}.`;
}

function isSpec({ keyword }: Declaration, path: string): boolean {
  return keyword === "record" && path === "spec";
}

/** What a record holds at a path, beside what was expected there. */
function measuredAt(engine: Engine, declaration: Declaration, path: string, client: ClientOptions): string {
  if (declaration.keyword !== "record") return "";
  return isSpec(declaration, path) ? specHover(engine, declaration) : measuredHover(engine, declaration, path, client);
}

/** What a part of the build states of a field that is only named here, as in a waiver's path. */
function statedInBuild(engine: Engine, declaration: Declaration, path: string, name: string): string {
  const assembly = engine.report(declaration)?.assembly;
  const dot = path.lastIndexOf(".");
  if (!assembly || dot < 0) return "";
  const installed = assembly.slots.get(path.slice(0, dot));
  const stated = installed?.settings.get(name) ?? installed?.part?.facts.get(name) ?? assembly.fields.get(path);
  if (stated?.state !== "stated") return "";
  return `Stated: ${code(stated.written)}.`;
}

/** The comparisons behind what fails at a path of a build, in full. */
function comparisonsAt(engine: Engine, declaration: Declaration, path: string, client: ClientOptions): string {
  const report = engine.report(declaration);
  if (!report) return "";
  return paragraphs(
    ...failingAt(report, path).map(({ check, instance }) => comparison(engine, report, check, instance, client)),
  );
}
