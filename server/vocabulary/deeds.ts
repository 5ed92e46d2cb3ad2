import type { Field } from "./define.ts";

/** What somebody does at the bench to give a field a value: "Cut the chain to 110 links". */
export function instruction({ deed }: Field, value: string): string | undefined {
  const words =
    typeof deed === "string" ? deed : deed && Object.hasOwn(deed, value) ? deed[value] : deed?.["otherwise"];
  return words?.replace("{}", () => value);
}
