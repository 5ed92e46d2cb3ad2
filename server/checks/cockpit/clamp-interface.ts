import type { Installed } from "../../model/assembly.ts";
import { label } from "../../model/facts.ts";
import type { Repair } from "../../model/finding.ts";
import { type Known, type Maybe, type Need, optional, setting, slot, type Unknown } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable, type Verdict } from "../define.ts";
import { lacksDimension, showCode, showCodes } from "../shared/codes.ts";
import { type ControlSlot, clampForm, controls, hosts, levers } from "../shared/controls.ts";
import { anyFact, anySetting, anySlot, readEnd } from "../shared/end.ts";
import { either } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";

/** Everything on the bar that may lend its clamp, with what it offers and which clamp it uses itself. */
type HostNeeds = Record<`part ${SlotPath}`, Need<Installed, true>> &
  Record<`offers ${SlotPath}`, Need<readonly ResolvedCode[], true>> &
  Record<`clamp ${SlotPath}`, Need<string, true>> &
  Record<`mount ${SlotPath}`, Need<ResolvedCode, true>> &
  Record<`side ${SlotPath}`, Need<string, true>>;

type HostFacts = {
  readonly [K in keyof HostNeeds]: HostNeeds[K] extends Need<infer Value, true> ? Maybe<Value> : never;
};

const hostNeeds = Object.fromEntries(
  hosts.flatMap((path) => [
    [`part ${path}`, optional(slot(path))],
    [`offers ${path}`, anyFact(path, "clamp-offers")],
    [`mount ${path}`, anyFact(path, "mount")],
    [`clamp ${path}`, anySetting(path, "clamp")],
    [`side ${path}`, anySetting(path, "side")],
  ]),
) as unknown as HostNeeds;

export default defineCheck({
  code: "cockpit/clamp-interface",
  title: "Each control has a clamp of its own, or shares one that is made for it",
  severity: "error",
  since: 1,
  instances: controls,
  needs: ({ slot: path }) => ({
    ...hostNeeds,
    part: anySlot(path),
    mount: anyFact<ResolvedCode>(path, "mount"),
    clamp: optional(setting(path, "clamp")),
    actuation: anyFact<string>(path, "actuation"),
    moved: anySlot(
      path === "drivetrain.front-controller" ? "drivetrain.front-derailleur" : "drivetrain.rear-derailleur",
    ),
  }),
  test({ part, mount, clamp, actuation, moved, ...rest }, { slot: path }) {
    const control = readEnd(part, mount, "mount");
    if (control.state === "empty") return notApplicable(`${path} is none`);
    if (control.state === "unknown") return cannotTell(control.unknown);
    if (control.state !== "known") return notApplicable(`${control.part.subject} states no mount`);
    if (clamp.state === "unknown") return cannotTell(clamp);
    const bar = new Bar(rest as unknown as HostFacts);
    if (isLever(control.part) && actuation.state === "none") {
      const without = `${control.part.subject} has no shift control in it`;
      if (moved.state === "known") return notApplicable(`${without}, which is found as such`);
      return fails(`${without}: fit a controller, or a lever with one built in.`, control.part, [], swaps(path));
    }
    if (isLever(control.part)) return leverNamedAgain(control.part, clamp, bar, path);
    const form = clampForm(control.fact.value);
    if (form === undefined) return cannotTell(lacksDimension(control.fact.value, "form"));
    if (form === "shared") return shared(control.part, control.fact, clamp, bar, path);
    if (form === "built-in") return builtIn(control.part, control.fact, clamp, bar, path);
    if (clamp.state === "none") {
      return holds(`${control.part.subject} has ${showCode(control.fact.value)}, and shares no clamp.`);
    }
    return fails(
      `${control.part.subject} has ${showCode(control.fact.value)}, but the build hangs it on the clamp of ${clamp.value}: leave clamp out, or fit a control that shares that clamp.`,
      control.part,
      [control.fact, clamp, ...bar.offersOf(clamp.value)],
      [{ kind: "set-setting", slot: path, setting: "clamp", value: "none" }, ...swaps(path)],
    );
  },
  explanation:
    "A shift control, or the remote of a dropper, is held in one of three ways: by a band of its own round the bar, on a " +
    "fitting that it shares with the brake lever's clamp, or by being part of the lever. Shared fittings are each " +
    "maker's own, so that a control for one does not go on the lever of another without an adapter or another band. A " +
    "control made for a shared clamp has no band: without the lever that carries it, it hangs on nothing. One clamp " +
    "carries one control: two that are planned on the same lever want one of them moved to the other side, or a band.",
  source: "common practice, no source; the makers' own statements decide",
  caution: "A control that is not held turns on the bar when it is used, and takes the brake lever with it.",
  examples: {
    holds: `
standard control-clamp example.fitting "Fitting on the lever's clamp" { form: shared; source: "this example" }
part brake-lever example.stop "Stop" { clamp-offers: example.fitting }
part shift-controller example.pod "Pod" { mount: example.fitting }

build example "A control on the lever's clamp" {
  rear-brake.lever: example.stop { side: right }
  drivetrain {
    rear-controller: example.pod { clamp: rear-brake.lever }
    front-controller: none
  }
  seat.remote: none
}
`,
    fails: `
standard control-clamp example.fitting "Fitting on the lever's clamp" { form: shared; source: "this example" }
part brake-lever example.stop "Stop" { clamp-offers: example.fitting }
part shift-controller example.pod "Pod" { mount: example.fitting }
part remote example.drop "Drop" { serves: dropper; mount: example.fitting }

build example "Two controls on one clamp" {
  rear-brake.lever: example.stop { side: right }
  drivetrain.rear-controller: example.pod { clamp: rear-brake.lever }
  seat.remote: example.drop { clamp: rear-brake.lever }
}
`,
  },
});

