import { describe, expect, it } from "vitest";
import { nearestSeveral } from "../../server/values/near.ts";

describe("the words that a slip was meant to be", () => {
  const names = ["chain", "chainring", "chainline", "cassette", "clamp-torque", "control-clamp", "mass"];
  it.each([
    ["chian", ["chain"]],
    ["casette", ["cassette"]],
    ["calmp-torque", ["clamp-torque"]],
    ["clamp", ["clamp-torque", "control-clamp"]],
    ["weight", []],
    ["", []],
  ])("%s: %j", (word, near) => {
    expect(nearestSeveral(word, names)).toEqual(near);
  });

  it("two neighbours that changed places are one slip, two other letters are two", () => {
    expect(nearestSeveral("abc", ["acb"])).toEqual(["acb"]);
    expect(nearestSeveral("abc", ["axy"])).toEqual([]);
    expect(nearestSeveral("abcd", ["badc"])).toEqual([]);
  });

  it("beside one that is hardly wrong those that are far off are left out", () => {
    expect(nearestSeveral("drivetrain.chian", ["drivetrain.chain", "drivetrain.hanger"])).toEqual(["drivetrain.chain"]);
  });
});
