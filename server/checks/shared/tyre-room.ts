import type { Maybe } from "../../model/need.ts";

/** Room round a tyre, in millimetres, where neither maker nor build says any. */
export const racingRoom = 4;
export const otherRoom = 6;
const racing: readonly string[] = ["road", "track", "cyclo-cross"];

/** The room that bicycles of a category keep round their tyres; `undefined` while the category is not known. */
export function roomFor(category: Maybe<string>): number | undefined {
  if (category.state !== "known") return undefined;
  return racing.includes(category.value) ? racingRoom : otherRoom;
}
