import type { Code } from "../values/types.ts";
import type { Field, Slot } from "../vocabulary/define.ts";
import { buildFields, kindByName, slotByPath, workshopFields } from "../vocabulary/index.ts";
import type { Assembly, Installed } from "./assembly.ts";
import { headerPlace, type Place } from "./declaration.ts";
import type { Facts, Known, Maybe, Missing, Need, Needs, OfSlot, Unknown } from "./need.ts";
import { omittedFact, omittedSlot } from "./omission.ts";
import { type ResolvedCode, resolveCode } from "./standard.ts";
import type { Statement } from "./stated.ts";
import type { Workshop } from "./workshop.ts";
import { statedByWorkshop } from "./workshop-fields.ts";

/** Works out a number of the build by its path; given by the stage that owns the calculations. */
export type Worker = (quantity: string) => Maybe;

/** What resolving a set of needs comes to. */
export type Resolution<N extends Needs> =
  | { readonly state: "known"; readonly facts: Facts<N> }
  | { readonly state: "unknown"; readonly missing: readonly Missing[] }
  | { readonly state: "none"; readonly path: string };

/** The names and needs of a set, listed once: sets of needs are few and are resolved for every build. */
const rowsOf = new WeakMap<Needs, readonly (readonly [string, Need])[]>();

function rows(needs: Needs): readonly (readonly [string, Need])[] {
  const kept = rowsOf.get(needs);
  if (kept) return kept;
  const listed = Object.entries(needs);
  rowsOf.set(needs, listed);
  return listed;
}

/** By which the declaration of the workshop is looked up. */
const workshopKey = "workshop";

const factNeeds = new Map<string, Map<string, Need>>();

/** The need for one fact of one slot: always the same object, so that its answer is kept like any other. */
function factNeed(slot: string, field: string): Need {
  let bySlot = factNeeds.get(field);
  if (!bySlot) {
    bySlot = new Map();
    factNeeds.set(field, bySlot);
  }
  let need = bySlot.get(slot);
  if (!need) {
    need = { kind: "fact", slot, field, optional: true };
    bySlot.set(slot, need);
  }
  return need;
}

/** Answers needs on one assembled build; a need that many checks share is answered once. */
export class FactReader {
  readonly assembly: Assembly;
  readonly #workshop: Workshop;
  readonly #worker: Worker;
  /** Keys looked up while answering, found or not. */
  readonly lookups: string[] = [];
  readonly #codes = new Map<string, ResolvedCode | undefined>();
  readonly #answers = new Map<Need, Maybe>();
  readonly #slots = new Map<string, Maybe<Installed>>();

  readonly #known: ((need: Need) => Maybe | undefined) | undefined;

  /** @param known answers that need not be read again, for a build that is like another one. */
  constructor(assembly: Assembly, workshop: Workshop, worker: Worker, known?: (need: Need) => Maybe | undefined) {
    this.assembly = assembly;
    this.#workshop = workshop;
    this.#worker = worker;
    this.#known = known;
  }

  /**
   * Resolves all needs at once. Something stated to be absent makes the question not applicable; otherwise anything
   * unknown makes it unknown, and all that is missing is named, not only the first.
   */
  resolve<N extends Needs>(needs: N): Resolution<N> {
    const facts: Record<string, unknown> = {};
    const missing: Missing[] = [];
    for (const [name, need] of rows(needs)) {
      const answer = this.answer(need);
      facts[name] = answer;
      if (need.optional) continue;
      // An absence decides by itself; what the others are would change nothing.
      if (answer.state === "none") return { state: "none", path: answer.path };
      if (answer.state === "unknown") missing.push(...answer.missing);
    }
    if (missing.length > 0) return { state: "unknown", missing: distinct(missing) };
    return { state: "known", facts: facts as Facts<N> };
  }

  answer(need: Need): Maybe {
    // Numbers are kept by whoever works them out, which knows when one is only half worked out.
    if (need.kind === "worked") return this.#worker(need.quantity);
    const kept = this.#answers.get(need);
    if (kept) return kept;
    const answer = this.#known?.(need) ?? this.#read(need);
    this.#answers.set(need, answer);
    return answer;
  }

