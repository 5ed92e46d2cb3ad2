/** Codes of names and of what they stand for. */
export const modelCodes: Readonly<Record<string, string>> = {
  "model/alternate-named-twice": "A slot names the same part twice, joined by or; once is enough.",
  "model/derivation":
    "What derives from another by from must not come round to itself, and both have to be of one kind.",
  "model/duplicate-name":
    "Two declarations of one kind have the same name. Names are unique in a workshop, whatever file they stand in.",
  "model/expectation":
    "A rule comes out otherwise for a build than its own examples say. Either the rule or the example is to be mended.",
  "model/fact-in-build":
    "The field is a fact of the part, not of how it is installed: it is stated where the part is declared, so that it cannot differ from bike to bike.",
  "model/language-number": "The workshop is written for a later language than this program knows.",
  "model/none-among-alternates": "A slot has a part, or alternates of one, or none; none is no alternate.",
  "model/nothing-to-remove": "Nothing is inherited at the path that remove names.",
  "model/setting-without-part": "Settings say how a part is installed; the slot has none.",
  "model/shadows-built-in": "The workshop's own standard takes the place of one that comes with the program.",
  "model/unknown-build": "No build of that name is declared under the workshop's root.",
  "model/unknown-family": "No family of interfaces has that name.",
  "model/unknown-kind": "No kind of part has that name.",
  "model/unknown-part": "No part of that name is declared under the workshop's root.",
  "model/unknown-slot": "The setting names a slot that there is not, or that has no part in this build.",
  "model/unknown-standard":
    "No standard declares the code, so nothing can be compared with it. Codes that come with the program are listed by completion; a workshop declares its own with standard.",
  "model/wrong-kind": "The part is of a kind that does not go into this slot.",
};
