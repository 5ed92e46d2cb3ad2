/** Sets of words that several kinds share. Each word carries its meaning in one line. */

/** What a bicycle is used for. Makers rate parts for these uses; the words are the trade's, not those of one standard. */
export const bikeCategories = {
  mountain: "Trails and rough ground, with jumps and drops as the maker rates them.",
  downhill: "Descents with large jumps and drops, the roughest use.",
  gravel: "Unpaved and poor roads with drop bars.",
  "cyclo-cross": "Races on mixed ground with drop bars.",
  road: "Paved roads at speed.",
  track: "Racing on a banked track.",
  touring: "Long journeys with luggage.",
  city: "Everyday riding on paved roads.",
  cargo: "Carrying loads or passengers on a bicycle built for it.",
  folding: "A bicycle that folds.",
  child: "A bicycle for a child.",
  bmx: "Racing and tricks on small wheels.",
} as const;

export const materials = {
  aluminium: "Aluminium alloy.",
  steel: "Steel, chromium-molybdenum or other.",
  "stainless-steel": "Stainless steel.",
  titanium: "Titanium alloy.",
  carbon:
    "Carbon-fibre composite: friction paste where both makers allow it, never crushed, retired after a suspect crash.",
  magnesium: "Magnesium alloy.",
  brass: "Brass.",
  plastic: "Plastic without structural fibres.",
  rubber: "Rubber or silicone.",
  leather: "Leather.",
  ceramic: "Ceramic.",
  wood: "Wood.",
  mixed: "Several materials; the one at the joint is said in the note.",
} as const;

/** Whose mass a maker's greatest system mass counts. */
export const systemMassDefinitions = {
  rider: "The rider alone.",
  "rider-and-kit": "The rider with clothing, luggage and whatever is carried, without the bicycle.",
  "all-up": "The rider, what is carried, and the bicycle itself.",
} as const;

/** Drive side is right, seen from the saddle. */
export const sides = {
  left: "The left side, seen from the saddle: the non-drive side.",
  right: "The right side, seen from the saddle: the drive side.",
} as const;

export const eitherSide = {
  ...sides,
  either: "Either side: it can be turned over.",
} as const;

export const wheelPositions = {
  front: "The front wheel.",
  rear: "The rear wheel.",
} as const;

/** How a cable, hose or wire runs. */
export const routings = {
  external: "Along the outside, with stops or guides.",
  internal: "Through the tubes, entering away from the headset.",
  "through-headset": "Through the upper headset bearing.",
  wireless: "No cable or wire.",
} as const;

export const shiftActuations = {
  cable: "A cable pulls and a spring returns.",
  electronic: "A motor moves it; controllers are paired or wired to it.",
  hydraulic: "Fluid moves it.",
  rod: "A rod or toggle chain moves it.",
} as const;

export const brakeActuations = {
  cable: "A cable pulls it.",
  hydraulic: "Fluid pushes it.",
  rod: "A rod moves it.",
} as const;

/**
 * How much cable a brake lever pulls. Long and short differ by roughly two to one and never interchange; a road lever
 * lies between and its calipers are made for it.
 */
export const brakePulls = {
  short: "Short pull, for cantilevers and short-arm or road calipers of the older kind.",
  road: "The pull of drop-bar levers, for road calipers and disc calipers made for them.",
  long: "Long pull, for long direct-pull arms and disc calipers made for flat-bar levers.",
} as const;

export const padCompounds = {
  resin: "Organic or resin-bonded.",
  "semi-metallic": "Resin-bonded with metal in it.",
  sintered: "Sintered metal, which wears a soft rotor through quickly.",
  rubber: "Rubber, for rims.",
} as const;

export const axleSeats = {
  flat: "A flat shoulder seats against a flat face.",
  conical: "A cone seats in a conical recess; flat and conical ends never interchange.",
  insert: "An insert of the frame or fork takes the axle's end, of the kind its maker supplies.",
} as const;

export const axleFastenings = {
  through: "A thru axle screwed into the frame or fork, seated on both sides.",
  "quick-release": "A hollow axle in open dropouts, held by a quick-release skewer.",
  nutted: "A solid axle in open dropouts, held by nuts.",
  bolted: "A hollow or solid axle in open dropouts, held by bolts into it.",
  "single-sided": "A stub axle carried on one side.",
} as const;

export const closures = {
  "closure-link": "A separate closure link of two halves.",
  pin: "A joining pin pressed in.",
  "spring-clip": "A link with a spring clip, for single-speed chains.",
} as const;

export const threadTreatments = {
  dry: "Left clean and dry, because the maker forbids grease there.",
  grease: "Lightly greased.",
  threadlocker: "Threadlocker of the strength the maker names.",
  "anti-seize": "Anti-seize compound, for titanium and mixed metals.",
  "friction-paste": "Carbon assembly paste, where both makers allow it.",
} as const;

/** What somebody does for each of them. */
export const treatmentDeeds: Readonly<Record<keyof typeof threadTreatments, string>> = {
  dry: "Leave the clamp clean and dry",
  grease: "Grease the clamp lightly",
  threadlocker: "Use threadlocker",
  "anti-seize": "Use anti-seize compound",
  "friction-paste": "Put friction paste into the clamp",
};

/** Things that the maker of a frame, fork or rim may forbid on it. */
export const forbiddenThings = {
  "rim-brake": "Any rim brake.",
  "disc-brake": "Any disc brake.",
  "coaster-brake": "A back-pedal hub brake.",
  "front-derailleur": "A front derailleur.",
  belt: "A belt drive.",
  "sprung-tensioner": "A sprung chain tensioner.",
  "gear-hub": "A hub with gears inside.",
  "friction-paste": "Carbon assembly paste.",
  "star-nut": "A star nut in the steerer.",
  "dropper-post": "A dropper post.",
  "seat-shim": "A shim in the seat tube.",
  "tubeless-tyre": "A tyre without a tube.",
  "sintered-pads": "Sintered pads.",
  mudguard: "Mudguards.",
  rack: "A luggage rack.",
  "child-seat": "A child seat.",
  trailer: "A trailer.",
  "centre-stand": "A stand clamped behind the crank axis.",
  "double-crown-fork": "A fork with two crowns.",
  "motor-kit": "A retrofitted motor.",
} as const;