/** A shift control without a band: the named clamp exists, is made for it, and carries nothing else. */
function shared(
  part: Known<Installed>,
  mount: Known<ResolvedCode>,
  clamp: Maybe<string>,
  bar: Bar,
  path: ControlSlot,
): Verdict {
  const needs = `${part.subject} is held by ${showCode(mount.value)}`;
  const free = bar.freeFor(mount.value, path);
  if (clamp.state !== "known") {
    if (free.length === 0 && bar.openLevers().length > 0) return cannotTell(...bar.openLevers());
    return fails(
      free.length > 0
        ? `${needs} and has no band of its own, but the build does not say whose clamp it shares: write clamp: ${free[0]}.`
        : `${needs} and has no band of its own, but nothing on the bar has such a clamp free: fit a lever that offers it, or a control with a band.`,
      part,
      [mount, ...bar.allOffers()],
      [
        ...share(path, free),
        ...swaps(path),
        ...(free.length > 0 ? [] : bar.levers().map((lever) => lend(path, lever))),
      ],
    );
  }
  const host = clamp.value;
  const hostPart = bar.part(host, path);
  if (hostPart?.state === "unknown") return cannotTell(hostPart);
  if (!hostPart || !isSlot(host)) {
    return fails(
      `The build hangs ${part.subject} on the clamp of ${host}, but nothing there has a clamp to share: name the lever or control that carries it.`,
      part,
      [clamp, mount],
      [...share(path, free), ...swaps(path)],
    );
  }
  const offers = bar.offers(host);
  if (offers.state === "unknown") return cannotTell(offers);
  const offered = offers.state === "known" ? offers.value : [];
  if (!offered.some((code) => mate(code, mount.value))) {
    return fails(
      `${needs}, but ${hostPart.subject} (${host}) offers ${offered.length > 0 ? showCodes(offered) : "no clamp to share"}: fit a lever that offers ${mount.value.code}, or a control ${offered.length > 0 ? `for ${either(offered.map(({ code }) => code))}` : "with a band of its own"}.`,
      part,
      [clamp, mount, ...(offers.state === "known" ? [offers] : [])],
      [...share(path, free), ...swaps(path, host)],
    );
  }
  const earlier = bar.usersOf(host, path).find((other) => before(other.slot, path));
  if (earlier) {
    return fails(
      `The clamp of ${hostPart.subject} (${host}) carries ${earlier.subject} (${earlier.slot}) already, and the build hangs ${part.subject} on it as well: one clamp carries one control. ${free.length > 0 ? `That of ${free[0]} is free: write clamp: ${free[0]}.` : "Fit one of them with a band of its own."}`,
      part,
      [clamp, mount, earlier.clamp],
      [...share(path, free), ...swaps(path, earlier.slot)],
    );
  }
  const own = bar.side(path);
  const side = bar.side(host);
  if (own.state === "known" && side.state === "known" && own.value !== side.value) {
    return fails(
      `The build puts ${part.subject} at the ${own.value} hand, but hangs it on the clamp of ${hostPart.subject} (${host}) at the ${side.value}.`,
      part,
      [own, side, clamp],
      [...share(path, free), { kind: "set-setting", slot: path, setting: "side", value: side.value }],
    );
  }
  return holds(
    `${part.subject} shares ${showCode(mount.value)} of ${hostPart.subject} (${host}), which carries nothing else.`,
  );
}

