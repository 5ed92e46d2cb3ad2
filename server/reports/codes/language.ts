/** Codes of the text itself: how it is written. */
export const languageCodes: Readonly<Record<string, string>> = {
  "language/arithmetic-blanks":
    "In a rule, + - * / stand between blanks, since names may hold a dash or a slash: a - b is a difference, a-b a name.",
  "language/base-spelling": "A part or build that derives from another says so with from, after its own name.",
  "language/blank-in-key": "A key is one word. Where the words belong together a dash joins them: largest-cog.",
  "language/block-comment":
    "A comment starts with // and ends with its line; there are no comments over several lines.",
  "language/block-spans-lines":
    "When something follows { on its line, the block ends on that line. A longer block has its entries on lines of their own.",
  "language/brace-on-own-line": "The { of a block stands at the end of the line it belongs to.",
  "language/colon-before-brace": "A group has no colon: drivetrain { ... }. A colon goes between a key and its value.",
  "language/curly-quotes": 'Text stands in straight quotes, "like this"; word processors put curly ones.',
  "language/dash-list": "Entries have no dash in front of them, and a list is written on one line with commas between.",
  "language/decimal-comma": "Decimals follow a point: 3.5 kg. A comma separates the items of a list.",
  "language/direction-character":
    "A character that turns the direction of the text makes it read differently from what it says, and is not accepted in names and values.",
  "language/empty-path-segment": "A path is names with one dot between each two: cockpit.stem.spacers-below.",
  "language/equals-sign": "A key and its value have a colon between them: mass: 372 g.",
  "language/expected": "Something else has to stand here; the message says what, with an example.",
  "language/expression-limit": "An expression of a rule may be only so long and so deep. Split it with let.",
  "language/file-too-large":
    "Files beyond a certain size are not read, so that a slip cannot stop the editor. Split it.",
  "language/former-name":
    "The field has had another name since a later version. The old name is still read; the fix writes the new one.",
  "language/hash-comment": "A comment starts with //, not with #.",
  "language/inch-mark": "Inches are written as a unit: 29 in. A quote after a number would begin a text.",
  "language/incomplete-declaration":
    "A declaration has a keyword, a name and a block: part cassette corrie.wide { ... }.",
  "language/incomplete-entry": "An entry is a key, a colon and a value, or a key and a block.",
  "language/invisible-character":
    "A character that cannot be seen makes a word another word. It usually came with pasted text.",
  "language/long-statement": "A statement may have only so many words; the rest of it is not read.",
  "language/misplaced-waive": "A waive stands at the first level of a build, not inside a group and not in a part.",
  "language/missing-base": "After from stands the name of the part or build to derive from.",
  "language/missing-blank": "A comment or a text begins after a blank; without one it belongs to the word before it.",
  "language/missing-block":
    "A declaration has its entries in a block: { at the end of its first line, } after the last entry.",
  "language/missing-braces": "Indented entries need { at the end of the line above them and } below them.",
  "language/missing-build": 'A record says of which build it is: record "FL-0031" of fellside-l { ... }.',
  "language/missing-closing-brace":
    "A block is not closed. Where braces do not balance, indentation decides where it ends, so the damage stays small.",
  "language/missing-code": "After waive stands the code of the check that is waived.",
  "language/missing-colon": "A key and its value have a colon between them: mass: 372 g.",
  "language/missing-date": "After until stands the last day on which the waiver counts: until 2027-03-31.",
  "language/missing-key": "A block has a name in front of its {.",
  "language/missing-kind":
    "A part says its kind, and a standard its family, before the name: part cassette corrie.wide { ... }.",
  "language/missing-line-end": "An entry begins on a new line, or after a semicolon.",
  "language/missing-name": "A declaration has a name by which others refer to it.",
  "language/missing-opening-brace": "The lines below belong to this one, so it ends with {, and a } follows them.",
  "language/missing-path": "After at stands the path where the check is waived: at drivetrain.chain.",
  "language/missing-reason": "A waiver gives its reason in quotes: whoever reads it later has to be able to judge it.",
  "language/missing-separator": "Two entries on one line have a semicolon between them.",
  "language/missing-value":
    "A key has a value after its colon. Where there is none the value is the word none; what is not known is left out.",
  "language/more-problems":
    "Only so many problems of one declaration are listed. Mend the first ones; many of the rest often go with them.",
  "language/nesting-limit": "Blocks may lie only so deep inside each other.",
  "language/not-a-group": "The field takes a value after a colon, not a block.",
  "language/not-a-value": "The entry takes a block in braces, not a value.",
  "language/operator-spelling": "Rules say and, or, not, is and in; comparison is < <= > >= and =.",
  "language/outside-declaration":
    "Text stands outside of any declaration. One begins with workshop, part, build, standard, rule or record, first on its line.",
  "language/quoted-key": "Keys are written without quotes.",
  "language/repeated":
    "The same thing is stated twice in one block. The first statement counts; one of the two has to go.",
  "language/second-title": "A declaration has one title in quotes.",
  "language/single-quotes": "Text stands in double quotes.",
  "language/settings-before-or":
    "Settings belong to a slot and not to one of the parts that or joins. They stand once, behind the last of the parts, and count for all of them; parts that are set up differently are two builds.",
  "language/square-brackets": "A list has no brackets: its items have commas between them.",
  "language/stray-brace": "A } closes nothing.",
  "language/stray-quote": "A quote stands inside a word. Text opens at a word's start and has a quote at both ends.",
  "language/thousands-comma": "Thousands have no comma: GBP 3200. A comma separates the items of a list.",
  "language/too-long": "Declarations beyond a certain length are read only up to there.",
  "language/trailing-comma": "An entry ends with its line; there is no comma after it.",
  "language/unclosed-text": "A text in quotes ends on the line it began on.",
  "language/unexpected": "Something stands here that does not belong; the message says what is expected.",
  "language/unknown-declaration":
    "A declaration begins with workshop, part, build, standard, rule or record. Another word begins this one.",
  "language/unknown-field":
    "The name is none of the fields that may stand here. The shop's own data goes into a block named own.",
  "language/unquoted-address": "An address goes in quotes, since // begins a comment.",
  "language/unread-file":
    "The file could not be read, so nothing in it is known; whatever names a part of it cannot be checked.",
  "language/unreadable": "The characters begin nothing that could be read.",
};
