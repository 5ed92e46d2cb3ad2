import { isSettingJudged } from "../checks/table.ts";
import type { Assembly } from "../model/assembly.ts";
import { type Declaration, headerPlace, type Place } from "../model/declaration.ts";
import type { Finding } from "../model/finding.ts";
import { textFinding } from "../model/read-fields.ts";
import { resolveCode, type Standard } from "../model/standard.ts";
import type { Statement } from "../model/stated.ts";
import type { Workshop } from "../model/workshop.ts";
import { writeCode } from "../values/code.ts";
import type { Code } from "../values/types.ts";
import type { Field, Fields } from "../vocabulary/define.ts";
import { familyByName, slotByPath } from "../vocabulary/index.ts";

/** Findings about names: declared twice, or naming nothing. */

/** Two declarations of one name are an error at both; a workshop's standard may shadow a built-in one. */
export function duplicateNames(declaration: Declaration, workshop: Workshop): Finding[] {
  const same = workshop.all(declaration.key);
  if (same.length < 2) return [];
  const others = same.filter((other) => other !== declaration);
  const { span } = headerPlace(declaration);
  const builtIn = others.find((other) => other.builtIn);
  const own = others.filter((other) => !other.builtIn);
  const findings: Finding[] = [];
  if (own.length > 0 && !declaration.builtIn) {
    const what =
      declaration.keyword === "workshop" ? "A second workshop" : `${declaration.name || declaration.keyword}`;
    findings.push(
      textFinding(
        declaration,
        span,
        "model/duplicate-name",
        declaration.keyword === "workshop"
          ? `${what} is declared under the same root; there can be one.`
          : `${what} is declared ${own.length === 1 ? "twice" : `${own.length + 1} times`}; names of ${declaration.keyword}s must be unique in a workshop.`,
        { related: alsoDeclared(own) },
      ),
    );
  }
  if (builtIn && !declaration.builtIn) {
    findings.push(
      textFinding(
        declaration,
        span,
        "model/shadows-built-in",
        `This takes the place of the built-in standard ${declaration.kind ?? ""} ${declaration.name}.`,
        { severity: "information", related: [{ message: "the built-in one", place: headerPlace(builtIn) }] },
      ),
    );
  }
  return findings;
}

/** How many of the other declarations of a name each of them points at; all of them at all would be their square. */
const mostPointedAt = 16;

function alsoDeclared(others: readonly Declaration[]): Finding["related"] {
  const shown = others.slice(0, mostPointedAt);
  const more = others.length - shown.length;
  return shown.map((other, index) => ({
    message:
      more > 0 && index === shown.length - 1 ? `also declared here, and ${more} times more` : "also declared here",
    place: headerPlace(other),
  }));
}

/** Codes that no standard stands behind. */
export function undeclaredCodes(
  declaration: Declaration,
  statements: ReadonlyMap<string, Statement>,
  fields: Fields,
  prefix: string,
  workshop: Workshop,
  lookups: string[],
): Finding[] {
  const findings: Finding[] = [];
  for (const [name, statement] of statements) {
    if (statement.state !== "stated" || statement.place.declaration !== declaration) continue;
    const field: Field | undefined = fields[name];
    const path = prefix === "" ? name : `${prefix}.${name}`;
    if (field?.type.type !== "code" && field?.type.type !== "codes") continue;
    const codes = field.type.type === "code" ? [statement.value as Code] : (statement.value as readonly Code[]);
    for (const code of codes) {
      if (resolveCode(code, workshop, lookups) || !workshop.complete) continue;
      findings.push(
        textFinding(
          declaration,
          statement.place.span,
          "model/unknown-standard",
          `${code.code} is not ${nounOf(code.family)} that anybody declares, so nothing can be checked against it. Write one that is declared, or declare it: standard ${code.family} ${writeCode(code.code)} { ... }.`,
          {
            path,
            repairs: [
              {
                kind: "near-name",
                // One of several codes alone is written anew.
                place: placeOfWord(statement.place, code.code),
                name: code.code,
                keyword: "standard",
                kinds: [code.family],
              },
            ],
          },
        ),
      );
    }
  }
  return findings;
}

/** Interfaces that a standard names among its mates and that nobody declares. */
export function undeclaredMates(standard: Standard, workshop: Workshop, lookups: string[]): Finding[] {
  const statement = standard.dimensions.get("mates");
  if (!statement || !workshop.complete) return [];
  return standard.mates.flatMap((mate) => {
    const slash = mate.indexOf("/");
    const [family, code] = [mate.slice(0, slash), mate.slice(slash + 1)];
    if (resolveCode({ family, code }, workshop, lookups)) return [];
    return [
      textFinding(
        standard.declaration,
        statement.place.span,
        "model/unknown-standard",
        `${code} is not ${nounOf(family)} that anybody declares, so nothing can be said to mate with it. Write one that is declared, or declare it: standard ${family} ${writeCode(code)} { ... }.`,
        {
          path: "mates",
          repairs: [
            {
              kind: "near-name",
              place: placeOfWord(statement.place, code),
              name: code,
              keyword: "standard",
              kinds: [family],
            },
          ],
        },
      ),
    ];
  });
}

/** What a family's interfaces are called: "a rear axle". */
function nounOf(family: string): string {
  return familyByName(family)?.noun ?? `an interface of the family ${family}`;
}

/** Where a word stands in a list; the whole list where it does not stand by itself. */
function placeOfWord(place: Place, word: string): Place {
  const text = place.declaration.text.slice(place.span.start, place.span.end);
  for (const match of text.matchAll(/[^\s,]+/g)) {
    if (match[0] === word || match[0].endsWith(`/${word}`)) {
      const start = place.span.start + match.index + match[0].length - word.length;
      return { declaration: place.declaration, span: { start, end: start + word.length } };
    }
  }
  return place;
}

/** Codes and slot references among the settings of a build. */
export function settingNames(assembly: Assembly, workshop: Workshop, lookups: string[]): Finding[] {
  const { declaration } = assembly;
  const findings: Finding[] = [];
  for (const [path, installed] of assembly.slots) {
    findings.push(
      ...undeclaredCodes(declaration, installed.settings, installed.slot.settings, path, workshop, lookups),
    );
    for (const [name, statement] of installed.settings) {
      if (statement.state !== "stated" || statement.place.declaration !== declaration) continue;
      if (installed.slot.settings[name]?.type.type !== "slot") continue;
      const named = String(statement.value);
      const target = assembly.slots.get(named);
      if (slotByPath(named) && target && target.state !== "none") continue;
      // Where a check asks what the named slot offers, it says so itself when nothing is there.
      if (slotByPath(named) && isSettingJudged(path, name)) continue;
      findings.push(
        textFinding(
          declaration,
          statement.place.span,
          "model/unknown-slot",
          slotByPath(named)
            ? `${path}.${name} names ${named}, where this build has no part.`
            : `${path}.${name} names ${named}, which is not a slot; write a slot of this build such as rear-brake.lever.`,
          { path: `${path}.${name}` },
        ),
      );
    }
  }
  return findings;
}
