import type { Repair } from "../model/finding.ts";
import type { Breach } from "./breach.ts";
import type { PathMeaning } from "./paths.ts";
import type { Rule } from "./rule.ts";
import { type ComparisonSign, pathsOf, type Typed } from "./typed-expression.ts";

/** What would mend a breach: what the rule itself says, then what follows from the comparison. */
export function repairsOf(rule: Rule, found: readonly (readonly Breach[])[]): readonly Repair[] {
  const said = rule.settings.flatMap(({ meaning, value }) => setting(meaning, value));
  const repairs = [...said, ...found.flat().flatMap(fromComparison)];
  const seen = new Set<string>();
  return repairs.filter((repair) => {
    const key = JSON.stringify(repair);
    return seen.has(key) ? false : Boolean(seen.add(key));
  });
}

function fromComparison({ expression, isWanted }: Breach): readonly Repair[] {
  switch (expression.form) {
    case "absence": {
      const [meaning] = pathsOf(expression.operand).values();
      if (!meaning) return [];
      if (expression.isNone === isWanted)
        return meaning.what === "slot" ? [{ kind: "leave-empty", slot: meaning.path }] : [];
      return meaning.what === "slot" ? [{ kind: "insert-part", slot: meaning.path }] : swap(meaning);
    }
    case "comparison":
      return compared(expression.sign, expression.left, expression.right, isWanted);
    case "membership":
      return [...pathsOf(expression).values()].flatMap(swap);
    default:
      return [...pathsOf(expression).values()].flatMap(swap);
  }
}

/** A setting compared with a written number is set to it; a fact asks for another part. */
function compared(sign: ComparisonSign, left: Typed, right: Typed, isWanted: boolean): readonly Repair[] {
  const [of, bound] = left.form === "path" ? [left, right] : [right, left];
  const isIncluded = (sign === "is" || sign === "<=" || sign === ">=") === isWanted;
  if (of.form === "path" && bound.form === "constant" && isIncluded) {
    const written = setting(of.meaning, bound.written);
    if (written.length > 0) return written;
  }
  return [...pathsOf(left).values(), ...pathsOf(right).values()].flatMap(swap);
}

function setting({ path, what }: PathMeaning, value: string): readonly Repair[] {
  if (what === "setting") {
    const dot = path.lastIndexOf(".");
    return [{ kind: "set-setting", slot: path.slice(0, dot), setting: path.slice(dot + 1), value }];
  }
  if (what === "slot" && value === "none") return [{ kind: "leave-empty", slot: path }];
  return what === "field" || what === "slot" ? [{ kind: "set-field", field: path, value }] : [];
}

function swap({ path, what }: PathMeaning): readonly Repair[] {
  if (what === "slot") return [{ kind: "swap-part", slot: path }];
  return what === "fact" ? [{ kind: "swap-part", slot: path.slice(0, path.lastIndexOf(".")) }] : [];
}
