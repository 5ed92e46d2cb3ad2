import { expect, test } from "vitest";
import { largestFile } from "../../server/model/workshop.ts";
import { mostBytes } from "../../server/workshop-files/read.ts";

test("no text that the model would read is turned away for its bytes", () => {
  // UTF-8 takes at most three bytes for a UTF-16 unit: four for the two of a surrogate pair.
  expect(mostBytes).toBeGreaterThanOrEqual(largestFile * 3);
});
