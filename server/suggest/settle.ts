import { checkByCode, instancesOf } from "../checks/table.ts";
import { BuildEvaluation } from "../engine/evaluate.ts";
import type { Assembly } from "../model/assembly.ts";
import { headerPlace } from "../model/declaration.ts";
import type { Statement } from "../model/stated.ts";
import { type BuildState, type Failure, type SetUp, setUpsOf } from "./state.ts";
import { distance, type Target } from "./target.ts";

/** Settings that are changed for one set of parts; a build that needs more is set up anew rather than adjusted. */
const mostSteps = 8;

/** A build set up for its parts, and the slots whose parts decided what was set. */
export interface Settled {
  readonly state: BuildState;
  readonly deciding: ReadonlySet<string>;
}

/**
 * Sets a build up for its parts: where a check that held before fails and says itself which setting would mend it, the
 * setting is changed, as the mechanic would who fits the part (a chain is cut to its new length); and where a target
 * is missed and its check knows what to set otherwise, that is set. A setting is only changed where what it is for is
 * then as wanted and nothing new fails.
 */
export function settle(start: BuildState, targets: readonly Target[]): Settled {
  let state = start;
  const deciding = new Set<string>();
  const tried = new Set<string>();
  for (let steps = 0; steps < mostSteps; steps++) {
    const step = nextStep(state, targets, tried);
    if (!step) break;
    state = step.state;
    for (const slot of step.slots) deciding.add(slot);
  }
  return { state, deciding };
}

interface Step {
  readonly state: BuildState;
  readonly slots: readonly string[];
}

function nextStep(state: BuildState, targets: readonly Target[], tried: Set<string>): Step | undefined {
  const errors = state.fresh("error");
  const mended = mend(state, errors, tried);
  // With parts that do not fit, whatever they are set to, there is nothing else to set up.
  if (mended || errors.length > 0) return mended;
  for (const target of targets) {
    if (target.aim === undefined || distance(target, target.measure(state.evaluation)) === 0) continue;
    for (const setUp of aimSetUps(state, target)) {
      const next = tryOnce(state, setUp, tried);
      const before = distance(target, target.measure(state.evaluation));
      if (next && distance(target, target.measure(next.evaluation)) < before && isNoWorse(next, state)) {
        return { state: next, slots: touched(target, state) };
      }
    }
  }
  return mend(state, state.fresh("warning"), tried);
}

/** The first setting with which one of the failures is gone and nothing new fails. */
function mend(state: BuildState, failures: readonly Failure[], tried: Set<string>): Step | undefined {
  for (const { question, verdict } of failures) {
    for (const setUp of setUpsOf(verdict.repairs)) {
      const next = tryOnce(state, setUp, tried);
      if (next && !next.answers.failing.has(question) && isNoWorse(next, state)) {
        return { state: next, slots: state.questions.slotsOf(question) };
      }
    }
  }
  return undefined;
}

function tryOnce(state: BuildState, setUp: SetUp, tried: Set<string>): BuildState | undefined {
  const key = `${setUp.slot} ${setUp.setting} ${setUp.value}`;
  if (tried.has(key)) return undefined;
  tried.add(key);
  return state.withSetUp(setUp);
}

/** Whether nothing fails that did not fail: a chain that is cut anew must not be of an odd number of links. */
function isNoWorse(next: BuildState, before: BuildState): boolean {
  const failing = before.answers.failing;
  return [...next.fresh("error"), ...next.fresh("warning")].every(({ question, severity }) => {
    const earlier = failing.get(question);
    return earlier !== undefined && (severity === "warning" || earlier.severity === "error");
  });
}

function touched(target: Target, { assembly }: BuildState): readonly string[] {
  return [...assembly.slots.keys()].filter((slot) => target.touches(slot));
}

/** Checks of aims in a build, by the field that states the aim. */
const aimChecks = ["fit/bar-position", "fit/saddle-height", "fit/saddle-setback"];

/** What the check of an aim would set otherwise, if the build stated the target as its aim. */
function aimSetUps({ assembly, engine }: BuildState, { aim = "", interval }: Target): readonly SetUp[] {
  const { least, greatest } = interval;
  if (!Number.isFinite(least) && !Number.isFinite(greatest)) return [];
  const [from, to] = [Number.isFinite(least) ? least : greatest, Number.isFinite(greatest) ? greatest : least];
  const place = headerPlace(assembly.declaration);
  const stated = (value: number): Statement => ({ state: "stated", value, written: `${value} mm`, place });
  const fields = new Map(assembly.fields)
    .set(aim, stated((from + to) / 2))
    .set("fit.tolerance", stated(Math.max((to - from) / 2, leastTolerance)));
  const aiming: Assembly = { ...assembly, fields };
  const evaluation = new BuildEvaluation(aiming, engine.workshop);
  return aimChecks.flatMap((code) => {
    const check = checkByCode(code);
    return (check ? instancesOf(check) : []).flatMap((instance) => {
      const verdict = evaluation.ask(check!, instance);
      return verdict.outcome === "fails" ? setUpsOf(verdict.repairs) : [];
    });
  });
}

/** In millimetres: what a target without room is aimed at within. */
const leastTolerance = 0.5;
