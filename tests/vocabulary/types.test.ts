import { expect, expectTypeOf, test } from "vitest";
import type { Code, Interval, Money, MoneyInterval, Teeth } from "../../server/values/types.ts";
import type {
  BuildFieldName,
  BuildFieldValue,
  FactField,
  FactValue,
  KindName,
  SettingField,
  SettingValue,
  SlotKind,
  SlotPath,
} from "../../server/vocabulary/index.ts";

/** These are proved by the compiler; `npm run check` fails where one does not hold. */
test("names carry the types of their values", () => {
  expectTypeOf<FactValue<"drivetrain.cassette", "cogs">>().toEqualTypeOf<Teeth>();
  expectTypeOf<FactValue<"drivetrain.cassette", "freehub">>().toEqualTypeOf<Code>();
  expectTypeOf<FactValue<"rear-wheel.hub", "freehub">>().toEqualTypeOf<readonly Code[]>();
  expectTypeOf<FactValue<"drivetrain.cassette", "mass">>().toEqualTypeOf<number>();
  expectTypeOf<FactValue<"drivetrain.cassette", "price">>().toEqualTypeOf<Money>();
  expectTypeOf<FactValue<"drivetrain.rear-derailleur", "total-capacity">>().toEqualTypeOf<number>();
  expectTypeOf<FactValue<"drivetrain.rear-derailleur", "set-up">>().toEqualTypeOf<
    "cable" | "electronic" | "direct-mount"
  >();
  expectTypeOf<FactValue<"drivetrain.rear-derailleur", "mounting-torque">>().toEqualTypeOf<Interval>();
  expectTypeOf<FactValue<"frame", "chainstay">>().toEqualTypeOf<Interval>();
  expectTypeOf<FactValue<"frame", "rear-travel">>().toEqualTypeOf<number>();
  expectTypeOf<FactValue<"frame", "belt-opening">>().toEqualTypeOf<boolean>();
  expectTypeOf<SettingValue<"drivetrain.chain", "links">>().toEqualTypeOf<number>();
  expectTypeOf<SettingValue<"drivetrain.rear-controller", "clamp">>().toEqualTypeOf<string>();
  expectTypeOf<SettingValue<"rear-brake.lever", "side">>().toEqualTypeOf<"left" | "right">();
  expectTypeOf<BuildFieldValue<"rider.mass">>().toEqualTypeOf<number>();
  expectTypeOf<BuildFieldValue<"budget.mass">>().toEqualTypeOf<Interval>();
  expectTypeOf<BuildFieldValue<"budget.price">>().toEqualTypeOf<MoneyInterval>();
  expectTypeOf<SlotKind<"drivetrain.cassette">>().toEqualTypeOf<"cassette" | "freewheel" | "sprocket">();
  expectTypeOf<SettingField<"frame">>().toEqualTypeOf<never>();
  expectTypeOf<"cassette">().toExtend<KindName>();
});

test("a misspelt name does not compile", () => {
  // @ts-expect-error cogg is no fact of a cassette
  const fact: FactField<"drivetrain.cassette"> = "cogg";
  // @ts-expect-error casette is no slot
  const slot: SlotPath = "drivetrain.casette";
  // @ts-expect-error link is no setting of a chain
  const setting: SettingField<"drivetrain.chain"> = "link";
  // @ts-expect-error rider.weight is no field of a build
  const field: BuildFieldName = "rider.weight";
  expect([fact, slot, setting, field]).toHaveLength(4);
});
