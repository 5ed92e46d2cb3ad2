import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, part } from "./compose.ts";

describe("seat/post-diameter", () => {
  const code = "seat/post-diameter";
  const fitted = (post: string, frame: string, more = "") =>
    compose({ "seat.post": part("seatpost", post), frame: part("frame", frame) }, more);

  it.each([
    ["27.2 mm", "27.2 mm", "holds"],
    ["27.25 mm", "27.2 mm", "holds"],
    ["27 mm", "27.2 mm", "fails"],
    ["27.26 mm", "27.2 mm", "fails"],
    ["31.6 mm", "30.9 mm", "fails"],
    ["27.2 mm", "none", "fails"],
  ])("a post of %s in a tube for %s: %s", (post, tube, outcome) => {
    expect(checkText(fitted(`post-diameter: ${post}`, `seat-tube-bore: ${tube}`)).outcome(code)).toBe(outcome);
  });

  it("offers a shim for a thin post only, and only where the frame allows one", () => {
    const shim =
      'part seat-shim test.sleeve "Sleeve" { inside-diameter: 27.2 mm; outside-diameter: 30.9 mm; length: 100 mm }';
    const frame = "seat-tube-bore: 30.9 mm; least-post-insertion: 80 mm";
    const post = "post-diameter: 27.2 mm; least-insertion: 80 mm";
    const mends = repaired(fitted(post, frame, shim), code);
    const [mend] = mends;
    expect(mends.map(({ title }) => title).join()).toContain("test.sleeve");
    expect(checkText(mend?.text ?? "").outcome("seat/shim")).toBe("holds");
    expect(checkText(mend?.text ?? "").outcome(code)).toBe("notApplicable");
    const forbidden = fitted(post, `${frame}; forbids: seat-shim`, shim);
    expect(repaired(forbidden, code)).toEqual([]);
    expect(checkText(forbidden).of(code)[0]?.message).not.toContain("shim");
    expect(checkText(fitted("post-diameter: 31.6 mm", frame, shim)).of(code)[0]?.message).toBe(
      "post is 31.6 mm, but frame takes 30.9 mm: fit a post of 30.9 mm.",
    );
  });

  it("is not asked where a shim stands between", () => {
    const text = compose({
      "seat.post": part("seatpost", "post-diameter: 27.2 mm"),
      "seat.shim": part("seat-shim", "length: 90 mm"),
      frame: part("frame", "seat-tube-bore: 31.6 mm"),
    });
    expect(checkText(text).outcome(code)).toBe("notApplicable");
  });
});

describe("seat/shim", () => {
  const code = "seat/shim";
  function shimmed(shim: string, post: string, frame: string): string {
    return compose({
      frame: part("frame", frame),
      "seat.post": part("seatpost", post),
      "seat.shim": part("seat-shim", shim),
    });
  }
  const shim = "inside-diameter: 27.2 mm; outside-diameter: 31.6 mm; length: 100 mm";
  const post = "post-diameter: 27.2 mm; least-insertion: 100 mm";
  const frame = "seat-tube-bore: 31.6 mm; least-post-insertion: 90 mm";

  it.each([
    [shim, post, frame, "holds"],
    [shim, "post-diameter: 27.2 mm; least-insertion: 101 mm", frame, "fails"],
    [shim, post, "seat-tube-bore: 31.6 mm; least-post-insertion: 101 mm", "fails"],
    [shim, post, "seat-tube-bore: 31.6 mm; least-post-insertion: none", "holds"],
    [shim, "post-diameter: 27.0 mm; least-insertion: 100 mm", frame, "fails"],
    [shim, post, "seat-tube-bore: 30.9 mm; least-post-insertion: 90 mm", "fails"],
    [shim, post, `${frame}; forbids: seat-shim`, "fails"],
    [shim, post, `${frame}; forbids: rack`, "holds"],
    [shim, "post-diameter: 27.2 mm", frame, "unknown"],
    // What is known is enough to find it.
    ["length: 89 mm", "least-insertion: none", "least-post-insertion: 90 mm", "fails"],
    ["inside-diameter: 27.2 mm", "post-diameter: 30 mm", 'size: "M"', "fails"],
  ])("%s, %s, %s: %s", (sleeve, seatpost, tube, outcome) => {
    expect(checkText(shimmed(sleeve, seatpost, tube)).outcome(code)).toBe(outcome);
  });

  it("names the deeper of the two depths and whose it is", () => {
    const text = shimmed(shim, "post-diameter: 27.2 mm; least-insertion: 110 mm", frame);
    expect(checkText(text).of(code)[0]?.message).toMatch(/reaches 100 mm.*110 mm deep \(post\)/);
  });
});

describe("seat/clamp-diameter", () => {
  const code = "seat/clamp-diameter";
  it.each([
    ["34.9 mm", "34.9 mm", "holds"],
    ["35 mm", "34.9 mm", "holds"],
    ["34.7 mm", "34.9 mm", "holds"],
    ["34.6 mm", "34.9 mm", "fails"],
    ["31.8 mm", "34.9 mm", "fails"],
    ["31.8 mm", "none", "fails"],
  ])("a clamp for %s on a tube of %s: %s", (clamp, tube, outcome) => {
    const text = compose({
      "seat.clamp": part("seat-clamp", `inside-diameter: ${clamp}`),
      frame: part("frame", `seat-clamp-diameter: ${tube}`),
    });
    expect(checkText(text).outcome(code)).toBe(outcome);
  });

  it("finds a post that nothing holds", () => {
    const held = (tube: string) =>
      compose({
        frame: part("frame", `seat-clamp-diameter: ${tube}`),
        "seat.post": part("seatpost", "post-diameter: 27.2 mm"),
        "seat.clamp": "none",
      });
    const [found] = checkText(held("28.6 mm")).of(code);
    expect(found?.message).toMatch(/^Nothing holds post.*28\.6 mm/);
    expect(checkText(held("none")).outcome(code)).toBe("notApplicable");
    const [mend] = repaired(
      `${held("28.6 mm")}\npart seat-clamp test.collar "Collar" { inside-diameter: 28.6 mm }\n`,
      code,
    );
    expect(checkText(mend?.text ?? "").outcome(code)).toBe("holds");
  });
});

describe("seat/rails", () => {
  it.each([
    ["round-7", "round-7", "holds"],
    ["round-7", "round-7, oval-7x9", "holds"],
    ["oval-7x9", "round-7", "fails"],
    ["round-8", "round-7, oval-7x9", "fails"],
  ])("rails %s in a clamp for %s: %s", (rail, rails, outcome) => {
    const text = compose({
      "seat.saddle": part("saddle", `rail: ${rail}`),
      "seat.post": part("seatpost", `rails: ${rails}`),
    });
    expect(checkText(text).outcome("seat/rails")).toBe(outcome);
  });
});
