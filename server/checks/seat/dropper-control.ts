import { fact, optional, slot } from "../../model/need.ts";
import { mate } from "../../model/standard.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { showCode } from "../shared/codes.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

const ways: Readonly<Record<string, string>> = {
  cable: "by a cable with its head at the remote",
  "cable-at-post": "by a cable with its head at the post",
  hydraulic: "by a hose",
  electronic: "by radio",
  lever: "by a lever under the saddle",
};

const way = (control: string): string => ways[control] ?? control;

export default defineCheck({
  code: "seat/dropper-control",
  title: "Something on the bar releases the dropper",
  severity: "error",
  since: 1,
  needs: () => ({
    post: slot("seat.post"),
    travel: fact("seat.post", "dropper-travel"),
    control: optional(fact("seat.post", "control")),
    family: optional(fact("seat.post", "shift-family")),
    remote: optional(slot("seat.remote")),
    serves: optional(fact("seat.remote", "serves")),
    by: optional(fact("seat.remote", "control")),
    remoteFamily: optional(fact("seat.remote", "shift-family")),
  }),
  test({ post, control, family, remote, serves, by, remoteFamily }) {
    if (control.state === "unknown") return cannotTell(control);
    if (control.state === "none") {
      return cannotTell({
        state: "unknown",
        missing: [
          { path: control.path, what: `how ${post.subject} is released (${control.path})`, place: control.place },
        ],
      });
    }
    if (control.value === "lever") {
      return remote.state === "known"
        ? notApplicable(`${post.subject} is released ${way("lever")} and needs no remote`)
        : holds(`${post.subject} is released ${way("lever")}.`);
    }
    if (remote.state === "unknown") return cannotTell(remote);
    if (remote.state === "none") {
      return fails(
        `${post.subject} is released ${way(control.value)}, but the build has no remote for it: add one that works so.`,
        post,
        [control],
        [{ kind: "insert-part", slot: "seat.remote" }, ...swaps("seat.post")],
      );
    }
    if (serves.state === "known" && serves.value !== "dropper") {
      return fails(
        `${remote.subject} is a remote for ${serves.value === "both" ? "fork and shock" : `the ${serves.value}`}, and ${post.subject} needs one for a dropper: fit a dropper's remote.`,
        remote,
        [serves, control],
        swaps("seat.remote"),
      );
    }
    if (by.state === "known" && by.value !== control.value) {
      return fails(
        `${post.subject} is released ${way(control.value)}, but ${remote.subject} works ${way(by.value)}: fit a remote that works as the post does, or another dropper.`,
        remote,
        [by, control],
        swaps("seat.remote", "seat.post"),
      );
    }
    if (
      by.state === "known" &&
      by.value === "electronic" &&
      family.state === "known" &&
      remoteFamily.state === "known"
    ) {
      if (!mate(family.value, remoteFamily.value)) {
        return fails(
          `${post.subject} listens to ${showCode(family.value)}, but ${remote.subject} speaks ${showCode(remoteFamily.value)}: fit a remote of the post's family.`,
          remote,
          [remoteFamily, family],
          swaps("seat.remote", "seat.post"),
        );
      }
    }
    const unknown = unknowns(serves, by);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (control.value === "electronic" && (family.state !== "known" || remoteFamily.state !== "known")) {
      const silent = family.state === "known" ? remoteFamily : family;
      if (silent.state === "unknown") return cannotTell(silent);
      if (silent.state === "none") {
        const what = `which electronic parts ${family.state === "known" ? remote.subject : post.subject} talks to (${silent.path})`;
        return cannotTell({ state: "unknown", missing: [{ path: silent.path, what, place: silent.place }] });
      }
    }
    return holds(`${post.subject} is released ${way(control.value)}, as ${remote.subject} works.`);
  },
  explanation:
    "A dropper is released from the bar by a cable, a hose or radio, or by a lever under its saddle. Cables are fixed in two " +
    "ways: the head of the inner cable sits in the remote and its end is clamped at the post, or the other way round. A " +
    "remote for the one pulls on nothing with the other. Electronic posts and remotes talk only within their family. A " +
    "dropper without anything that releases it is a heavy rigid post.",
  source: "common practice, no source",
  examples: {
    holds: `
part seatpost example.drop "Drop 125" { dropper-travel: 125 mm; control: cable }
part remote example.thumb "Thumb" { serves: dropper; control: cable }

build example "Both with the cable's head at the remote" {
  seat { post: example.drop; remote: example.thumb }
}
`,
    fails: `
part seatpost example.drop "Drop 125" { dropper-travel: 125 mm; control: cable-at-post }
part remote example.thumb "Thumb" { serves: dropper; control: cable }

build example "Two ends for one cable head" {
  seat { post: example.drop; remote: example.thumb }
}
`,
  },
});
