import { cannotTell, fails, holds } from "../../checks/define.ts";
import { ofBrake, wheelPlaces } from "../../checks/shared/wheel-places.ts";
import { fact, type Known, optional } from "../../model/need.ts";
import { lessThan } from "../../values/compare.ts";
import { showPair, showSeveral } from "../../values/show.ts";
import { defineComparison, judged } from "../define.ts";
import { isWithin, toleranceAt } from "../tolerance.ts";

export default defineComparison({
  code: "record/rotor-thickness",
  title: "The rotor is not worn out",
  severity: "error",
  safety: true,
  restsOn: "spec",
  instances: wheelPlaces.map(({ name, brake }) => ({ name, brake, path: `${brake}.rotor-thickness` })),
  needs: ({ brake }) => ({
    least: fact(ofBrake(brake, "rotor"), "least-thickness"),
    fresh: optional(fact(ofBrake(brake, "rotor"), "thickness")),
  }),
  test(measured: Known<number>, { least, fresh }, { path }) {
    const [is, limit] = showPair(measured.value, least.value, "length");
    const expected = `at least ${limit}`;
    if (lessThan(measured.value, least.value)) {
      return judged(
        fails(
          `The rotor is ${is} thick where it is thinnest, and ${least.subject} is replaced below ${limit}: fit a new one before anybody rides.`,
          measured,
          [least],
        ),
        expected,
      );
    }
    if (fresh.state === "unknown") return judged(cannotTell(fresh), expected);
    if (fresh.state === "known" && measured.value > fresh.value) {
      if (!isWithin(toleranceAt(path, "fresh"), measured.value, fresh.value)) {
        const [thick, fit] = showPair(measured.value, fresh.value, "length");
        return judged(
          fails(
            `The rotor is measured as ${thick}, thicker than ${fresh.subject} is when new, ${fit}: measure the brake track itself, or it is another rotor.`,
            measured,
            [fresh],
            [],
            { severity: "warning" },
          ),
          expected,
        );
      }
    }
    const [thick = is, least_ = limit, when] = showSeveral(
      [measured.value, least.value, ...(fresh.state === "known" ? [fresh.value] : [])],
      "length",
    );
    return judged(
      holds(
        `The rotor is ${thick} thick where it is thinnest${when === undefined ? "" : `, of ${when} when new`}; ${least.subject} is replaced below ${least_}.`,
        (measured.value - least.value) / least.value,
      ),
      expected,
    );
  },
  explanation:
    "Pads wear a rotor thin where they run, and its maker says at which thickness it is replaced. Below that it warps and " +
    "cracks when it is hot, and the pistons come out so far that one can leave its seal. It is measured with a micrometer " +
    "on the brake track, at several places, since a rule or a calliper with broad jaws misses the hollow. A reading well " +
    "above the thickness when new is a slip or another rotor.",
  source: "the rotor maker's own figures",
  caution: "A rotor worn below its least thickness can crack or let a piston leave its seal, and the brake fails.",
  examples: {
    holds: `
part rotor example.rotor "Rotor" { thickness: 1.8 mm; least-thickness: 1.5 mm }

build example "Rotor" {
  front-brake.rotor: example.rotor
}

record "A-1" of example {
  front-brake.rotor-thickness: 1.62 mm
}
`,
    fails: `
part rotor example.rotor "Rotor" { thickness: 1.8 mm; least-thickness: 1.5 mm }

build example "Rotor" {
  front-brake.rotor: example.rotor
}

record "A-1" of example {
  front-brake.rotor-thickness: 1.45 mm
}
`,
  },
});
