import { matingCheck } from "../shared/mating.ts";

export default matingCheck({
  code: "drivetrain/spindle",
  title: "The crank bearings carry the spindle of the cranks",
  caution: "A crank on the wrong spindle comes loose or splits, and can throw the rider.",
  joints: {
    spindle: {
      one: "needs",
      other: "carries",
      nothing: "carries no spindle",
      remedy: "fit a bottom bracket for that spindle, or cranks for that bottom bracket.",
    },
  },
  explanation:
    "The bearings are made for one spindle: a round one of 24, 29 or 30 mm that comes with the cranks, a stepped " +
    "one, or their own with square or splined ends. Diameters a millimetre apart do not pass, or knock about. The " +
    "two standards of square taper look the same, but a crank of one goes too far onto the other or not far " +
    "enough, and splits or comes loose. A 30 mm spindle leaves no room for bearings inside a shell of 34.8 mm, so " +
    "that its bearings stand outside. The frame's shell is another question.",
  source: "from memory; the makers' own statements decide",
  examples: {
    holds: `
part crankset example.crank "Crank 24" { spindle: round-24 }
part bottom-bracket example.cups "Cups 24" { spindle: round-24 }

build example "A spindle in its bearings" {
  drivetrain {
    crankset: example.crank
    bottom-bracket: example.cups
  }
}
`,
    fails: `
part crankset example.crank "Crank JIS" { spindle: square-taper-JIS }
part bottom-bracket example.cups "Cartridge ISO" { spindle: square-taper-ISO }

build example "Two tapers that look alike" {
  drivetrain {
    crankset: example.crank
    bottom-bracket: example.cups
  }
}
`,
  },
});
