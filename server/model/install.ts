import { kindByName } from "../vocabulary/index.ts";
import type { AssemblyContext, Installed } from "./assembly.ts";
import type { SlotDraft } from "./build-layer.ts";
import { declarationKey, headerPlace, type Place } from "./declaration.ts";
import type { Finding } from "./finding.ts";
import type { Part } from "./part.ts";
import { textFinding } from "./read-fields.ts";

interface Resolved {
  readonly name: string;
  readonly place: Place;
  readonly part?: Part;
  readonly declaredAs?: string;
}

/** Looks up the parts that a slot names. What is not declared, or is of a kind that does not go there, is a finding. */
export function install(
  path: string,
  draft: SlotDraft,
  context: AssemblyContext,
  lookups: string[],
  findings: Finding[],
): Installed | undefined {
  const { declaration, slot } = draft;
  const place: Place = { declaration, span: draft.names[0]?.span ?? draft.span };
  if (draft.none) {
    return { slot, state: "none", name: "none", place, settings: draft.settings, alternates: [] };
  }
  const resolved = draft.names.map(({ text, span }): Resolved => {
    const at = { declaration, span };
    const key = declarationKey("part", text);
    lookups.push(key);
    const found = context.workshop.lookup(key);
    if (!found) {
      if (context.workshop.complete) {
        findings.push(
          textFinding(declaration, span, "model/unknown-part", `No part is declared with the name ${text}.`, {
            path,
            repairs: [
              { kind: "near-name", place: at, name: text, keyword: "part", kinds: slot.kinds },
              { kind: "swap-part", slot: path },
            ],
          }),
        );
      }
      return { name: text, place: at };
    }
    const part = context.part(found);
    lookups.push(...part.lookups);
    if (part.kind && slot.kinds.length > 0 && !slot.kinds.includes(part.kind.name)) {
      const wanted = slot.kinds.map((kind) => kindByName(kind)?.noun ?? kind);
      findings.push(
        textFinding(
          declaration,
          span,
          "model/wrong-kind",
          `${path} takes ${list(wanted)}; ${text} is ${part.kind.noun}.`,
          {
            path,
            related: [{ message: `${text} is declared here`, place: headerPlace(found) }],
            repairs: [{ kind: "swap-part", slot: path }],
          },
        ),
      );
      return { name: text, place: at, declaredAs: part.kind.noun };
    }
    return { name: text, place: at, part };
  });
  const [first, ...alternates] = resolved;
  if (!first) return undefined;
  const named = new Set([first.name]);
  alternates.forEach(({ name, place: at }, index) => {
    if (!named.has(name)) {
      named.add(name);
      return;
    }
    const before = alternates[index - 1]?.place ?? first.place;
    findings.push(
      textFinding(declaration, at.span, "model/alternate-named-twice", `${path} names ${name} twice.`, {
        path,
        severity: "warning",
        repairs: [
          {
            kind: "change-text",
            title: `Name ${name} once`,
            place: at,
            changes: [{ span: { start: before.span.end, end: at.span.end }, text: "" }],
          },
        ],
      }),
    );
  });
  return {
    slot,
    state: first.part ? "part" : "unknown-part",
    name: first.name,
    ...(first.part ? { part: first.part } : {}),
    ...(first.declaredAs === undefined ? {} : { declaredAs: first.declaredAs }),
    place,
    settings: draft.settings,
    alternates,
  };
}

function list(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? "a part") : `${words.slice(0, -1).join(", ")} or ${words[words.length - 1]}`;
}
