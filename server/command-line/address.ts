/** `FILE#BUILD/PATH`: a build, or something of it. */
export interface Address {
  /** Empty for the folder the command runs in. */
  readonly file: string;
  /** The build's name and the path behind it, still in one: a name may hold a slash. */
  readonly rest: string;
}

/** Takes an address apart at its last `#`, which no name of a build can hold; `undefined` for anything else. */
export function readAddress(text: string): Address | undefined {
  const hash = text.lastIndexOf("#");
  if (hash < 0) return undefined;
  return { file: text.slice(0, hash), rest: text.slice(hash + 1) };
}

/** The ways to read `BUILD/PATH`: the longest name first. */
export function splits(rest: string): readonly { readonly name: string; readonly path: string }[] {
  const ways = [{ name: rest, path: "" }];
  for (let at = rest.lastIndexOf("/"); at > 0; at = rest.lastIndexOf("/", at - 1)) {
    ways.push({ name: rest.slice(0, at), path: rest.slice(at + 1) });
  }
  return ways;
}
