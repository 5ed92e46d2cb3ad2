import type { DisplayUnits } from "./show.ts";

/** Units that numbers are shown in unless somebody asks for others. */
let current: DisplayUnits = "metric";

/**
 * The units in which numbers are shown just now. What a message says is decided where its check is written, and by
 * whom it is read where it is asked for; so this is the one thing that the engine lays around the work instead of
 * handing it down through every call. The work is synchronous, and the units before come back when it ends.
 */
export function displayUnits(): DisplayUnits {
  return current;
}

/** Does some work with numbers shown in the given units. */
export function shownIn<Answer>(units: DisplayUnits, work: () => Answer): Answer {
  const before = current;
  current = units;
  try {
    return work();
  } finally {
    current = before;
  }
}
