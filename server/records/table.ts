import type { Needs } from "../model/need.ts";
import { shareNeeds } from "../model/need.ts";
import airPressure from "./checks/air-pressure.ts";
import asSpecified from "./checks/as-specified.ts";
import beltFrequency from "./checks/belt-frequency.ts";
import chainGap from "./checks/chain-gap.ts";
import chainLinks from "./checks/chain-links.ts";
import chainWear from "./checks/chain-wear.ts";
import dish from "./checks/dish.ts";
import hangerRunOut from "./checks/hanger-run-out.ts";
import mass from "./checks/mass.ts";
import nothingThere from "./checks/nothing-there.ts";
import padThickness from "./checks/pad-thickness.ts";
import position from "./checks/position.ts";
import pressure from "./checks/pressure.ts";
import rotorThickness from "./checks/rotor-thickness.ts";
import runOut from "./checks/run-out.ts";
import sag from "./checks/sag.ts";
import slackSpoke from "./checks/slack-spoke.ts";
import spokeBalance from "./checks/spoke-balance.ts";
import spokeCount from "./checks/spoke-count.ts";
import spokeSpread from "./checks/spoke-spread.ts";
import spokeTension from "./checks/spoke-tension.ts";
import staticTest from "./checks/static-test.ts";
import torque from "./checks/torque.ts";
import tyreWidth from "./checks/tyre-width.ts";
import type { Comparison, MeasuredInstance } from "./define.ts";

/** Every comparison of a record with what it was built to. A test holds that each file of the folder is here. */
export const comparisons: readonly Comparison[] = [
  chainLinks,
  chainGap,
  chainWear,
  beltFrequency,
  hangerRunOut,
  spokeCount,
  spokeTension,
  spokeSpread,
  slackSpoke,
  spokeBalance,
  runOut,
  dish,
  tyreWidth,
  pressure,
  rotorThickness,
  padThickness,
  staticTest,
  sag,
  airPressure,
  torque,
  position,
  mass,
  asSpecified,
  nothingThere,
];

const byCode = new Map(comparisons.map((comparison) => [comparison.code, comparison]));

export function comparisonByCode(code: string): Comparison | undefined {
  return byCode.get(code);
}

/** A comparison where it is made. */
export interface AskedComparison {
  readonly comparison: Comparison;
  readonly instance: MeasuredInstance;
  readonly needs: Needs;
}

let byPath: Map<string, AskedComparison[]> | undefined;

/** Made when the first record is looked at: most runs of the program meet none. */
function index(): Map<string, AskedComparison[]> {
  if (byPath) return byPath;
  byPath = new Map();
  for (const comparison of comparisons) {
    for (const instance of comparison.instances) {
      const asked = { comparison, instance, needs: shareNeeds(comparison.needs(instance)) };
      for (const path of [instance.path, ...(instance.beside === undefined ? [] : [instance.beside])]) {
        const known = byPath.get(path);
        if (known) known.push(asked);
        else byPath.set(path, [asked]);
      }
    }
  }
  return byPath;
}

/** The comparisons that judge the value at a path; none where only the build's own value is to be compared. */
export function comparisonsOf(path: string): readonly AskedComparison[] {
  return index().get(path) ?? [];
}
