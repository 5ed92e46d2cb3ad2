import { type MatingWords, matingCheck } from "../shared/mating.ts";

function words(where: string): MatingWords {
  return {
    one: `has at its ${where} end`,
    other: "takes",
    nothing: "takes no hose",
    remedy: `fit a hose with that fitting at the ${where}, or the fitting of that maker.`,
  };
}

export default matingCheck({
  code: "brake/hose",
  title: "The hose's fittings are those of lever and caliper",
  safety: true,
  caution: "Each brake is squeezed hard for ten seconds alone, and looked over for leaks, before anyone rides.",
  joints: {
    "front-hose-lever": words("lever"),
    "front-hose-caliper": words("caliper"),
    "rear-hose-lever": words("lever"),
    "rear-hose-caliper": words("caliper"),
  },
  explanation:
    "Hoses are sealed at the lever by an olive and an insert, or at the caliper by a banjo with a bolt. Olives, inserts and " +
    "threads look much alike and differ by tenths of a millimetre between makers: a wrong olive seals at first and lets go " +
    "when the brake is squeezed hard. So hose, olive, insert and nut come from one maker's kit for that brake. An olive is " +
    "used once.",
  source: "common practice, no source; the brake makers' kits decide",
  examples: {
    holds: `
standard hose-fitting valley-olive { form: olive; source: "this example" }
part brake-lever example.lever "Lever" { hose-fitting: valley-olive }
part caliper example.caliper "Caliper" { hose-fitting: valley-olive }
part hose example.hose "Hose" { lever-fitting: valley-olive; caliper-fitting: valley-olive }

build example "One maker's fittings" {
  front-brake { lever: example.lever; caliper: example.caliper; hose: example.hose }
}
`,
    fails: `
standard hose-fitting valley-olive { form: olive; source: "this example" }
standard hose-fitting ridge-banjo { form: banjo; source: "this example" }
part brake-lever example.lever "Lever" { hose-fitting: valley-olive }
part caliper example.caliper "Caliper" { hose-fitting: ridge-banjo }
part hose example.hose "Hose" { lever-fitting: valley-olive; caliper-fitting: valley-olive }

build example "An olive for a banjo" {
  front-brake { lever: example.lever; caliper: example.caliper; hose: example.hose }
}
`,
  },
});
