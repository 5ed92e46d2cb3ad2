import { stated } from "../../calculations/shared/maybe.ts";
import type { Installed } from "../../model/assembly.ts";
import type { Repair } from "../../model/finding.ts";
import { fact, type Known, type Maybe, type Need, optional, setting, slot, type Unknown } from "../../model/need.ts";
import { showInterval } from "../../values/show.ts";
import type { Interval } from "../../values/types.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";

/** A clamp that may close on carbon: whose material it is, and what is said of every such clamp. */
type ClampNeeds = {
  readonly held: Need<Installed, true>;
  readonly material: Need<string, true>;
  /** Torque that the carbon bears there. */
  readonly bears: Need<Interval, true>;
  readonly treatment: Need<string, true>;
};

/** What is said of some of them only. */
interface OwnFacts {
  /** Whether controls may be clamped there at all. */
  readonly clamping?: Maybe<boolean>;
  readonly heldPaste?: Maybe<boolean>;
  readonly clampPaste?: Maybe<boolean>;
  readonly forbids?: Maybe<readonly string[]>;
}

type OwnNeeds = {
  readonly [K in keyof OwnFacts]: OwnFacts[K] extends Maybe<infer Value> | undefined ? Need<Value, true> : never;
};

const bar = "cockpit.handlebar";
const stem = "cockpit.stem";

const clamps = {
  "bar in stem": {
    held: optional(slot(bar)),
    material: optional(fact(bar, "material")),
    bears: optional(fact(bar, "stem-clamp-torque")),
    treatment: optional(setting(bar, "stem-clamp-treatment")),
    heldPaste: optional(fact(bar, "friction-paste-allowed")),
    clampPaste: optional(fact(stem, "friction-paste-allowed")),
  },
  "controls on bar": {
    held: optional(slot(bar)),
    material: optional(fact(bar, "material")),
    bears: optional(fact(bar, "control-clamp-torque")),
    treatment: optional(setting(bar, "control-clamp-treatment")),
    clamping: optional(fact(bar, "control-clamping")),
    heldPaste: optional(fact(bar, "friction-paste-allowed")),
  },
  "stem on steerer": {
    held: optional(slot("fork")),
    material: optional(fact("fork", "steerer-material")),
    bears: optional(fact("fork", "steerer-clamp-torque")),
    treatment: optional(setting(stem, "steerer-clamp-treatment")),
    clampPaste: optional(fact(stem, "friction-paste-allowed")),
    forbids: optional(fact("fork", "forbids")),
  },
} as const satisfies Record<string, ClampNeeds & OwnNeeds>;

const instances = [
  { name: "bar in stem", owner: bar, setting: "stem-clamp-treatment" },
  { name: "controls on bar", owner: bar, setting: "control-clamp-treatment" },
  { name: "stem on steerer", owner: stem, setting: "steerer-clamp-treatment" },
] as const;

