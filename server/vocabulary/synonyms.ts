/**
 * What people call a fact by habit, and what the vocabulary calls it. Never read as the fact itself: only offered when
 * the word is no field of its own, and only where the kind or slot has the field that is meant.
 */
const synonyms: Readonly<Record<string, readonly string[]>> = {
  weight: ["mass"],
  weights: ["mass"],
  cost: ["price"],
  rrp: ["price"],
  color: ["colour"],
  sprockets: ["cogs"],
  "tooth-counts": ["cogs"],
  gears: ["speeds", "gears"],
  "number-of-gears": ["speeds"],
  cogset: ["cassette"],
  tooth: ["teeth"],
  "tooth-count": ["teeth"],
  chainrings: ["rings"],
  "max-cog": ["largest-cog"],
  "max-sprocket": ["largest-cog"],
  "largest-sprocket": ["largest-cog"],
  "min-cog": ["smallest-cog"],
  capacity: ["total-capacity"],
  "cage-capacity": ["total-capacity"],
  "bb-shell": ["bottom-bracket-shell"],
  "bottom-bracket": ["bottom-bracket-shell"],
  bb: ["bottom-bracket", "bottom-bracket-shell"],
  "chain-stay": ["chainstay"],
  "chainstay-length": ["chainstay"],
  driver: ["freehub"],
  "freehub-body": ["freehub"],
  "hub-width": ["rear-axle", "axle"],
  oln: ["axle"],
  "over-locknut": ["axle"],
  "inner-width": ["inner-width", "width"],
  bsd: ["bead-seat"],
  erd: ["effective-rim-diameter"],
  psi: ["pressure"],
  "bolt-torque": ["mounting-torque", "clamp-torque", "bolt-torque"],
  torque: ["mounting-torque", "clamp-torque", "bolt-torque"],
  clamp: ["mount", "control-clamp", "clamp-diameter"],
  diameter: ["clamp-diameter", "post-diameter", "rotor-diameter", "diameter"],
  "clamp-size": ["clamp-diameter", "control-clamp"],
  "rider-weight": ["mass"],
  "max-rider-weight": ["rider-mass-limit"],
  derailleur: ["rear-derailleur"],
  mech: ["rear-derailleur"],
  shifter: ["rear-controller"],
  "rear-shifter": ["rear-controller"],
  "front-shifter": ["front-controller"],
  cranks: ["crankset"],
  crank: ["crankset"],
  ring: ["chainring"],
  "quick-link": ["closure-link"],
  "master-link": ["closure-link"],
  bars: ["handlebar"],
  bar: ["handlebar"],
  handlebars: ["handlebar"],
  seatpost: ["post"],
  tire: ["tyre"],
  disc: ["rotor"],
  "brake-lever": ["lever"],
  wheel: ["built-wheel"],
  wheelset: ["built-wheel"],
};

/** Fields that somebody may mean by a word, of those there are. */
export function meantBy(word: string, known: Iterable<string>): readonly string[] {
  const names = new Set(known);
  const key = word.toLowerCase();
  const meant = Object.hasOwn(synonyms, key) ? (synonyms[key] ?? []) : [];
  return meant.filter((name) => names.has(name));
}
