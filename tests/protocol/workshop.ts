import { library } from "../language-features/support.ts";

/** A workshop on the disk: its file, a library, and a build whose cage is too short for its cogs. */
export const workshopFiles: Readonly<Record<string, string>> = {
  "workshop.ferrule": `workshop north-yard "North Yard Cycles" {\n  language: 1\n  currency: GBP\n}\n`,
  "parts/drivetrain.ferrule": library,
  "builds/fellside.ferrule": `build fellside-l "Fellside, large" {
  category: mountain
  frame: moor.fellside-l

  drivetrain {
    rear-derailleur: corrie.short-12
    hanger: moor.eye
    cassette: corrie.wide-10-52
    crankset: corrie.arm-32
  }
}
`,
};
