import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

const code = "steering/steerer-thread";

/** A head tube whose top stands 13 + 138 = 151 mm above the crown-race seat, under a headset of 24 mm. */
function frontEnd({
  fork = "steerer-shape: threaded",
  supplied = "190 mm",
  thread = "45 mm",
  cut = "",
  headset = "lower-stack: 13 mm; upper-stack: 24 mm",
  frame = "head-tube-length: 138 mm",
  stem,
}: {
  fork?: string;
  supplied?: string;
  thread?: string;
  cut?: string;
  headset?: string;
  frame?: string;
  stem?: string;
} = {}): string {
  const facts = [
    fork,
    ...(supplied === "" ? [] : [`steerer-supplied: ${supplied}`]),
    ...(thread === "" ? [] : [`steerer-thread-length: ${thread}`]),
  ].join("; ");
  const pieces: Pieces = {
    frame: part("frame", frame),
    fork: part("fork", facts, cut === "" ? "" : `steerer-length: ${cut}`),
    headset: headset === "none" ? "none" : part("headset", headset),
    ...(stem === undefined ? {} : { "cockpit.stem": part("stem", stem) }),
  };
  return compose(pieces);
}

describe(code, () => {
  it.each([
    // The thread begins at 190 mm less its length.
    ["45 mm", "holds", undefined],
    ["39 mm", "holds", undefined],
    ["38.9 mm", "fails", "warning"],
    // Half of the stack of 24 mm may be pressed race: 163 mm.
    ["27 mm", "fails", "warning"],
    ["26.9 mm", "fails", "error"],
    ["200 mm", "holds", undefined],
  ])("%s of thread: %s %s", (thread, outcome, severity) => {
    const { of, outcome: found } = checkText(frontEnd({ thread }));
    expect(found(code)).toBe(outcome);
    expect(of(code)[0]?.severity).toBe(severity);
  });

  it("goes by where the thread begins, wherever the steerer is cut", () => {
    for (const cut of ["", "160 mm", "173 mm", "189 mm"]) {
      expect(checkText(frontEnd({ cut })).outcome(code), cut).toBe("holds");
      expect(checkText(frontEnd({ supplied: "215 mm", cut })).outcome(code), cut).toBe("fails");
    }
  });

  it("says where thread and head tube end, and what the saw leaves", () => {
    const said = (cut: string) => checkText(frontEnd({ supplied: "215 mm", cut })).of(code)[0]?.message;
    expect(said("173 mm")).toBe(
      "The thread of fork begins 170 mm above its crown-race seat (215 mm as supplied, less 45 mm of thread), and the head tube's top stands at 151 mm: 19 mm above it there is no thread, so that the upper race stops before it rests on its balls. Cut to 173 mm, it has 3 mm of thread left. Fit a fork whose thread reaches lower, or have a steel one threaded further down before it is cut.",
    );
    expect(said("170 mm")).toContain("Cut to 170 mm, it has no thread left.");
    expect(said("165 mm")).toContain("Cut to 165 mm, it has no thread left.");
    expect(said("")).toContain("on its balls. Fit a fork");
    expect(checkText(frontEnd({ supplied: "200 mm" })).of(code)[0]?.message).toContain(
      "stands at 151 mm: 4 mm above it there is no thread, so that the upper race may stop before",
    );
    const { row } = checkText(frontEnd({ cut: "173 mm" }));
    expect(row(code).instances[0]?.verdict).toMatchObject({
      message:
        "The thread of fork begins 145 mm above its crown-race seat (190 mm as supplied, less 45 mm of thread), and the head tube's top stands at 151 mm. Cut to 173 mm, it has 28 mm of thread left.",
    });
  });

  it("counts no thread below the crown race, and none that the saw cannot leave", () => {
    const said = (given: Parameters<typeof frontEnd>[0]) => checkText(frontEnd(given)).row(code).instances[0]?.verdict;
    expect(said({ thread: "200 mm", cut: "173 mm" })).toMatchObject({
      message: expect.stringMatching(/begins 0 mm above .* Cut to 173 mm, it has 173 mm of thread left\.$/),
    });
    expect(said({ cut: "190 mm" })).toMatchObject({ message: expect.stringMatching(/it has 45 mm of thread left\.$/) });
    expect(said({ cut: "191 mm" })).toMatchObject({ message: expect.stringMatching(/stands at 151 mm\.$/) });
  });

  it("offers forks whose thread reaches down, and no others", () => {
    const others = `
part fork other.low "Low" { steerer-shape: threaded; steerer-supplied: 190 mm; steerer-thread-length: 45 mm }
part fork other.high "High" { steerer-shape: threaded; steerer-supplied: 230 mm; steerer-thread-length: 45 mm }
`;
    const offered = repaired(others + frontEnd({ supplied: "215 mm" }), code);
    expect(offered.map(({ title }) => title)).toEqual(["Fit Low (other.low) as fork"]);
    expect(checkText(offered[0]?.text ?? "").outcome(code)).toBe("holds");
  });

  it.each([
    [{ fork: "steerer-shape: round" }, "notApplicable"],
    [{ fork: "steerer-shape: none" }, "notApplicable"],
    [{ fork: "travel: none" }, "notApplicable"],
    [{ fork: "travel: none", stem: "clamping: quill" }, "holds"],
    [{ thread: "none" }, "notApplicable"],
    [{ headset: "none" }, "notApplicable"],
    [{ headset: "none", thread: "" }, "notApplicable"],
    // A thread that nobody measured may be any.
    [{ thread: "" }, "unknown"],
  ] as const)("%o: %s", (changed, outcome) => {
    expect(checkText(frontEnd(changed)).outcome(code)).toBe(outcome);
  });

  it("names every figure that is missing", () => {
    expect(
      checkText(frontEnd({ supplied: "", thread: "", headset: "locknut-gap: 1 to 3 mm", frame: 'size: "54"' })).missing(
        code,
      ),
    ).toEqual([
      "fork.steerer-supplied",
      "fork.steerer-thread-length",
      "headset.lower-stack",
      "headset.upper-stack",
      "frame.head-tube-length",
    ]);
  });
});
