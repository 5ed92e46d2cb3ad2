import { showInterval } from "../../values/show.ts";
import type { Interval } from "../../values/types.ts";
import { type Clash, type Failure, fails } from "../define.ts";
import { both } from "./sentence.ts";
import { swaps } from "./swaps.ts";

type Side = Clash["sides"][number];

/**
 * Makes one finding of joints in which the torque of one part suits none of the others: a bar that bears less than
 * every lever on it asks for is one fault, not one for each lever.
 */
export function mergeClashes(failures: readonly Failure[]): readonly Failure[] {
  const merged: Failure[] = [];
  let rest = failures;
  while (rest.length > 0) {
    const [first, ...others] = rest as readonly [Failure, ...Failure[]];
    const root = sidesOf(first)
      .map((side) => ({ side, sharing: others.filter((other) => sidesOf(other).some((one) => isSame(one, side))) }))
      .reduce<Root | undefined>(
        (most, one) => (one.sharing.length > (most?.sharing.length ?? 0) ? one : most),
        undefined,
      );
    merged.push(root ? asOne(root.side, [first, ...root.sharing]) : first);
    rest = others.filter((other) => !root?.sharing.includes(other));
  }
  return merged;
}

interface Root {
  readonly side: Side;
  readonly sharing: readonly Failure[];
}

function sidesOf({ clash }: Failure): readonly Side[] {
  return clash?.sides ?? [];
}

function isSame(one: Side, other: Side): boolean {
  return one.fact.path === other.fact.path;
}

function asOne(root: Side, failures: readonly Failure[]): Failure {
  const others = failures.flatMap(sidesOf).filter((side) => !isSame(side, root));
  const stated = new Set(others.map(({ fact }) => states(fact)));
  const joints = failures.flatMap(({ clash }) => (clash ? [clash.where] : []));
  const [first] = failures;
  const different = others.filter(
    (side, index) => others.findIndex(({ fact }) => fact.place === side.fact.place) === index,
  );
  return fails(
    `${states(root.fact)}, and no torque within that suits what it is joined to in ${joints.length} places (${both(joints)}): ${both([...stated])}. The parts do not go together; do not settle on the lower figure, which holds one of them too loosely.`,
    root.part,
    [root.fact, ...different.map(({ fact }) => fact)],
    swaps(root.slot, ...others.map(({ slot }) => slot)),
    first?.caution === undefined ? {} : { caution: first.caution },
  );
}

function states({ subject, value }: Side["fact"]): string {
  return `${subject} states ${showInterval(value as Interval, "torque")}`;
}
