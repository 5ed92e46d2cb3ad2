import { buildField, optional, setting, slot } from "../../model/need.ts";
import { atLeast, lessThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { otherRoom, racingRoom, roomFor } from "../shared/tyre-room.ts";
import { unknowns } from "../shared/unknowns.ts";

export default defineCheck({
  code: "wheel/mudguard-gap",
  title: "The tyre turns free of its mudguard",
  severity: "error",
  since: 1,
  safety: true,
  instances: [
    { name: "front", slot: "carrying.front-mudguard" },
    { name: "rear", slot: "carrying.rear-mudguard" },
  ] as const,
  needs: ({ slot: path }) => ({
    guard: slot(path),
    gap: setting(path, "gap"),
    asked: optional(buildField("ground.mud-allowance")),
    category: optional(buildField("category")),
  }),
  test({ guard, gap, asked, category }, { name, slot: path }) {
    const usual = roomFor(category);
    // More than any category keeps, or less than all of them, is certain without knowing which it is.
    const sure = lessThan(gap.value, racingRoom) ? racingRoom : atLeast(gap.value, otherRoom) ? otherRoom : undefined;
    // What a build keeps free for mud may be nothing; a guard that close would jam all the same.
    const least = asked.state === "known" ? Math.max(asked.value, racingRoom) : (usual ?? sure);
    if (asked.state === "unknown" || least === undefined) return cannotTell(...unknowns(asked, category));
    const [has = "", keeps = ""] = showPair(gap.value, least, "length");
    const isAsked = asked.state === "known" && asked.value === least;
    const whose = isAsked ? "as the build asks for" : "which is the usual room";
    if (atLeast(gap.value, least)) {
      return holds(
        `${guard.subject} stands ${has} from the ${name} tyre, and ${keeps} is kept free, ${whose}.`,
        gap.value === 0 ? 0 : (gap.value - least) / gap.value,
      );
    }
    return fails(
      `${guard.subject} stands ${has} from the ${name} tyre, but ${keeps} has to be kept free, ${whose}: set the guard farther away, or fit a lower tyre.`,
      gap,
      asked.state === "known" ? [asked] : category.state === "known" ? [category] : [],
      [{ kind: "set-setting", slot: path, setting: "gap", value: keeps }, ...swaps(path)],
    );
  },
  explanation:
    "A mudguard that is close to the tyre packs with mud and leaves, or draws in a twig; a front one then folds under the " +
    "crown and stops the wheel dead. The gap is measured with the tyre inflated, where it is least, and at bridge, crown " +
    "and bolts too. Racing bicycles keep 4 mm, others 6 mm, or what the build asks for against mud, as long as that is " +
    "4 mm at least. A guard whose stays " +
    "let go when something jams is safer, and needs its gap all the same.",
  source:
    "room round the tyre, front mudguard and its bolts included: 4 mm for racing bicycles by EN 14781, as quoted in a forum; 6 mm for others from memory; behind by the same, common practice, no source",
  caution: "A jammed front mudguard throws the rider over the bar.",
  examples: {
    holds: `
part mudguard example.guard "Guard" { wheel: front; widest-tyre: 47 mm }

build example "Ten millimetres of room" {
  category: touring
  carrying.front-mudguard: example.guard { gap: 10 mm }
}
`,
    fails: `
part mudguard example.guard "Guard" { wheel: front; widest-tyre: 47 mm }

build example "Almost on the tyre" {
  category: touring
  carrying.front-mudguard: example.guard { gap: 1 mm }
}
`,
  },
});
