import type { Repair } from "../../model/finding.ts";
import { fact, type Known, optional, setting } from "../../model/need.ts";
import { equal, greaterThan, lessThan } from "../../values/compare.ts";
import { showQuantity, showSeveral } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { brakePlaceNeeds, isMisplaced } from "../shared/brake-place.ts";
import { dimensionFact, dimensionOf } from "../shared/codes.ts";
import { anySlot } from "../shared/end.ts";
import { isKind } from "../shared/kind.ts";
import { jointNamed } from "../shared/mating.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { anyHolderFact, ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

/** A reversible plate moves the caliper by one size of rotor. */
const turned = 20;

export default defineCheck({
  code: "brake/rotor-size",
  title: "Mount and adapter hold the caliper where the rotor is",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...brakePlaceNeeds(place),
    rotor: anySlot(ofBrake(place.brake, "rotor")),
    diameter: optional(fact(ofBrake(place.brake, "rotor"), "diameter")),
    native: anyHolderFact<number>(place, "nativeRotor"),
    largest: anyHolderFact<number>(place, "largestRotor"),
    least: anyHolderFact<number>(place, "leastRotor"),
    change: optional(fact(ofBrake(place.brake, "adapter"), "rotor-change")),
    turnedFor: optional(setting(ofBrake(place.brake, "caliper"), "turned-for")),
  }),
  test({ rotor, diameter, native, largest, least, change, turnedFor, ...brake }, place) {
    const { caliper, adapter, offered } = brake;
    if (caliper.state === "none") return notApplicable("there is no caliper");
    if (caliper.state === "unknown") return cannotTell(caliper);
    if (isKind(caliper.value, "rim-brake")) return notApplicable(`${caliper.subject} brakes the rim`);
    const caliperSlot = ofBrake(place.brake, "caliper");
    const adapterSlot = ofBrake(place.brake, "adapter");
    const rotorSlot = ofBrake(place.brake, "rotor");
    if (rotor.state === "none") {
      return fails(
        `${caliper.subject} has no rotor to brake: the build says ${rotorSlot}: none. Fit a rotor.`,
        caliper,
        [],
        [{ kind: "insert-part", slot: rotorSlot }],
      );
    }
    if (diameter.state === "none") return notApplicable(`${diameter.path} is none`);
    if (rotor.state === "unknown" || diameter.state === "unknown") return cannotTell(...unknowns(rotor, diameter));
    const size = diameter.value;
    if (
      (largest.state === "known" && greaterThan(size, largest.value)) ||
      (least.state === "known" && lessThan(size, least.value))
    ) {
      return notApplicable(`${rotor.subject} is found to be beyond what ${place.holder} allows`);
    }
    if (isMisplaced(brake, jointNamed(`${place.name}-caliper-mount`), place)) {
      return notApplicable("the caliper is found not to fit its mount");
    }

    const flat = offered.state === "known" && dimensionOf<string>(offered.value, "form") === "flat";
    if (turnedFor.state === "known") {
      if (equal(turnedFor.value, size)) {
        return holds(`The plate of ${caliper.subject} is turned for ${turnedFor.written}, which is the rotor's size.`);
      }
      const [is, for_] = showSeveral([size, turnedFor.value], "length");
      return fails(
        `${rotor.subject} is ${is} across, but the plate of ${caliper.subject} is turned for ${for_}: turn it about, or fit a rotor of ${for_}.`,
        rotor,
        [diameter, turnedFor],
        [
          ...(equal(Math.abs(size - turnedFor.value), turned)
            ? [{ kind: "set-setting", slot: caliperSlot, setting: "turned-for", value: is ?? "" } as const]
            : []),
          ...swaps(rotorSlot),
        ],
      );
    }

    const byStandard = offered.state === "known" ? dimensionFact<number>(offered.value, "native-rotor") : undefined;
    const takes: Known<number> | undefined = native.state === "known" ? native : byStandard;
    if (adapter.state === "unknown") return cannotTell(adapter);
    const adds = change.state === "known" ? change.value : 0;
    const unknown = unknowns(...(takes ? [] : [native, offered]), ...(adapter.state === "known" ? [change] : []));
    if (unknown.length > 0) return cannotTell(...unknown);
    if (!takes) return notApplicable("the mount names no rotor that it takes by itself");
    const held = takes.value + adds;
    const [is, alone, more, sum] = showSeveral([size, takes.value, adds, held], "length");
    const sits =
      adapter.state === "known"
        ? `${takes.subject} takes ${alone} and ${adapter.subject} adds ${more}, ${sum} together`
        : `${takes.subject} takes ${alone} by itself`;
    if (equal(held, size)) return holds(`${rotor.subject} is ${is} across; ${sits}.`);

    const needed = size - takes.value;
    const by = showQuantity(Math.abs(size - held) / 2, "length");
    const wrong = greaterThan(size, held)
      ? `the caliper sits ${by} too far in and meets the rotor`
      : `the caliper sits ${by} too far out, and the pads overhang the rotor`;
    const smaller = greaterThan(takes.value, size);
    const remedy = smaller
      ? `No adapter brings it in: fit a rotor of ${sum}.`
      : `Fit ${equal(needed, 0) ? "no adapter" : `an adapter of ${showQuantity(needed, "length")}`}, or a rotor of ${sum}.`;
    const adapters: readonly Repair[] = smaller
      ? []
      : equal(needed, 0)
        ? [{ kind: "leave-empty", slot: adapterSlot }]
        : [{ kind: "insert-part", slot: adapterSlot }];
    return fails(
      `${rotor.subject} is ${is} across, but ${sits}: ${wrong}. ${remedy}`,
      rotor,
      [diameter, takes, ...(change.state === "known" ? [change] : [])],
      [
        ...(flat && equal(Math.abs(size - held), turned)
          ? [{ kind: "set-setting", slot: caliperSlot, setting: "turned-for", value: is ?? "" } as const]
          : []),
        ...adapters,
        ...swaps(rotorSlot),
      ],
    );
  },
  explanation:
    "The height of a mount's posts, or its flat face, holds the caliper for one size of rotor. An adapter moves it outward " +
    "for a larger one, by half the difference; none brings it in for a smaller one. Sizes that look alike do not " +
    "interchange: 200 and 203 mm differ by 1.5 mm at the pads. On many flat mounts a plate under the caliper is turned " +
    "about for 140 or 160 mm, which the build states as turned-for. Pads that overhang the rotor wear to a step and jam; a " +
    "caliper too far in does not go over it.",
  source: "arithmetic: shift is half the difference of the rotors; common practice, no source",
  caution:
    "A caliper that sits wrong wears its pads to a step and can lock or lose the wheel. Each brake is tested alone before anyone rides.",
  examples: {
    holds: `
part fork example.fork "Fork" { brake-mount: post-74; native-rotor: 165 mm }
part brake-adapter example.bridge "Bridge 20" { sits-on: post-74; offers: post-74; rotor-change: 20 mm }
part caliper example.caliper "Caliper" { mount: post-74 }
part rotor example.rotor "Rotor 185" { diameter: 185 mm }

build example "One size up" {
  fork: example.fork
  front-brake { caliper: example.caliper; adapter: example.bridge; rotor: example.rotor }
  rear-brake.caliper: none
}
`,
    fails: `
part fork example.fork "Fork" { brake-mount: post-74; native-rotor: 165 mm }
part caliper example.caliper "Caliper" { mount: post-74 }
part rotor example.rotor "Rotor 185" { diameter: 185 mm }

build example "Without the adapter" {
  fork: example.fork
  front-brake { caliper: example.caliper; rotor: example.rotor }
  rear-brake.caliper: none
}
`,
  },
});
