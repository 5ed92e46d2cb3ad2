import type { WorkedCase } from "./define.ts";

/** Masses, loads and prices of the whole bicycle. */
export const wholeBikeCases: readonly WorkedCase[] = [
  {
    calculation: "mass",
    inputs: { masses: "1250, 640 g" },
    results: { "mass-at-least": 1890, "unweighed-parts": [] },
    source: "by hand: 1250 + 640; nothing is named, so nothing is heaviest",
  },
  {
    calculation: "mass",
    inputs: { masses: "1, 1, 2.5 lb", parts: '"grips, bell, frame"', unweighed: '"chain, saddle"' },
    results: { "mass-at-least": 2041.165665, "heaviest-part": "frame", "unweighed-parts": ["chain", "saddle"] },
    source: "by hand: 2.5 lb of 453.59237 g each, and twice 1 lb; the heaviest comes last",
  },
  {
    calculation: "price",
    inputs: { prices: '"GBP 1049.99, EUR 84.30, GBP 0.01, GBP 12.50"' },
    results: { "price-at-least": ["GBP 1062.50", "EUR 84.30"], "unpriced-parts": [] },
    source: "by hand: 1049.99 + 0.01 + 12.5 in one currency, 84.3 in another",
  },
  {
    calculation: "price",
    inputs: { prices: '"SEK 0.10, SEK 0.20"', unpriced: '"frame"' },
    results: { "price-at-least": ["SEK 0.30"], "unpriced-parts": ["frame"] },
    source: "by hand: 0.1 + 0.2 is 0.3, as ten-thousandths add up",
  },
  {
    calculation: "riding-load",
    inputs: { "rider-mass": "62 kg", "kit-mass": "7.5 kg", "bike-mass": "13.9 kg", "front-share": "38 %" },
    results: { "all-up-mass": 83400, "front-wheel-load": 31692, "rear-wheel-load": 51708 },
    source: "by hand: 62 + 7.5 + 13.9 = 83.4 kg, 38 % of it in front",
  },
  {
    calculation: "riding-load",
    inputs: { "rider-mass": "160 lb", "kit-mass": "0 kg", "bike-mass": "22 lb" },
    results: { "all-up-mass": 82553.81134, "front-wheel-load": 37149.2151, "rear-wheel-load": 45404.59624 },
    source: "by hand: 160 lb of 453.59237 g, 22 lb and none, 45 % by common practice",
  },
  {
    calculation: "riding-load",
    inputs: {
      "rider-mass": "68 kg",
      "kit-mass": "12 kg",
      "bike-mass": "16 kg",
      "front-share": "42 %",
      "front-rack-load": "6 kg",
      "rear-rack-load": "18 kg",
    },
    results: { "all-up-mass": 108000, "front-wheel-load": 41280, "rear-wheel-load": 66720 },
    source: "by hand: the racks carry 24 kg, so 68 + 24 + 16 = 108 kg; 6 + 0.42 × 84 = 41.28 kg in front",
  },
  {
    calculation: "centre-of-mass",
    inputs: { masses: "78.5, 2.1, 1.6, 9.3 kg", forward: "395, 0, 1043, 520 mm", heights: "1012, 345, 345, 498 mm" },
    results: { "total-mass": 91.5, "centre-forward": 409.9704918, "centre-height": 932.7857923 },
    source: "by NumPy's weighted average",
  },
  {
    calculation: "centre-of-mass",
    inputs: { masses: "3, 1 kg", forward: "-200, 600 mm", heights: "700, 300 mm" },
    results: { "total-mass": 4, "centre-forward": 0, "centre-height": 600 },
    source: "by hand: 3 kg 200 mm behind the rear wheel and 1 kg 600 mm in front of it balance upon it",
  },
  {
    calculation: "wheel-loads",
    inputs: { mass: "103.5 kg", wheelbase: "1187 mm", "centre-forward": "512 mm", "centre-height": "1043 mm" },
    results: {
      "front-share": 43.13395114,
      "rear-share": 56.86604886,
      "front-force": 437.8045466,
      "rear-force": 577.1837284,
      "centre-for-quarter": 296.75,
      "pitch-over-share": 64.71716203,
      "pitch-over-deceleration": 6.34658557,
    },
    source: "by moments about either contact: rear force × wheelbase = weight × (1187 − 512)",
  },
  {
    calculation: "wheel-loads",
    inputs: { mass: "81 kg", wheelbase: "985 mm", "centre-forward": "246.25 mm" },
    results: {
      "front-share": 25,
      "rear-share": 75,
      "front-force": 198.5846625,
      "rear-force": 595.7539875,
      "centre-for-quarter": 246.25,
    },
    source: "by moments: the centre at just a quarter of the wheelbase",
  },
];