export default defineCheck({
  code: "cockpit/carbon-clamp",
  title: "Carbon is clamped as its maker allows",
  severity: "error",
  since: 1,
  safety: true,
  instances,
  needs: ({ name }): ClampNeeds => clamps[name],
  test({ held, material, bears, treatment, ...rest }, { name, owner, setting: how }) {
    const { clamping, heldPaste, clampPaste, forbids }: OwnFacts = rest;
    if (held.state === "none") return notApplicable(`${held.path} is none`);
    if (held.state === "unknown") return cannotTell(held);
    if (material.state === "unknown") return cannotTell(material);
    if (material.state === "none" || material.value !== "carbon")
      return notApplicable(`${held.subject} is not carbon there`);
    const swap = swaps(name === "stem on steerer" ? "fork" : bar);
    if (clamping?.state === "known" && !clamping.value) {
      return fails(
        `${held.subject} is carbon, and its maker allows no controls to be clamped on it: fit a bar on which they may be.`,
        held,
        [material, clamping],
        swap,
      );
    }

    const treated = stated(treatment);
    const refusing = [heldPaste, clampPaste].flatMap((allowed) => (isNo(allowed) ? [allowed] : []));
    const forbidden: readonly Known[] =
      forbids?.state === "known" && forbids.value.includes("friction-paste") ? [forbids] : refusing;
    const set = (value: string): Repair => ({ kind: "set-setting", slot: owner, setting: how, value });
    if (
      treatment.state === "known" &&
      (treated === "grease" || treated === "anti-seize" || treated === "threadlocker")
    ) {
      return fails(
        `${held.subject} is carbon there, and the build puts ${treated} under the clamp: it slips, and harms the resin. Leave it ${forbidden.length > 0 ? "clean and dry" : "dry, or use friction paste where both makers allow it"}.`,
        held,
        [material, treatment],
        [set("dry"), ...(forbidden.length > 0 ? [] : [set("friction-paste")])],
      );
    }
    if (treatment.state === "known" && treated === "friction-paste" && forbidden.length > 0) {
      return fails(
        `The build puts friction paste between ${held.subject} and its clamp, which ${both([...new Set(forbidden.map(({ subject }) => subject))])} ${forbidden.length > 1 ? "do" : "does"} not allow: leave it clean and dry.`,
        held,
        [treatment, ...forbidden],
        [set("dry")],
      );
    }

    const unknown: Unknown[] = [bears, treatment, clamping].flatMap((one) => (one?.state === "unknown" ? [one] : []));
    // Dry is always allowed; paste, or the choice between the two, turns on what both makers say.
    if (treated !== "dry" && forbidden.length === 0) {
      unknown.push(...[heldPaste, clampPaste, forbids].flatMap((one) => (one?.state === "unknown" ? [one] : [])));
    }
    if (unknown.length > 0) return cannotTell(...unknown);
    const torque = bears.state === "known" ? `, ${showInterval(bears.value, "torque")} by its maker` : "";
    const paste =
      treated === "dry" || forbidden.length > 0
        ? "clean and dry"
        : treated === "friction-paste"
          ? "with friction paste"
          : "friction paste is allowed";
    return holds(`${held.subject} is carbon there: ${paste}${torque}.`);
  },
  explanation:
    "Carbon is strong along its fibres and weak where it is squeezed. It is clamped only where its maker says that it may " +
    "be, and to no more than its maker's torque. Friction paste lets a clamp hold at a lower torque, but some makers " +
    "forbid it on their bars, stems or steerers, and then the joint stays clean and dry. Grease makes it slip, and may " +
    "harm the resin. Controls are tightened so that they hold, and where their maker says so still turn in a fall. " +
    "Whether the torques of both parts agree is asked elsewhere.",
  source: "common practice, no source; the makers' instructions decide",
  caution:
    "Carbon that was crushed, scored or crashed on breaks without warning: a part in doubt is retired. The part makers' instructions come first.",
  examples: {
    holds: `
part handlebar example.light "Light 780" {
  material: carbon
  friction-paste-allowed: yes
  control-clamping: yes
  stem-clamp-torque: <= 5 N·m
  control-clamp-torque: <= 3 N·m
}
part stem example.stub "Stub 50" { friction-paste-allowed: yes }
part fork example.air "Air 130" { steerer-material: aluminium }

build example "Paste where both makers allow it" {
  fork: example.air
  cockpit {
    stem: example.stub
    handlebar: example.light { stem-clamp-treatment: friction-paste }
  }
}
`,
    fails: `
part handlebar example.light "Light 780" {
  material: carbon
  friction-paste-allowed: no
  stem-clamp-torque: <= 5 N·m
}
part stem example.stub "Stub 50" { friction-paste-allowed: yes }

build example "Paste that the bar's maker forbids" {
  cockpit {
    stem: example.stub
    handlebar: example.light { stem-clamp-treatment: friction-paste }
  }
}
`,
  },
});

function isNo(allowed: Maybe<boolean> | undefined): allowed is Known<boolean> {
  return allowed?.state === "known" && !allowed.value;
}