/** A shift control that is part of a lever: the lever in that place has to be one with such a control. */
function builtIn(
  part: Known<Installed>,
  mount: Known<ResolvedCode>,
  clamp: Maybe<string>,
  bar: Bar,
  path: ControlSlot,
): Verdict {
  const fitted = bar.levers();
  if (clamp.state !== "known") {
    if (fitted.length === 0 && bar.openLevers().length > 0) return cannotTell(...bar.openLevers());
    return fails(
      `${part.subject} is built into a brake lever, but the build does not say into which: write clamp: ${fitted[0] ?? "rear-brake.lever"}.`,
      part,
      [mount],
      share(path, fitted),
    );
  }
  const lever = bar.part(clamp.value, path);
  if (lever?.state === "unknown") return cannotTell(lever);
  if (lever && isLever(lever)) return holds(`${part.subject} is built into ${lever.subject} (${clamp.value}).`);
  return fails(
    `${part.subject} is built into a brake lever, but there is no lever at ${clamp.value}.`,
    part,
    [clamp, mount],
    [...share(path, fitted), ...swaps(path)],
  );
}

/** A lever with a shift control in it is named once as lever and once as controller: both have to be the same one. */
function leverNamedAgain(part: Known<Installed>, clamp: Maybe<string>, bar: Bar, path: ControlSlot): Verdict {
  const isSame = (lever: Known<Installed> | Unknown | undefined): boolean =>
    lever?.state === "known" && lever.value.part?.declaration === part.value.part?.declaration;
  const same = bar.levers().filter((lever) => isSame(bar.part(lever, path)));
  if (clamp.state !== "known") {
    if (same.length === 0 && bar.openLevers().length > 0) return cannotTell(...bar.openLevers());
    return fails(
      same.length > 0
        ? `${part.subject} is a brake lever with a shift control in it, but the build does not say which of its levers it is: write clamp: ${same[0]}.`
        : `${part.subject} is a brake lever with a shift control in it, but neither brake has it as its lever.`,
      part,
      [],
      [...share(path, same), ...swaps(path)],
    );
  }
  const lever = bar.part(clamp.value, path);
  if (lever?.state === "unknown") return cannotTell(lever);
  if (isSame(lever)) return holds(`${part.subject} is the lever at ${clamp.value}.`);
  return fails(
    `${part.subject} is a brake lever with a shift control in it, but ${lever ? `the lever at ${clamp.value} is ${lever.subject}` : `there is no lever at ${clamp.value}`}: name the same lever in both places.`,
    part,
    [clamp, ...(lever ? [lever] : [])],
    [...share(path, same), ...swaps(path, ...(isSlot(clamp.value) ? [clamp.value] : []))],
  );
}

function share(path: ControlSlot, hosts: readonly string[]): readonly Repair[] {
  return hosts.map((value) => ({ kind: "set-setting", slot: path, setting: "clamp", value }));
}

