import { sizeCheck } from "../shared/size-mating.ts";

export default sizeCheck({
  code: "steering/stem-bar",
  title: "The stem clamps a bar of this diameter",
  safety: true,
  joints: {
    "stem-bar": {
      one: "is",
      other: "clamps",
      nothing: "clamps no bar",
      remedy: (bar, stem) => `fit a stem for ${bar}, or a bar of ${stem} at its middle.`,
      tolerance: 0.1,
    },
  },
  explanation:
    "A stem's faceplate is bored for one diameter of bar: 25.4, 26.0, 31.8 and 35 mm are the usual ones, and some look " +
    "alike. On a bar that is too thin the faceplate closes on its own edges and the bar turns under the hands. On one " +
    "that is too thick it touches at two lines and crushes or notches it. Half a millimetre is enough for either. " +
    "Sleeves that make a thin bar fit a wider clamp are used only where the stem's maker supplies them.",
  source: "Wikipedia, Stem (bicycle part), for the diameters in use; common practice, no source",
  caution:
    "A bar that slips or breaks in the stem takes the steering away. Faceplate gaps even, bolts in turns and to torque; the part makers' instructions come first.",
  examples: {
    holds: `
part stem example.stem "Stem 90" { bar-clamp: 26.0 mm }
part handlebar example.bar "Bar 42" { clamp-diameter: 26.0 mm }

build example "A bar of the stem's diameter" {
  cockpit { stem: example.stem; handlebar: example.bar }
}
`,
    fails: `
part stem example.stem "Stem 90" { bar-clamp: 26.0 mm }
part handlebar example.bar "Bar 58" { clamp-diameter: 25.4 mm }

build example "Six tenths of a millimetre too thin" {
  cockpit { stem: example.stem; handlebar: example.bar }
}
`,
  },
});
