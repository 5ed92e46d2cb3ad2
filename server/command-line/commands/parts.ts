import { billOfMaterials, isTemplate, type ListedBuild, withVariants } from "../../library/bill-of-materials.ts";
import { duplicateParts } from "../../library/duplicates.ts";
import { neverFittingParts } from "../../library/never-fit.ts";
import { unusedParts } from "../../library/unused.ts";
import {
  duplicatesText,
  type LibraryTextOptions,
  neverFitText,
  placeJson,
  unusedText,
} from "../../reports/library-text.ts";
import { coloured, plain } from "../../reports/paint.ts";
import { partsListCsv, partsListJson, partsListText } from "../../reports/parts-list.ts";
import { printable } from "../../reports/printable.ts";
import { didYouMean, nearestSeveral } from "../../values/near.ts";
import { readAddress } from "../address.ts";
import type { Invocation } from "../command.ts";
import { exitCodes } from "../exit-codes.ts";
import { buildIn, buildsOf, fileOf, readAndLoad } from "../find-build.ts";
import type { LoadedWorkshop } from "../load.ts";
import { UsageProblem } from "../problem.ts";
import { timeLimit } from "../time-limit.ts";

const questions: Readonly<Record<string, (words: readonly string[], invocation: Invocation) => string>> = {
  list,
  unused: (words, invocation) => answer(words, invocation, "unused", unused),
  duplicates: (words, invocation) => answer(words, invocation, "duplicates", duplicates),
  "never-fit": (words, invocation) => answer(words, invocation, "never-fit", neverFit),
};

/** Lists parts: what builds are made of, and what of the libraries is of no use. */
export function run(invocation: Invocation): number {
  const [question, ...words] = invocation.positionals;
  const ask = question === undefined || !Object.hasOwn(questions, question) ? undefined : questions[question];
  if (!ask) {
    const names = Object.keys(questions);
    const near = question === undefined ? "" : didYouMean(nearestSeveral(question, names));
    throw new UsageProblem(`parts takes one of ${names.join(", ")}.${near}`);
  }
  if (question !== "list" && invocation.value("format") === "csv") {
    throw new UsageProblem(`parts ${question} is written as text or json.`);
  }
  if (question !== "list" && invocation.has("variants")) {
    throw new UsageProblem("--variants goes with parts list.");
  }
  invocation.terminal.write(ask(words, invocation));
  return exitCodes.clean;
}

function list(words: readonly string[], invocation: Invocation): string {
  const { value, terminal } = invocation;
  const builds = listedBuilds(words, invocation);
  const bill = billOfMaterials(builds);
  switch (value("format")) {
    case "json":
      return json(partsListJson(bill));
    case "csv":
      return partsListCsv(bill);
    default:
      return partsListText(bill, terminal.width, terminal.colour ? coloured : plain);
  }
}

/** The builds that were named, with their variants where asked for; or all whole bikes of files and folders. */
function listedBuilds(words: readonly string[], invocation: Invocation): readonly ListedBuild[] {
  const addresses = words.map(readAddress);
  const named = addresses.filter((address) => address !== undefined);
  if (named.length > 0 && named.length < words.length) {
    throw new UsageProblem("parts list takes builds (FILE#BUILD) or paths, not both at once.");
  }
  if (named.length === 0) {
    const workshops = readAndLoad(words.length === 0 ? ["."] : words, invocation);
    const builds = workshops.flatMap(({ engine, uris }) =>
      buildsOf({ engine, uris })
        .filter((declaration) => !isTemplate(engine, declaration))
        .map((declaration) => ({ engine, declaration })),
    );
    if (builds.length > 0) return builds;
    throw new UsageProblem(`No build is in ${words.map(printable).join(", ") || "this folder"}, templates aside.`);
  }
  const workshops = readAndLoad([...new Set(named.map(fileOf))], invocation);
  const found = named.map((address) => {
    const { workshop, build, path } = buildIn(workshops, address);
    if (path !== "") throw new UsageProblem(`${printable(address.rest)} names something of a build; write FILE#BUILD.`);
    return { engine: workshop.engine, declaration: build };
  });
  if (!invocation.has("variants")) return found;
  return [...new Set(found.map(({ engine }) => engine))].flatMap((engine) => {
    const bases = found.filter((one) => one.engine === engine).map(({ declaration }) => declaration);
    return withVariants(engine, bases)
      .filter((declaration) => !isTemplate(engine, declaration))
      .map((declaration) => ({ engine, declaration }));
  });
}

interface Answer {
  readonly text: (options: LibraryTextOptions) => string;
  readonly data: object;
}

/** Puts a question to each workshop, and writes the answers. */
function answer(
  words: readonly string[],
  invocation: Invocation,
  question: string,
  ask: (workshop: LoadedWorkshop, invocation: Invocation) => Answer,
): string {
  const { terminal, value } = invocation;
  if (words.some((word) => readAddress(word))) throw new UsageProblem(`parts ${question} takes files and folders.`);
  const workshops = readAndLoad(words.length === 0 ? ["."] : words, invocation);
  const answers = workshops.map((workshop) => ({
    workshop,
    said: workshop.engine.shown(() => ask(workshop, invocation)),
  }));
  if (value("format") === "json") {
    return json({ schemaVersion: 1, question, workshops: answers.map(({ said }) => said.data) });
  }
  const paint = terminal.colour ? coloured : plain;
  return answers
    .map(({ workshop, said }) => workshop.engine.shown(() => said.text({ width: terminal.width, paint, workshop })))
    .join("\n");
}

function unused(workshop: LoadedWorkshop): Answer {
  const found = unusedParts(workshop.engine, workshop.uris);
  return {
    text: (options) => unusedText(found, options),
    data: {
      parts: found.map(({ declaration, baseOf, namedBy }) => ({
        ...placeJson(declaration, workshop),
        baseOf,
        namedBy,
      })),
    },
  };
}

function duplicates(workshop: LoadedWorkshop): Answer {
  const groups = duplicateParts(workshop.engine, workshop.uris);
  return {
    text: (options) => duplicatesText(groups, options),
    data: {
      groups: groups.map(({ likeness, shared, parts }) => ({
        likeness,
        shared,
        parts: parts.map((declaration) => placeJson(declaration, workshop)),
      })),
    },
  };
}

function neverFit(workshop: LoadedWorkshop, { value }: Invocation): Answer {
  const found = neverFittingParts(workshop.engine, workshop.uris, timeLimit(value("seconds"), 20));
  return {
    text: (options) => neverFitText(found, options),
    data: {
      builds: found.builds,
      asked: found.asked,
      parts: found.parts.map(({ declaration, lonely, fitsNone }) => ({
        ...placeJson(declaration, workshop),
        lonely,
        ...(fitsNone ? { fitsNone } : {}),
      })),
    },
  };
}

function json(value: unknown): string {
  return `${JSON.stringify(value, undefined, 2)}\n`;
}
