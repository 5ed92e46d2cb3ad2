import { shareNeeds } from "../model/need.ts";
import type { Calculation, InBuild } from "./define.ts";
import { calculations } from "./index.ts";

export { calculations };

/** One number of a build: which calculation gives it, fed from where. */
export interface Quantity {
  /** `drivetrain.capacity-needed`. */
  readonly path: string;
  readonly calculation: Calculation;
  readonly inBuild: InBuild<never, never> & { inputs(facts: never): ReturnType<InBuild<never, never>["inputs"]> };
  /** The result's name. */
  readonly result: string;
}

const byName = new Map(calculations.map((calculation) => [calculation.name, calculation]));

const byQuantity = new Map<string, Quantity>();
for (const calculation of calculations) {
  for (const row of calculation.inBuild ?? []) {
    const inBuild = { ...row, needs: shareNeeds(row.needs), inputs: row.inputs.bind(row) };
    for (const result of Object.keys(calculation.results)) {
      const path = `${inBuild.assembly}.${result}`;
      byQuantity.set(path, { path, calculation, inBuild: inBuild as unknown as Quantity["inBuild"], result });
    }
  }
}

export function calculationByName(name: string): Calculation | undefined {
  return byName.get(name);
}

export function calculationOfQuantity(path: string): Quantity | undefined {
  return byQuantity.get(path);
}

/** Every number a build can have, in the order of the table. */
export const quantities: readonly Quantity[] = [...byQuantity.values()];
