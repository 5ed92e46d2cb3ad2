// Written by `npm run generate` from the files of this folder; edit those instead.
import type { Check } from "./define.ts";

export const checks: readonly Check[] = [];
