// Written by `npm run generate` from the files of this folder; edit those instead.
import type { Calculation } from "./define.ts";

export const calculations: readonly Calculation[] = [
];
