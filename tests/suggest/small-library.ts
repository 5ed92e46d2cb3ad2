import fc from "fast-check";
import { Engine } from "../../server/engine/engine.ts";
import type { Assembly } from "../../server/model/assembly.ts";
import { prelude } from "../../server/standards/index.ts";

const uri = "memory:///small.ferrule";

/** A workshop with one build named `example`. */
export function workshopOf(text: string): Engine {
  const engine = new Engine({ today: "2026-11-25", prelude });
  engine.update([{ uri, text }]);
  engine.complete = true;
  const slips = engine.findings(uri).filter(({ code }) => /^(language|value|model)\//.test(code));
  if (slips.length > 0) throw new Error(`${slips.map(({ message }) => message).join("\n")}\nin\n${text}`);
  return engine;
}

export function exampleOf(engine: Engine): Assembly {
  const build = engine.workshop.build("example");
  if (!build) throw new Error("there is no build example");
  return engine.assemble(build);
}

const sums = fc.record({
  mass: fc.option(fc.integer({ min: 100, max: 600 }), { freq: 12, nil: undefined }),
  price: fc.option(
    fc.tuple(fc.constantFrom("GBP", "GBP", "GBP", "GBP", "GBP", "GBP", "EUR"), fc.integer({ min: 10, max: 300 })),
    {
      freq: 8,
      nil: undefined,
    },
  ),
});

type Sums = { readonly mass: number | undefined; readonly price: [string, number] | undefined };

function sumsText({ mass, price }: Sums): string {
  return `${mass === undefined ? "" : `; mass: ${mass} g`}${price === undefined ? "" : `; price: ${price[0]} ${price[1]}`}`;
}

const cogs = fc.constantFrom(
  "11-13-15-17-19-21-24-28",
  "11-13-15-18-21-24-28-34",
  "11-13-15-18-22-27-34-42",
  "12-14-16-18-20-22-24-26",
  "11-13-15-17-19-21-23-25-28",
);

function several(part: (index: number) => fc.Arbitrary<string>): fc.Arbitrary<readonly string[]> {
  return fc.integer({ min: 2, max: 4 }).chain((count) => fc.tuple(...Array.from({ length: count }, (_, i) => part(i))));
}

const cassettes = several((index) =>
  fc.tuple(cogs, fc.constantFrom("stepped-driver", "nine-spline-driver"), sums).map(([list, freehub, rest]) => {
    const speeds = list.split("-").length;
    return `part cassette a.cassette-${index} { speeds: ${speeds}; cogs: ${list} t; freehub: ${freehub}${sumsText(rest)} }`;
  }),
);
const derailleurs = several((index) =>
  fc
    .tuple(fc.constantFrom(28, 34, 42), fc.constantFrom(20, 33, 45), sums)
    .map(
      ([largest, capacity, rest]) =>
        `part rear-derailleur a.arm-${index} { speeds: 8; set-up: cable; largest-cog: ${largest} t; total-capacity: ${capacity} t; chain-allowance-rigid: 2${sumsText(rest)} }`,
    ),
);
const rings = several((index) =>
  fc
    .tuple(fc.constantFrom(28, 32, 38, 44), fc.constantFrom("104x4", "64x4"), sums)
    .map(
      ([teeth, mount, rest]) =>
        `part chainring a.ring-${index} { teeth: ${teeth} t; ring-mount: ${mount}; ring-place: single${sumsText(rest)} }`,
    ),
);
const hubs = several((index) =>
  fc
    .tuple(fc.constantFrom("stepped-driver", "nine-spline-driver"), sums)
    .map(([freehub, rest]) => `part hub a.hub-${index} { wheel: rear; freehub: ${freehub}${sumsText(rest)} }`),
);

export const smallSlots = [
  "drivetrain.rear-derailleur",
  "drivetrain.cassette",
  "drivetrain.chainring",
  "rear-wheel.hub",
] as const;

/** Where a second ring could be added, moved over by hand: left out, so that every set of parts can still be tried. */
export const keptSlots = ["drivetrain.inner-chainring", "drivetrain.middle-chainring"] as const;

/** A build of the first parts of each kind, and a few others of each: some fit, some do not, some state too little. */
export const smallWorkshop: fc.Arbitrary<string> = fc
  .record({ cassettes, derailleurs, rings, hubs, links: fc.integer({ min: 50, max: 60 }) })
  .map(
    ({ cassettes: a, derailleurs: b, rings: c, hubs: d, links }) => `workshop small "Small" {
  language: 1
  currency: GBP
}

part frame a.frame { chainstay: 420 mm; rear-travel: none; mass: 2000 g; price: GBP 300 }
part crankset a.crank { ring-mount: 104x4; mass: 600 g; price: GBP 90 }
part chain a.chain { links-supplied: 126; mass: 250 g; price: GBP 20 }
${[...a, ...b, ...c, ...d].join("\n")}

build example {
  category: touring
  frame: a.frame
  drivetrain {
    crankset: a.crank
    chainring: a.ring-0
    cassette: a.cassette-0
    rear-derailleur: a.arm-0
    front-derailleur: none
    chain: a.chain { links: ${links * 2} }
  }
  rear-wheel.hub: a.hub-0
}
`,
  );

/** A target that the small workshops may meet or not. */
export const smallTargets: fc.Arbitrary<readonly string[]> = fc.uniqueArray(
  fc.oneof(
    fc.integer({ min: 3500, max: 4100 }).map((mass) => `mass <= ${mass} g`),
    fc.integer({ min: 600, max: 1000 }).map((price) => `price <= GBP ${price}`),
    fc.constantFrom("0.7", "0.85", "1", "1.2").map((ratio) => `lowest-ratio <= ${ratio}`),
    fc.constantFrom("2.5", "3", "3.6").map((ratio) => `highest-ratio >= ${ratio}`),
  ),
  { minLength: 1, maxLength: 2, selector: (target) => target.split(" ")[0] },
);