/** Another lever, one that lends the control its clamp. */
function lend(path: ControlSlot, lever: SlotPath): Repair {
  return { kind: "swap-part", slot: lever, set: { slot: path, setting: "clamp", value: lever } };
}

function isLever(part: Known<Installed>): boolean {
  return part.value.part?.kind?.name === "brake-lever";
}

function isSlot(path: string): path is (typeof hosts)[number] {
  return (hosts as readonly string[]).includes(path);
}

/** Whether a control is asked about before another: of two on one clamp, only the later is found. */
function before(one: ControlSlot, other: ControlSlot): boolean {
  return controls.findIndex(({ slot }) => slot === one) < controls.findIndex(({ slot }) => slot === other);
}

/** Everything on the bar that may lend a clamp. */
class Bar {
  readonly #facts: HostFacts;

  constructor(facts: HostFacts) {
    this.#facts = facts;
  }

  /** What stands in a place that may lend a clamp; undefined when nothing can be there, or nothing is. */
  part(host: string, of: ControlSlot): Known<Installed> | Unknown | undefined {
    if (!isSlot(host) || host === of) return undefined;
    const found = this.#facts[`part ${host}`];
    return found.state === "none" ? undefined : found;
  }

  offers(host: (typeof hosts)[number]): Maybe<readonly ResolvedCode[]> {
    return this.#facts[`offers ${host}`];
  }

  side(path: (typeof hosts)[number]): Maybe<string> {
    return this.#facts[`side ${path}`];
  }

  /** What is not known of the levers: which they are, or what their clamps offer. */
  openLevers(): readonly Unknown[] {
    return levers.flatMap((path) => {
      const part = this.#facts[`part ${path}`];
      const offers = this.#facts[`offers ${path}`];
      if (part.state === "unknown") return [part];
      return part.state === "known" && offers.state === "unknown" ? [offers] : [];
    });
  }

  /** The offer of a place as a fact to point to, where it states one. */
  offersOf(host: string): readonly Known[] {
    const offers = isSlot(host) ? this.#facts[`offers ${host}`] : undefined;
    return offers?.state === "known" ? [offers] : [];
  }

  allOffers(): readonly Known[] {
    return hosts.flatMap((host) => this.offersOf(host));
  }

  /** The levers of the build. */
  levers(): readonly (typeof levers)[number][] {
    return levers.filter((path) => this.#facts[`part ${path}`].state === "known");
  }

  /** Controls other than one that use the clamp of a place. */
  usersOf(
    host: string,
    except: ControlSlot,
  ): readonly { readonly slot: ControlSlot; readonly subject: string; readonly clamp: Known }[] {
    return controls.flatMap(({ slot }) => {
      const clamp = this.#facts[`clamp ${slot}`];
      const part = this.#facts[`part ${slot}`];
      const mount = this.#facts[`mount ${slot}`];
      if (slot === except || clamp.state !== "known" || clamp.value !== host || part.state !== "known") return [];
      // What is built into the lever uses none of the clamp's fittings.
      if (isLever(part) || (mount.state === "known" && clampForm(mount.value) !== "shared")) return [];
      return [{ slot, subject: label(part.value), clamp }];
    });
  }

  /** Places whose clamp would carry a control and carries nothing yet, that of the control's own side first. */
  freeFor(mount: ResolvedCode, of: ControlSlot): readonly string[] {
    const side = this.#facts[`side ${of}`];
    const onSide = (host: (typeof hosts)[number]): boolean => {
      const there = this.#facts[`side ${host}`];
      return side.state !== "known" || there.state !== "known" || side.value === there.value;
    };
    return hosts.filter((host) => {
      if (host === of || !onSide(host)) return false;
      const part = this.#facts[`part ${host}`];
      const offers = this.#facts[`offers ${host}`];
      if (part.state !== "known" || offers.state !== "known") return false;
      return offers.value.some((code) => mate(code, mount)) && this.usersOf(host, of).length === 0;
    });
  }
}
