import type { CommandRow, OptionRow } from "./command.ts";
import { run as check } from "./commands/check.ts";
import { socketPath } from "./standby/place.ts";

const formatOption = (words: readonly string[]): OptionRow => ({
  name: "format",
  value: words.join("|"),
  words,
  description: `how to write the result; ${words[0]} when not given`,
});

const unitsOption: OptionRow = {
  name: "units",
  value: "metric|inch|both",
  words: ["metric", "inch", "both"],
  description: "units in which worked-out numbers are shown; as the workshop states, else metric, when not given",
};

const exitCodesHelp =
  "Ends with 0 when nothing is found at or above --fail-on, 1 when something is, 2 when the command is not understood " +
  "or a file cannot be read.";

export const commands: readonly CommandRow[] = [
  {
    name: "check",
    summary: "check builds and parts, and say what fits, what does not, and what cannot be checked",
    usage: ["[PATH...] [--format text] [--fail-on error] [--today DATE] [--list OUTCOME]", "- [--as FILE]"],
    options: [
      formatOption(["text", "json", "github", "junit", "sarif"]),
      {
        name: "fail-on",
        value: "SEVERITY",
        words: ["error", "warning", "information", "never"],
        description: "end with 1 from this severity up; error when not given; a fact that is not stated is information",
      },
      { name: "today", value: "DATE", description: "the day on which waivers are judged, such as 2027-03-31" },
      {
        name: "list",
        value: "OUTCOME",
        words: ["holds", "fails", "unknown", "waived", "not-applicable"],
        several: true,
        description: "list the checks of every build with this outcome; several with commas between",
      },
      unitsOption,
      { name: "as", value: "FILE", description: "the file that standard input stands for, in its workshop" },
      { name: "watch", description: "check again whenever a file of the workshop changes, until Ctrl+C" },
      {
        name: "shard",
        value: "I/N",
        description: "report only every Nth file, beginning with the Ith, so that N machines share the work",
      },
      { name: "no-cache", description: "do not remember the answer, give a remembered one, or ask a standby" },
    ],
    details: [
      "PATH is a file, a folder or a pattern such as builds/*.ferrule; without one, the folder you are in. " +
        "- reads standard input: alone with the built-in standards, or in the place of FILE with --as FILE.",
      "A file belongs to the workshop whose folder is the nearest one upward with a workshop.ferrule, else to the git " +
        "repository, else to its folder. All .ferrule files of the workshop are read, so that parts are found; only those under PATH are reported.",
      "The answer is remembered for as long as no file changes, in the user's cache folder or the one that the " +
        "environment variable FERRULE_CACHE names; FERRULE_CACHE=off remembers nothing.",
      "In a terminal a check leaves a standby behind, which answers the next one sooner; ferrule help standby says more.",
      exitCodesHelp,
    ],
    run: check,
  },
  {
    name: "explain",
    summary: "say what a check means and why, how a number of a build comes about, or what came of a record",
    usage: ["CODE", "FILE#BUILD[/PATH]", "FILE#SERIAL[/PATH]"],
    options: [
      formatOption(["text", "json"]),
      { name: "today", value: "DATE", description: "the day on which waivers are judged, such as 2027-03-31" },
      unitsOption,
    ],
    details: [
      "CODE is the code of a finding, such as drivetrain/largest-cog.",
      "FILE#BUILD/PATH is a number, a fact, a setting or a slot of a build, such as " +
        "builds/fellside.ferrule#fellside-l/drivetrain.capacity-needed. Without PATH, everything the build has is listed.",
      "FILE#SERIAL/PATH is a measurement of a record, such as records/2026.ferrule#FL-0031/drivetrain.chain-gap: what it " +
        "was compared with, and the working. Without PATH, every comparison of the record is.",
    ],
    run: async (invocation, program) => (await program()).explain(invocation),
  },
  {
    name: "calculate",
    summary: "work one calculation out from numbers given here, with its working; without a name, list them",
    usage: ["", "NAME INPUT=VALUE..."],
    options: [formatOption(["text", "json"]), unitsOption],
    details: [
      "A value is written as in a file, with any unit of the right dimension: chainstay=435 mm, chainstay=17.1in. " +
        "A list has commas, or dashes between teeth: rings=50,34. calculate NAME without inputs says what it needs.",
      "Ends with 0 when it is worked out, 1 when nothing can come of these numbers (a post that is too short), 2 when the " +
        "command is not understood or an input is missing or unusable.",
    ],
    run: async (invocation, program) => (await program()).calculate(invocation),
  },
  {
    name: "suggest",
    summary: "find parts for a slot of a build, or the fewest parts to exchange for a target",
    usage: [
      "FILE#BUILD SLOT [--by margin] [--limit NUMBER]",
      "FILE#BUILD --target LIMIT... [--keep SLOT] [--seconds NUMBER]",
    ],
    options: [
      {
        name: "target",
        value: "LIMIT",
        several: true,
        description: 'what the build is to come to, such as "mass <= 11.5 kg"',
      },
      {
        name: "by",
        value: "margin|mass|price",
        words: ["margin", "mass", "price"],
        description: "what ranks parts that are alike in warnings and open questions; margin when not given",
      },
      {
        name: "limit",
        value: "NUMBER",
        description:
          "how many parts are listed under each heading, all when not given; how many answers for a target, 3",
      },
      { name: "keep", value: "SLOT", several: true, description: "with --target: slots whose parts stay" },
      {
        name: "changes",
        value: "NUMBER",
        description: "with --target: the most parts that may be exchanged; 12 when not given",
      },
      { name: "seconds", value: "NUMBER", description: "with --target: how long is searched; 10 when not given" },
      formatOption(["text", "json"]),
      { name: "today", value: "DATE", description: "the day on which waivers are judged, such as 2027-03-31" },
      unitsOption,
    ],
    details: [
      "SLOT is a path such as drivetrain.cassette; its last word is enough where no other slot has it. Every part of " +
        "the workshop's libraries that is of a kind for the slot is judged by every check that reads it: those that fit " +
        "come first, ranked, and the others with what speaks against them.",
      "LIMIT is mass, price, lowest-ratio, highest-ratio, lowest-development, highest-development, gear-range, grip-reach, " +
        "grip-stack, saddle-height, saddle-setback or the path of any number that explain shows, with a limit: <= 11.5 kg, " +
        "450 to 460 mm. The smallest sets of slots are tried first; only builds without a new error count, and what has to " +
        "be set otherwise is said. When time runs out, the best found is given, and how far the search went.",
      "Ends with 0 when something is suggested, 1 when no part fits or nothing that was tried meets the targets, 2 when " +
        "the command is not understood or a file cannot be read.",
    ],
    run: async (invocation, program) => (await program()).suggest(invocation),
  },
  {
    name: "parts",
    summary: "list what builds are made of, and parts that nothing uses, nothing fits, or that stand there twice",
    usage: [
      "list [FILE#BUILD... [--variants] | PATH...] [--format text|csv|json]",
      "unused [PATH...]",
      "never-fit [PATH...] [--seconds NUMBER]",
      "duplicates [PATH...]",
    ],
    options: [
      formatOption(["text", "csv", "json"]),
      { name: "variants", description: "with list: the builds that derive from those named as well" },
      {
        name: "seconds",
        value: "NUMBER",
        description: "with never-fit: how long builds are asked; 20 when not given",
      },
      unitsOption,
    ],
    details: [
      "list adds up how many of each part builds take, with mass and price: of the builds named, or of all whole bikes of " +
        "files and folders. Parts without a stated mass or price are named and never counted as zero; currencies stay apart.",
      "unused lists parts that no build names. duplicates lists parts that may be one and the same: names, titles, order " +
        "numbers or facts alike.",
      "never-fit lists parts that fit no build of the workshop (in every slot that takes them some check fails as an error " +
        "which no set-up mends), and parts for one of whose joints the libraries have no counterpart, nor an adapter.",
    ],
    run: async (invocation, program) => (await program()).parts(invocation),
  },
  {
    name: "import",
    summary: "bring parts in from a supplier's CSV or from JSON",
    usage: ["FILE.csv [--to FILE.ferrule] [--map FILE.json] [--update] [--dry-run]", "FILE.json [--to FILE.ferrule]"],
    options: [
      {
        name: "to",
        value: "FILE",
        description: "where new parts go, at the end of what is there; beside the list under its name when not given",
      },
      {
        name: "map",
        value: "FILE",
        description: "how columns become facts; NAME.columns.json beside the list when not given",
      },
      {
        name: "update",
        description: "write what differs into parts that are there; without it they are left as they are",
      },
      { name: "dry-run", description: "only say what would be done" },
      formatOption(["text", "json"]),
    ],
    details: [
      "A table whose titles are not those of facts is first read for a map of its columns: what each may hold, by its " +
        "title and its unit in brackets, as in Weight (g). The map is written beside the table and nothing else is done. " +
        "Put right what is not so, decide what is marked ?, and run the same command again; next month's list needs no more.",
      "A row is taken whole or not at all; each that is not is named with line, column and reason. A number for which the " +
        "table gives no unit, and a sum without currency, are never guessed at. Rows of one name that differ are all rejected.",
      "UTF-8, UTF-16 and Windows-1252 are read; commas, semicolons, tabs and bars between cells; decimal commas where the " +
        "map says so. A part's comments and what the list does not mention stay as they are. Every file is replaced in one step.",
      "Ends with 0 when every row was taken, 1 when one was rejected, differs and was left, or a map is to be looked " +
        "through, 2 when the command is not understood or a file cannot be read or written.",
    ],
    run: async (invocation, program) => (await program()).importParts(invocation),
  },
  {
    name: "export",
    summary: "write the parts of libraries as CSV or JSON",
    usage: ["[PATH...] --format csv|json [--to FILE]"],
    options: [
      { ...formatOption(["csv", "json"]), description: "how to write the parts" },
      {
        name: "to",
        value: "FILE",
        description: "the file to write, replaced in one step; standard output when not given",
      },
    ],
    details: [
      "PATH is a file, a folder or a pattern; without one, the folder you are in. JSON holds parts and the workshop's own " +
        "standards, with values in units and as they are written; import reads it back to equal declarations. " +
        "grammar/generated/library.schema.json describes it.",
      "CSV holds one part on a row, in UTF-8, with the facts that a part states itself; import reads it back without a map. " +
        "A cell that a spreadsheet would take for a formula has an apostrophe in front.",
      "Comments other than /// stay behind. Ends with 1 when a declaration with errors was left out, which is said.",
    ],
    run: async (invocation, program) => (await program()).exportParts(invocation),
  },
  {
    name: "format",
    summary: "write files in canonical form",
    usage: ["[PATH...] [--check]", "-"],
    options: [
      { name: "check", description: "change nothing; end with 1 and name the files that are not in canonical form" },
    ],
    details: [
      "A file that cannot be read as Ferrule is left as it is, and said so. A file is replaced in one step or not at all.",
      "Ends with 0 when every file is in canonical form now, 1 when one is not, 2 when the command is not understood " +
        "or a file cannot be read or written.",
    ],
    run: async (invocation, program) => (await program()).format(invocation),
  },
  {
    name: "standby",
    summary: "say whether a standby answers checks; start one, or end it",
    usage: ["", "--start [PATH...]", "--stop", "--serve [PATH...] [--seconds NUMBER]"],
    options: [
      { name: "start", description: "start one, which takes the workshops of PATH in at once" },
      { name: "stop", description: "end every standby of yours" },
      { name: "serve", description: "be one, until nobody has asked for a while or Ctrl+C" },
      {
        name: "seconds",
        value: "NUMBER",
        description: "with --serve: how long it waits for a question before it ends; 600 when not given, 86400 at most",
      },
    ],
    details: [
      "A standby is this program kept running: it holds workshops that were checked, and works out again only what changed " +
        "in them, so that a check after an edit takes little longer than one without. A check sends it what it read, so that " +
        "its answers are those of a check without it; between checks it looks for changes in the workshops that it was " +
        "asked about. It writes none of your files, and only you can ask it, through a socket in the cache folder.",
      "A check in a terminal leaves one behind by itself. On a build server (where CI is set), in a hook of git and at a " +
        "pipe a running one answers, but none is started. The environment variable FERRULE_STANDBY=on starts one there too; " +
        "FERRULE_STANDBY=off, FERRULE_CACHE=off and check --no-cache do without. There is none on Windows.",
    ],
    run: async (invocation, program) => (await program()).standby(invocation, socketPath()),
  },
  {
    name: "serve",
    summary: "run the language server for an editor",
    usage: ["--stdio"],
    options: [
      { name: "stdio", description: "speak on standard input and output, the only way there is" },
      {
        name: "clientProcessId",
        value: "NUMBER",
        description: "given by some editors; the number that the protocol itself gives counts",
      },
    ],
    details: [],
    run: async (invocation, program) => (await program()).serve(invocation),
  },
];
