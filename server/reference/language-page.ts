import { dimensionNames, unitsOf } from "../../grammar/units.ts";
import { fenced, page, table } from "./markdown.ts";
import { rulesSection } from "./rules-section.ts";

/** The language by example. Every example is read and formatted by a test. */
export function languagePage(): string {
  return page("The language", [
    "A file ends in `.ferrule` and holds declarations. Every file under the workshop's root (the nearest folder upward with a `workshop.ferrule`, else the repository, else the folder opened) sees every other: there is nothing to import and no order to keep.",
    "`//` starts a comment. Lines of `///` above a declaration document it.",
    "## The workshop",
    fenced(`workshop north-yard "North Yard Cycles" {
  language: 1
  currency: GBP
}`),
    "## Parts",
    "`part KIND NAME \"TITLE\" { ... }` states what is known of a component. `from` takes over another part's facts; what is stated anew replaces them. Fields under `own` are the shop's own and are not checked.",
    fenced(`/// Twelve-speed wide-range cassette, stocked by the box.
part cassette corrie.wide-10-52 "Corrie wide 10-52" {
  speeds: 12
  cogs: 10-12-14-16-18-21-24-28-32-38-45-52 t
  mass: 372 g
  price: GBP 184.00
  own { bin: "A3" }
}

part cassette corrie.wide-11-50 "Corrie wide 11-50" from corrie.wide-10-52 {
  cogs: 11-13-15-17-19-21-24-28-32-36-42-50 t
}`),
    "A field that is left out is not known, unless its row says that leaving it out means there is none. `none` states that there is none. Kinds and their fields are listed in [kinds.md](kinds.md).",
    "## Builds",
    "A build fills slots with parts. The block behind a part's name holds how it is installed; it never changes a fact of the part. Slots are listed in [builds.md](builds.md); `extras` takes the shop's own keys.",
    fenced(`build fellside-l "Fellside 29 hardtail, size L" {
  category: mountain
  rider { mass: 78 kg; inseam: 845 mm }

  frame: moor.fellside-l

  drivetrain {
    front-derailleur: none
    cassette: corrie.wide-10-52
    chain: corrie.link-12 { links: 116 }
  }

  waive drivetrain/chain-length at drivetrain.chain "Owner asked for one spare pair of links" until 2027-03-31
}`),
    "A part that does the work of two stands in both slots, and is weighed and paid for once. A wheel bought whole is a `built-wheel`: it is named as hub and as rim, and spokes and nipples left out are then none. A brake lever with a shift control built in is named again as the controller, with `clamp` saying which lever it is.",
    fenced(`part built-wheel beck.quick-rear "Beck quick rear wheel" {
  axle: 12x142
  bead-seat: 622
  mass: 790 g
}

build kentmere-54 "Kentmere race bike, size 54" {
  rear-wheel { hub: beck.quick-rear; rim: beck.quick-rear }
}`),
    "`a or b` lists alternates: every combination is checked, and what clashes is named by the smallest set of parts; numbers are those of the first-named parts. One block of settings stands behind the last of them and counts for all: `a or b { links: 116 }`; parts that are set up differently are two builds. `template: yes` marks a base that is not a whole bicycle; it alone is not taken over by the builds from it.",
    "A build `from` another takes everything over. A slot given anew takes its part and its settings anew; a block or a dotted path amends what is there; `remove` takes full paths. Lines have no order: what is removed goes first, then parts come into their slots, then they are set up.",
    fenced(`build fellside-m "Fellside 29 hardtail, size M" from fellside-l {
  frame: moor.fellside-m
  cockpit.stem.spacers-below: 5 mm
  drivetrain.cassette: corrie.wide-10-52 or corrie.wide-11-50
  remove: extras.lower-cage
}`),
    '`waive CODE at PATH "reason" until DATE` takes a finding on oneself up to and including that day. It stays in every report, and a build from this one takes it over. What guards somebody\'s safety stays a warning. The path is needed where a check is asked in several places; with several named parts in a slot it covers all of them. One that cannot be read whole does not count.',
    "## Standards",
    '`standard FAMILY CODE "TITLE" { ... }` declares an interface between parts. Two parts fit where their codes are the same, or where either names the other under `mates`. The built-in ones are listed in [standards.md](standards.md).',
    fenced(`standard freehub-body yard-spline "The yard's own spline" {
  aliases: ys
  source: "the yard's own drawing"
}`),
    ...rulesSection(),
    "## Records",
    "A record holds what was measured on one bicycle as built and is compared with its build: whatever can be measured, against what, and within which tolerance stands in [records.md](records.md). A record never changes the build. `spec` names the specification that the bicycle was built to by its digest.",
    fenced(`record "FL-0031" of fellside-l {
  date: 2026-11-20
  by: "K. P."
  spec: a3f91c04d7e2
  drivetrain.chain.links: 116
  drivetrain.chain-gap: 7 mm
  torque.stem-bar: 5 N·m
  rear-wheel.tension.drive-side: 1180, 1150, 1210 N
}`),
    "## Values",
    table(
      ["value", "written"],
      [
        ["quantity", "`40 N·m`, `1 1/8 in`, `-6 °`; metric and inch units alike"],
        ["range", "`4 to 6 N·m`, `<= 5 N·m`, `>= 20 mm`"],
        ["tolerance", "`27.2 ± 0.05 mm`"],
        ["tooth list", "`10-12-14-16 t`"],
        ["interface code", "`12x148`, `ZS44/28.6`"],
        ["word of a set", "`mountain`"],
        ["text", '`"as printed on the box"`'],
        ["yes or no", "`yes`"],
        ["day", "`2027-03-31`"],
        ["money", "`GBP 184.00`"],
        ["part", "`corrie.wide-10-52`"],
      ],
    ),
    "A wrong unit or dimension is an error at the value, with a conversion offered. A decimal comma or a comma between thousands is an error with a fix, never a list.",
    "## Units",
    table(
      ["measure", "units"],
      dimensionNames.map((name) => [
        name,
        unitsOf(name)
          .map((unit) => `\`${unit.symbol}\``)
          .join(", "),
      ]),
    ),
    "## Lines and blocks",
    "A value stays on its line. What follows `{` on the same line ends on that line: `rider { mass: 78 kg; inseam: 845 mm }`. A declaration's keyword first on a line always starts a declaration, so a mistake costs its own line and no more. Blocks nest at most 16 deep.",
  ]);
}
