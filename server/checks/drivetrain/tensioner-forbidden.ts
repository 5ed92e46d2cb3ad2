import { fact, type Known, optional, slot } from "../../model/need.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { backPedalled, backPedalNeeds } from "../shared/hub-brake.ts";

export default defineCheck({
  code: "drivetrain/tensioner-forbidden",
  title: "Nothing sprung takes up the chain where the rider pedals backward against it",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    ...backPedalNeeds,
    derailleur: optional(slot("drivetrain.rear-derailleur")),
    tensioner: optional(slot("drivetrain.chain-tensioner")),
    tension: optional(fact("drivetrain.chain-tensioner", "tension")),
    forbids: optional(fact("frame", "forbids")),
  }),
  test(facts) {
    const { derailleur, tensioner, tension, forbids } = facts;
    const back = backPedalled(facts);
    const sprung: { part: Known; fact: Known; slot: SlotPath } | undefined =
      derailleur.state === "known"
        ? { part: derailleur, fact: derailleur, slot: "drivetrain.rear-derailleur" }
        : tensioner.state === "known" && tension.state === "known" && tension.value === "sprung"
          ? { part: tensioner, fact: tension, slot: "drivetrain.chain-tensioner" }
          : undefined;

    if (
      sprung &&
      sprung.slot === "drivetrain.chain-tensioner" &&
      forbids.state === "known" &&
      forbids.value.includes("sprung-tensioner")
    ) {
      return fails(
        `${forbids.subject} forbids a sprung tensioner, but ${sprung.part.subject} is one: take up the chain by the axle, or with a fixed tensioner.`,
        sprung.part,
        [forbids, sprung.fact],
        [
          { kind: "swap-part", slot: sprung.slot },
          { kind: "leave-empty", slot: sprung.slot },
        ],
      );
    }
    if (sprung && back.state === "known") {
      const what =
        sprung.slot === "drivetrain.rear-derailleur" ? "a rear derailleur's sprung cage" : "a sprung tensioner";
      return fails(
        `${back.what}, but ${sprung.part.subject} holds the chain with ${what}: pedalling backward pulls it straight and tears it off. Take up the chain by the axle, and leave ${sprung.part.subject} off.`,
        sprung.part,
        [back.fact, ...(sprung.fact === sprung.part ? [] : [sprung.fact])],
        [
          { kind: "leave-empty", slot: sprung.slot },
          { kind: "swap-part", slot: sprung.slot },
        ],
      );
    }
    if (back.state === "none") return notApplicable("nothing pulls the chain when the rider pedals backward");
    if (sprung) return back.state === "unknown" ? cannotTell(back) : notApplicable("nothing pulls the chain backward");
    const unknown = [derailleur, tensioner, tension].filter((one) => one.state === "unknown");
    if (back.state === "unknown") {
      // Without anything sprung it does not matter what the hub does.
      return unknown.length > 0 ? cannotTell(back, ...unknown) : notApplicable("nothing sprung takes up the chain");
    }
    if (unknown.length > 0) return cannotTell(...unknown);
    return holds(`${back.what}, and nothing sprung holds the chain.`);
  },
  explanation:
    "With a coaster brake, or a cog fixed to the wheel, the rider brakes by pedalling backward, and then the lower run of " +
    "the chain carries the whole force. A spring cannot hold that: the arm of a tensioner, or the cage of a derailleur, " +
    "is pulled straight, the brake does nothing until then, and the arm bends into the spokes. So the chain of such a " +
    "bike is tensioned by moving the axle, or by an eccentric at the cranks, and by nothing that gives.",
  source: "common practice, no source",
  caution:
    "A sprung tensioner with a coaster brake or a fixed cog lets the brake fail and can lock the rear wheel. It is never ridden.",
  examples: {
    holds: `
part hub example.hub "Back-pedal hub" { coaster-brake: yes }
part cassette example.cog "Cog 19" { cogs: 19 t }

build example "Tensioned by the axle" {
  drivetrain {
    rear-derailleur: none
    cassette: example.cog
  }
  rear-wheel.hub: example.hub
}
`,
    fails: `
part hub example.hub "Back-pedal hub" { coaster-brake: yes }
part cassette example.cog "Cog 19" { cogs: 19 t }
part chain-tensioner example.arm "Sprung arm" { tension: sprung }

build example "A spring against a coaster brake" {
  drivetrain {
    rear-derailleur: none
    cassette: example.cog
    chain-tensioner: example.arm
  }
  rear-wheel.hub: example.hub
}
`,
  },
});
