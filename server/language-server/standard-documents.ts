import { split } from "../../grammar/split.ts";
import { Declaration } from "../model/declaration.ts";
import { prelude } from "../standards/index.ts";
import type { ListedStandard } from "./protocol.ts";

/** The text of a built-in standard's file. */
export function standardText(uri: string): string | null {
  return prelude.find((file) => file.uri === uri)?.text ?? null;
}

/** Every standard that comes with the program, in the order of its files. */
export function listStandards(): ListedStandard[] {
  return prelude.flatMap(({ uri, text }) =>
    split(text).flatMap((chunk) => {
      const { keyword } = chunk;
      if (keyword === undefined) return [];
      const declaration = new Declaration({ ...chunk, keyword }, text.slice(chunk.start, chunk.end), uri, true);
      const before = text.slice(0, chunk.start + declaration.headerSpan.start);
      const { kind = "", name, title } = declaration;
      return [
        {
          uri,
          line: before.split("\n").length - 1,
          family: kind,
          code: name,
          ...(title === undefined ? {} : { title }),
        },
      ];
    }),
  );
}
