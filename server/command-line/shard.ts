import { UsageProblem } from "./problem.ts";
import type { ReadWorkshop } from "./read-workshops.ts";

/** One of several shares of a check, as machines of a build server take one each. */
export interface Shard {
  /** From 1 to `count`. */
  readonly number: number;
  readonly count: number;
}

const mostShards = 10_000;

/** @throws UsageProblem for anything but two whole numbers such as `2/5`, the first from 1 to the second. */
export function readShard(written: string): Shard {
  const match = /^(\d{1,5})\/(\d{1,5})$/.exec(written);
  const number = Number(match?.[1]);
  const count = Number(match?.[2]);
  if (!(number >= 1 && number <= count && count <= mostShards)) {
    throw new UsageProblem(
      `--shard takes which share of how many, such as 2/5, of at most ${mostShards}; ${written} was given.`,
    );
  }
  return { number, count };
}

/**
 * The workshops with only a share of the files that were asked for: of `count` files one after another each share has
 * one, so that large folders of one kind of bicycle are spread. Everything of a workshop is still read, since parts
 * may stand anywhere.
 */
export function takeShard(workshops: readonly ReadWorkshop[], { number, count }: Shard): readonly ReadWorkshop[] {
  let next = 0;
  return workshops
    .map((workshop) => {
      const own = workshop.files.filter(({ path }) => workshop.asked.has(path) && next++ % count === number - 1);
      return { ...workshop, asked: new Set(own.map(({ path }) => path)) };
    })
    .filter(({ asked }) => asked.size > 0);
}
