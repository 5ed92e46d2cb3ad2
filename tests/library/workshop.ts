import { Engine } from "../../server/engine/engine.ts";
import type { Declaration } from "../../server/model/declaration.ts";
import { prelude } from "../../server/standards/index.ts";

const uri = "memory:///library.ferrule";

/** A text as a whole workshop. */
export function workshopOf(text: string): Engine {
  const engine = new Engine({ today: "2026-11-25", prelude });
  engine.update([{ uri, text }]);
  engine.complete = true;
  const slips = engine.findings(uri).filter(({ code }) => /^(language|value)\//.test(code));
  if (slips.length > 0) throw new Error(slips.map(({ message }) => message).join("\n"));
  return engine;
}

export const uris = [uri];

export function build(engine: Engine, name: string): Declaration {
  const found = engine.workshop.build(name);
  if (!found) throw new Error(`there is no build ${name}`);
  return found;
}
