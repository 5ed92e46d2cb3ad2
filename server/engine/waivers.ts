import { both } from "../checks/shared/sentence.ts";
import type { Assembly, Waiver } from "../model/assembly.ts";
import type { Finding } from "../model/finding.ts";
import type { CheckSet } from "../rules/check-set.ts";
import { didYouMean, nearest } from "../values/near.ts";
import { inMonths } from "./days.ts";

/** The findings after waivers have silenced theirs, and what is to be said of the waivers themselves. */
export interface Waived {
  readonly findings: readonly Finding[];
  readonly aboutWaivers: readonly Finding[];
}

/** True for a calendar day written 2027-03-31. */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

/**
 * Lays a build's waivers over its findings.
 *
 * A waiver counts up to and including its last day. What it silences stays in every report as waived; a finding that
 * guards somebody's safety stays a warning beside that.
 * @param today `2026-11-25`; an input, never read from a clock here.
 */
export function applyWaivers(
  assembly: Assembly,
  findings: readonly Finding[],
  today: string,
  checks: CheckSet,
): Waived {
  const aboutWaivers: Finding[] = [];
  const active: { readonly waiver: Waiver; used: boolean; behind?: Waiver | undefined }[] = [];
  for (const waiver of assembly.waivers) {
    const check = checks.byCode(waiver.code);
    // A waiver inherited from a base is judged where it stands; here it only counts.
    const own = waiver.place.declaration === assembly.declaration;
    const say = (code: string, severity: Finding["severity"], message: string): void => {
      if (own) aboutWaivers.push(about(waiver, code, severity, message));
    };
    if (!check) {
      const near = nearest(
        waiver.code,
        checks.all.map(({ code }) => code),
      );
      say(
        "build/unknown-waiver",
        "error",
        `No check has the code ${waiver.code}.${didYouMean(near === undefined ? [] : [near])}`,
      );
      continue;
    }
    if (waiver.until !== undefined && !isDay(waiver.until)) {
      say(
        "build/waiver-date",
        "error",
        `${waiver.until} is not a day; write the last day on which the waiver counts as 2027-03-31.`,
      );
      continue;
    }
    if (waiver.reason.trim() === "") {
      say(
        "build/waiver-reason",
        "error",
        `A waiver needs a reason: who took this on, and why. It does not count without one.`,
      );
      continue;
    }
    if (check.instances && waiver.at === undefined) {
      say(
        "build/waiver-path",
        "error",
        `${waiver.code} is asked in several places of a build; say where it is waived: waive ${waiver.code} at PATH "${waiver.reason}".${failsAt(waiver.code, findings)}`,
      );
      continue;
    }
    if (waiver.until !== undefined && waiver.until < today) {
      say(
        "build/out-of-date-waiver",
        "warning",
        `This waiver of ${waiver.code} ended on ${waiver.until}. Settle the matter, or write a new reason and a new day.`,
      );
      continue;
    }
    if (waiver.until === undefined) {
      say(
        "build/endless-waiver",
        "information",
        `This waiver of ${waiver.code} has no last day and counts for ever. Write one, as in: until ${inMonths(today, 3)}.`,
      );
    }
    active.push({ waiver, used: false });
  }

  const isOwn = (waiver: Waiver): boolean => waiver.place.declaration === assembly.declaration;
  const after = findings.map((finding) => {
    const matches = active.filter(({ waiver }) => covers(waiver, finding));
    const last = matches.at(-1);
    // Two of one build: the first is never needed, unless it lasts longer.
    for (const match of matches) {
      if (match === last || !isOwn(match.waiver) || (last && endsLater(match.waiver, last.waiver))) match.used = true;
      else match.behind = last?.waiver;
    }
    // Of several the build's own says why, since it is the last that somebody thought about.
    const match = matches.at(-1);
    return match ? waivedFinding(finding, match.waiver) : finding;
  });
  for (const { waiver, used, behind } of active) {
    if (used || !isOwn(waiver)) continue;
    const where = waiver.at === undefined ? "" : ` at ${waiver.at}`;
    const why = behind
      ? `${waiver.code} is waived once more here, as "${behind.reason}", and that waiver counts and lasts as long: strike this one out, since it silences nothing.`
      : `Nothing here fails ${waiver.code}${where}, so this waiver silences nothing.${failsAt(waiver.code, after)}`;
    const said = about(waiver, "build/idle-waiver", "information", why);
    aboutWaivers.push(behind ? { ...said, related: [{ message: "the one that counts", place: behind.place }] } : said);
  }
  return { findings: after, aboutWaivers };
}

/** Where it does fail, for whoever named another place. */
function failsAt(code: string, findings: readonly Finding[]): string {
  const paths = findings.flatMap((finding) =>
    finding.outcome === "fails" && finding.code === code && finding.path !== "" ? [finding.path] : [],
  );
  return paths.length === 0 ? "" : ` It fails at ${both([...new Set(paths)])}.`;
}

function endsLater(one: Waiver, other: Waiver): boolean {
  return other.until !== undefined && (one.until === undefined || one.until > other.until);
}

function covers(waiver: Waiver, finding: Finding): boolean {
  if (finding.outcome !== "fails" || finding.code !== waiver.code) return false;
  if (waiver.at === undefined) return true;
  return (
    finding.path === waiver.at || finding.path.startsWith(`${waiver.at}.`) || waiver.at.startsWith(`${finding.path}.`)
  );
}

function waivedFinding(finding: Finding, waiver: Waiver): Finding {
  const until = waiver.until === undefined ? "" : ` until ${waiver.until}`;
  return {
    ...finding,
    outcome: "waived",
    severity: finding.safety ? "warning" : "information",
    message: `Waived${until}: ${waiver.reason} (${finding.message})`,
    repairs: [],
    related: [{ message: "waived here", place: waiver.place }, ...finding.related],
    waiver: { reason: waiver.reason, ...(waiver.until === undefined ? {} : { until: waiver.until }) },
  };
}

function about(waiver: Waiver, code: string, severity: Finding["severity"], message: string): Finding {
  return {
    code,
    severity,
    message,
    place: waiver.place,
    path: waiver.at ?? "",
    related: [],
    repairs: [],
    outcome: "fails",
  };
}
