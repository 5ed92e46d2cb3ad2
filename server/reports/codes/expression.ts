/** Codes of expressions in house rules: what does not go together is said before any build is looked at. */
export const expressionCodes: Readonly<Record<string, string>> = {
  "expression/arguments": "A function of an expression takes so many values of such a kind.",
  "expression/currency":
    "Sums of two currencies are neither compared nor added up: no rate of exchange is kept, and one would be a guess.",
  "expression/definition": "An expression is given a name by let: NAME = EXPRESSION, each name once.",
  "expression/dimension":
    "What is compared or added up has to measure the same thing. A number beside a quantity needs its unit.",
  "expression/list":
    "A list is no single value: in asks whether something is in it, and functions say what it comes to.",
  "expression/no-requirement": "A rule says under require what has to be true of a build.",
  "expression/not-settable":
    "A rule can set how a part is installed, a field of the build, or which part is fitted; facts of parts and worked-out numbers it cannot.",
  "expression/range":
    "A range of what is allowed is no number: in asks whether something is inside, min and max are its ends.",
  "expression/type": "A number, a name, and yes or no are three things; here another one is expected.",
  "expression/unknown-function": "No function of expressions has that name.",
  "expression/unknown-path":
    "No build has anything under that path. Paths name a slot, a fact of its part, how it is installed, a field of the build, or a worked-out number.",
  "expression/unknown-word": "The word is not among those that the field can have, so that the comparison never holds.",
};
