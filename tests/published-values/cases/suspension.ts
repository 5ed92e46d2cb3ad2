import type { WorkedCase } from "./define.ts";

/** Suspension. */
export const suspensionCases: readonly WorkedCase[] = [
  {
    calculation: "leverage",
    inputs: { "rear-travel": "137 mm", stroke: "51 mm" },
    results: { leverage: 2.68627451 },
    source: "by hand: 137 ÷ 51",
  },
  {
    calculation: "leverage",
    inputs: { "rear-travel": "5.5 in", stroke: "2 in" },
    results: { leverage: 2.75 },
    source: "by hand: 5.5 in ÷ 2 in",
  },
  {
    calculation: "shock-sag",
    inputs: { sag: "28 %", stroke: "62.5 mm", "rear-travel": "168 mm" },
    results: { "shock-sag": 17.5, "rear-wheel-sag": 47.04 },
    source: "by hand: 28 % of 62.5 mm and of 168 mm",
  },
  {
    calculation: "shock-sag",
    inputs: { sag: "34 %", stroke: "45 mm" },
    results: { "shock-sag": 15.3 },
    source: "by hand: a third and a little of 45 mm",
  },
  {
    calculation: "fork-sag",
    inputs: { sag: "18 %", travel: "150 mm", "head-angle": "63.5°" },
    results: { "fork-sag": 27, "front-sinks": 24.16322776 },
    source: "by hand: 18 % of 150 mm is 27 mm; × sin 63.5°",
  },
  {
    calculation: "fork-sag",
    inputs: { sag: "22.5 %", travel: "100 mm" },
    results: { "fork-sag": 22.5 },
    source: "by hand: 22.5 % of 100 mm",
  },
  {
    calculation: "spring-rate",
    inputs: { "wheel-load": "480 N", leverage: "2.4", "shock-sag": "16 mm" },
    results: { "shock-force": 1152, "spring-rate": 72, "spring-rate-inch": 411.1305951, "wheel-rate": 12.5 },
    source: "by hand: 480 × 2.4 = 1152 N over 16 mm; one pound-force is 0.45359237 × 9.80665 N; 72 ÷ 2.4²",
  },
  {
    calculation: "spring-rate",
    inputs: { "wheel-load": "55 kgf", leverage: "3.1", "shock-sag": "18.6 mm" },
    results: {
      "shock-force": 1672.033825,
      "spring-rate": 89.89429167,
      "spring-rate-inch": 513.3096338,
      "wheel-rate": 9.35424471,
    },
    source: "by hand: 55 kgf × 3.1 over 18.6 mm",
  },
  {
    calculation: "chain-growth",
    inputs: {
      "pivot-forward": "12 mm",
      "pivot-up": "95 mm",
      "axle-back": "428 mm",
      "axle-up": "28 mm",
      "rear-travel": "158 mm",
      sag: "48 mm",
    },
    results: {
      "rear-centre": 428.91491,
      "growth-full": 33.78578119,
      "growth-greatest": 33.78578119,
      "growth-pitches": 2.660297732,
      "loop-growth": 67.57156239,
      "growth-sag": 10.37544047,
    },
    source: "by NumPy: the arm turned by a matrix until the axle has risen, by Brent's method",
  },
  {
    calculation: "chain-growth",
    inputs: {
      "pivot-forward": "-60 mm",
      "pivot-up": "6 mm",
      "axle-back": "432 mm",
      "axle-up": "-20 mm",
      "rear-travel": "150 mm",
      sag: "40 mm",
    },
    results: {
      "rear-centre": 432.4627152,
      "growth-full": -0.7377062217,
      "growth-greatest": 0.7440338026,
      "growth-pitches": -0.05808710407,
      "loop-growth": 1.488067605,
      "growth-sag": 0.6439141361,
    },
    source:
      "by NumPy in the same way: a pivot behind the crank axis, with which the rear centre is longest on the way and shorter again at full travel",
  },
  {
    calculation: "chain-growth",
    inputs: {
      "pivot-forward": "45 mm",
      "pivot-up": "-30 mm",
      "axle-back": "440 mm",
      "axle-up": "30 mm",
      "rear-travel": "120 mm",
    },
    results: {
      "rear-centre": 441.0215414,
      "growth-full": -5.063534596,
      "growth-greatest": 0,
      "growth-pitches": -0.3987035115,
      "loop-growth": 0,
    },
    source: "by NumPy in the same way: a pivot below the axles, with which the rear centre only shrinks",
  },
  {
    calculation: "coil-sag",
    inputs: {
      "rear-wheel-load": "58.5 kg",
      "unsprung-mass": "3.2 kg",
      "spring-rate": "87 N/mm",
      stroke: "57.5 mm",
      "leverage-start": "2.95",
      "leverage-end": "2.35",
    },
    results: { "sprung-load": 542.307745, "coil-sag": 17.26556736, "coil-sag-share": 30.02707367 },
    source:
      "by Brent's method of SciPy: where the coil's force meets the load times the leverage there, which falls from 2.95 to 2.35",
  },
  {
    calculation: "coil-sag",
    inputs: {
      "rear-wheel-load": "46 kg",
      "unsprung-mass": "2.4 kg",
      "spring-rate": "70 N/mm",
      stroke: "62.5 mm",
      "leverage-start": "2.2",
      "leverage-end": "2.6",
    },
    results: { "sprung-load": 427.56994, "coil-sag": 13.9845999, "coil-sag-share": 22.37535984 },
    source: "by Brent's method of SciPy: a leverage that rises from 2.2 to 2.6",
  },
  {
    calculation: "coil-sag",
    inputs: { "rear-wheel-load": "40 kg", "spring-rate": "30 N/mm", stroke: "30 mm", "leverage-start": "2.5" },
    results: { "sprung-load": 392.266, "coil-sag": 30, "coil-sag-share": 100 },
    source: "by hand: 40 kg at a constant 2.5 press 30 N/mm in by 32.69 mm, more than there is, so all 30 mm",
  },
];
