import { fact, type Known, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anySlot } from "../shared/end.ts";
import { isKind } from "../shared/kind.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

export default defineCheck({
  code: "drivetrain/single-speed-chain",
  title: "No chain or link for single-speeds runs through derailleurs",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    chain: slot("drivetrain.chain"),
    closure: optional(fact("drivetrain.chain", "closure")),
    cranked: optional(fact("drivetrain.chain", "half-link")),
    crankedLink: optional(fact("drivetrain.closure-link", "half-link")),
    rear: anySlot("drivetrain.rear-derailleur"),
    front: anySlot("drivetrain.front-derailleur"),
  }),
  test({ chain, closure, cranked, crankedLink, rear, front }) {
    if (isKind(chain.value, "belt")) return notApplicable("a belt is one closed loop");
    const faults: { readonly fact: Known; readonly says: string; readonly link?: true }[] = [
      ...(closure.state === "known" && closure.value === "spring-clip"
        ? [{ fact: closure, says: `${chain.subject} is closed by a spring clip` }]
        : []),
      ...(cranked.state === "known" && cranked.value
        ? [{ fact: cranked, says: `every link of ${chain.subject} is cranked` }]
        : []),
      ...(crankedLink.state === "known" && crankedLink.value
        ? [{ fact: crankedLink, says: `${crankedLink.subject} is a cranked half link`, link: true as const }]
        : []),
    ];
    const derailleurs = [rear, front].flatMap((one) => (one.state === "known" ? [one] : []));
    if (faults.length > 0 && derailleurs.length > 0) {
      const says = both(faults.map((fault) => fault.says));
      const onlyLink = faults.every(({ link }) => link);
      return fails(
        `${says.charAt(0).toUpperCase()}${says.slice(1)}, which is for single-speeds, but the chain runs through ${both(derailleurs.map(({ subject }) => subject))}: there it catches in the cage, or opens when the chain is bent sideways. Fit ${onlyLink ? "a straight closure link" : "a chain for derailleurs"}.`,
        onlyLink ? (faults[0]?.fact ?? chain) : chain,
        [...faults.map((fault) => fault.fact), ...derailleurs],
        swaps(onlyLink ? "drivetrain.closure-link" : "drivetrain.chain"),
      );
    }
    if (derailleurs.length === 0) {
      const open = faults.length > 0 ? unknowns(rear, front) : [];
      return open.length > 0 ? cannotTell(...open) : notApplicable("no derailleur is known to bend the chain");
    }
    const open = unknowns(closure);
    if (open.length > 0) return cannotTell(...open);
    return holds(`Neither ${chain.subject} nor what closes it is for single-speeds only.`);
  },
  explanation:
    "A link with a spring clip stands out at its side and is held by a sheet of spring steel: on a chain that is bent " +
    "sideways by a derailleur it meets the cage, the clip comes off, and the chain opens. Cranked half links bend at their " +
    "shoulders, are wider than a narrow chain, and do not shift. All of these are for chains that run in one line.",
  source: "common practice, no source; the chain maker's word decides",
  caution: "A chain that opens under load throws the rider.",
  examples: {
    holds: `
part chain example.chain "Chain" { closure: closure-link }
part rear-derailleur example.rear "Rear" { mount: M10x1 }

build example "A chain for derailleurs" {
  drivetrain { chain: example.chain; rear-derailleur: example.rear }
}
`,
    fails: `
part chain example.chain "Chain" { closure: spring-clip }
part rear-derailleur example.rear "Rear" { mount: M10x1 }

build example "A clip in a derailleur" {
  drivetrain { chain: example.chain; rear-derailleur: example.rear }
}
`,
  },
});
