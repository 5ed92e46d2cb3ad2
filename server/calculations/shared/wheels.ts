/** The two wheels of a bicycle, which most numbers of a wheel are worked out for. */
export const wheels = ["front-wheel", "rear-wheel"] as const;
export type Wheel = (typeof wheels)[number];

/**
 * The path of a slot of a wheel. Both wheels have the same slots of the same kinds, so the type names the front one's.
 */
export function ofWheel<const Name extends string>(wheel: Wheel, name: Name): `front-wheel.${Name}` {
  return `${wheel}.${name}` as `front-wheel.${Name}`;
}