  #read(need: Exclude<Need, { kind: "worked" }>): Maybe {
    switch (need.kind) {
      case "fact":
        return this.#fact(need.slot, need.field);
      case "setting":
        return this.#setting(need.slot, need.setting);
      case "slot":
        return this.#slot(need.slot);
      case "field":
        return this.#field(need.field);
      case "workshop-field":
        return this.#workshopField(need.field);
      case "fact-of-named":
        return this.#factOfNamed(need.slot, need.setting, need.field);
      case "every-fact":
        return this.#everything(this.#every((path) => this.answer(factNeed(path, need.field)), need.field));
      case "every-setting":
        return this.#everything(
          this.#every((path) => this.#setting(path, need.setting), undefined).filter(
            ({ fact }) => fact.state === "known",
          ),
        );
      case "every-slot":
        return this.#everything(this.assembly.slots);
    }
  }

  #everything(value: unknown): Known {
    const place = headerPlace(this.assembly.declaration);
    return { state: "known", value, written: "", path: "", subject: this.assembly.declaration.label, place };
  }

  #every(read: (path: string) => Maybe, field: string | undefined): OfSlot[] {
    const rows: OfSlot[] = [];
    for (const [path, installed] of this.assembly.slots) {
      if (installed.state === "none") continue;
      if (field !== undefined && installed.part && !Object.hasOwn(installed.part.kind?.fields ?? {}, field)) continue;
      rows.push({ slot: path, installed, fact: read(path) as OfSlot["fact"] });
    }
    return rows;
  }

  /** Every fact and setting of a slot asks for the slot first, so its answer is kept. */
  #slot(path: string): Maybe<Installed> {
    const kept = this.#slots.get(path);
    if (kept) return kept;
    const answer = this.#readSlot(path);
    this.#slots.set(path, answer);
    return answer;
  }

  #readSlot(path: string): Maybe<Installed> {
    const installed = this.assembly.slots.get(path);
    const row = slotByPath(path);
    if (!installed) {
      const place = headerPlace(this.assembly.declaration);
      if (row && omittedSlot(row, this.assembly.slots) === "none") return { state: "none", path, place };
      return unknown(path, whichPart(path), place);
    }
    if (installed.state === "none") return { state: "none", path, place: installed.place };
    if (installed.state === "unknown-part") {
      const why = installed.declaredAs === undefined ? "no library declares" : `is declared as ${installed.declaredAs}`;
      return spoilt(path, `the part ${installed.name} (${path}), which ${why}`, installed.place);
    }
    return {
      state: "known",
      value: installed,
      written: installed.name,
      path,
      subject: label(installed),
      place: installed.place,
    };
  }

  #fact(path: string, fieldName: string): Maybe {
    const here = this.#slot(path);
    if (here.state !== "known") return here;
    const part = here.value.part;
    if (!part) return unknown(path, `the part in ${path}`, here.place);
    const field = part.kind?.fields[fieldName];
    const factPath = `${path}.${fieldName}`;
    // The slot takes several kinds and this one has no such fact: the question does not arise.
    if (!field) return { state: "none", path: factPath, place: here.place };
    const subject = label(here.value);
    const missing = () => ({ what: `${fieldName} of ${subject} (${path})`, place: headerPlace(part.declaration) });
    const omitted = omittedFact(field, part.facts);
    return this.#statement(part.facts.get(fieldName), field, factPath, subject, missing, omitted);
  }

  #setting(path: string, name: string): Maybe {
    const here = this.#slot(path);
    if (here.state !== "known") return here;
    const field = slotByPath(path)?.settings[name];
    const settingPath = `${path}.${name}`;
    if (!field) return { state: "none", path: settingPath, place: here.place };
    return this.#statement(here.value.settings.get(name), field, settingPath, this.assembly.declaration.label, () => ({
      what: `${name} of ${path} in the build`,
      place: here.place,
    }));
  }

  #field(name: string): Maybe {
    const field = (buildFields as Readonly<Record<string, Field>>)[name];
    const place = headerPlace(this.assembly.declaration);
    if (!field) return unknown(name, name, place);
    return this.#statement(this.assembly.fields.get(name), field, name, this.assembly.declaration.label, () => ({
      what: `${name} of the build`,
      place,
    }));
  }

  #workshopField(name: string): Maybe {
    this.lookups.push(workshopKey);
    const declaration = this.#workshop.lookup(workshopKey);
    const field = (workshopFields as Readonly<Record<string, Field>>)[name];
    const path = `${name} of the workshop`;
    if (!declaration || !field) return { state: "none", path, place: headerPlace(this.assembly.declaration) };
    const place = headerPlace(declaration);
    const missing = () => ({ what: `${name} of ${declaration.label}`, place });
    // Nobody has to say where a workshop trades: what it leaves out is not asked for by its builds.
    return this.#statement(statedByWorkshop(declaration).get(name), field, path, declaration.label, missing, "none");
  }

  #factOfNamed(path: string, settingName: string, fieldName: string): Maybe {
    const named = this.#setting(path, settingName);
    if (named.state !== "known") return named;
    return this.#fact(String(named.value), fieldName);
  }

  #statement(
    statement: Statement | undefined,
    field: Field,
    path: string,
    subject: string,
    missing: () => { readonly what: string; readonly place: Place },
    omitted = field.omitted,
  ): Maybe {
    if (!statement) {
      const { what, place } = missing();
      return omitted === "none" ? { state: "none", path, place } : unknown(path, what, place);
    }
    if (statement.state === "none") return { state: "none", path, place: statement.place };
    if (statement.state === "unreadable") {
      return spoilt(path, `${missing().what}, which cannot be read as written`, statement.place);
    }
    // A reference that names no slot has a finding of its own; what hangs on it cannot be judged.
    if (field.type.type === "slot" && !slotByPath(String(statement.value))) {
      return spoilt(path, `${missing().what}, which names no slot`, statement.place);
    }
    const known: Known = {
      state: "known",
      value: statement.value,
      written: statement.written,
      path,
      subject,
      place: statement.place,
    };
    return this.#withStandards(known, field, missing);
  }

  /** Puts the declared standard behind a code; a code without one is unknown. */
  #withStandards(known: Known, field: Field, missing: () => { readonly what: string }): Maybe {
    if (field.type.type === "code") {
      const code = known.value as Code;
      const found = this.#code(code);
      return found ? { ...known, value: found } : undeclared([code], known.path, missing().what, known.place);
    }
    if (field.type.type === "codes") {
      const codes = (known.value as readonly Code[]).map((code) => ({ code, found: this.#code(code) }));
      const lost = codes.filter(({ found }) => !found).map(({ code }) => code);
      if (lost.length > 0) return undeclared(lost, known.path, missing().what, known.place);
      return { ...known, value: codes.map(({ found }) => found) };
    }
    return known;
  }

  #code(code: Code): ResolvedCode | undefined {
    const key = `${code.family} ${code.code}`;
    if (!this.#codes.has(key)) this.#codes.set(key, resolveCode(code, this.#workshop, this.lookups));
    return this.#codes.get(key);
  }
}

function undeclared(codes: readonly Code[], path: string, what: string, place: Place): Unknown {
  const named = codes.map(({ family, code }) => `${family} ${code}`).join(", ");
  return spoilt(path, `${what}, whose ${named} no standard declares`, place);
}

/** What is written is of no use, which is said where it stands; here it only leaves a question open. */
function spoilt(path: string, what: string, place: Place): Unknown {
  return { state: "unknown", missing: [{ path, what, place, spoilt: true }] };
}

function unknown(path: string, what: string, place: Place): Unknown {
  return { state: "unknown", missing: [{ path, what, place }] };
}

/** `hub is`, `spokes are`: what may stand in a slot, with its verb. */
/** The question for a place about which nobody said anything: "which chain is fitted (drivetrain.chain)". */
export function whichPart(path: string): string {
  return `which ${kindsOf(slotByPath(path))} fitted (${path})`;
}

function kindsOf(row: Slot | undefined): string {
  const nouns = (row?.kinds ?? []).map((kind) => kindByName(kind)?.noun ?? `a ${kind}`);
  // "spokes", but neither "a pair of grips" nor "rim tape".
  const isPlural = nouns.length > 0 && nouns.every((noun) => !/^an? /.test(noun) && noun.endsWith("s"));
  const named = nouns.map((noun) => noun.replace(/^an? /, "")).join(" or ");
  return `${named || "part"} ${isPlural ? "are" : "is"}`;
}

/** What to call an installed part in a sentence. */
export function label(installed: Installed): string {
  return installed.part?.declaration.label ?? installed.name;
}

function distinct(missing: readonly Missing[]): readonly Missing[] {
  const seen = new Set<string>();
  return missing.filter(({ path, what }) => {
    const key = `${path}\n${what}`;
    return seen.has(key) ? false : Boolean(seen.add(key));
  });
}
