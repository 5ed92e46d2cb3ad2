/** Tests that look at the workbench's page from outside, as a person does: what is drawn, hovered, clicked and typed. */
import type { Workbench } from "../workbench.ts";

/** One registered test. */
export interface PageTest {
  readonly name: string;
  readonly body: (workbench: Workbench) => Promise<void>;
}

/** Every test registered so far, in order. */
export const pageTests: PageTest[] = [];

/** Registers a test. All share one workbench on a copy of the samples; all editors are closed between two of them. */
export function pageTest(name: string, body: PageTest["body"]): void {
  pageTests.push({ name, body });
}
