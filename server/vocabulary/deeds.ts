import type { Deed, Field } from "./define.ts";

/** What somebody does at the bench to give a field a value: "Cut the chain to 110 links". */
export function instruction({ deed }: Field, value: string): string | undefined {
  if (deed === undefined) return undefined;
  const words = typeof deed === "string" ? deed : ownWords(deed, value);
  const isSigned = typeof deed !== "string" && Object.hasOwn(deed, "negative");
  return words?.replace("{}", () => (isSigned ? value.replace(/^-/, "") : value));
}

function ownWords(deed: Exclude<Deed, string>, value: string): string | undefined {
  const way = value.startsWith("-") ? "negative" : "positive";
  return [value, way, "otherwise"].flatMap((key) => (Object.hasOwn(deed, key) ? (deed[key] ?? []) : []))[0];
}
