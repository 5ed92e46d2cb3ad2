import type { WorkedCase } from "./define.ts";

/** Bolts and wrenches. */
export const fastenerCases: readonly WorkedCase[] = [
  {
    calculation: "bolt-circle",
    inputs: { bolts: "5", "bolt-circle": "94 mm" },
    results: { "bolt-circle-diameter": 94, "adjacent-bolts": 55.25181372, "next-but-one-bolts": 89.39931253 },
    working: ["Neighbours: 94 mm × sin(180° ÷ 5) = 55.252 mm", "Next but one: 94 mm × sin(360° ÷ 5) = 89.399 mm"],
    source: "points on a circle, and the distances between them",
  },
  {
    calculation: "bolt-circle",
    inputs: { bolts: "3", "bolt-circle": "116.5 mm" },
    results: { "bolt-circle-diameter": 116.5, "adjacent-bolts": 100.8919595, "next-but-one-bolts": 100.8919595 },
    working: [
      "Neighbours: 116.5 mm × sin(180° ÷ 3) = 100.892 mm",
      "Next but one: 116.5 mm × sin(360° ÷ 3) = 100.892 mm",
    ],
    source: "points on a circle: of three, the next but one is the other neighbour",
  },
  {
    calculation: "bolt-circle",
    inputs: { bolts: "5", "adjacent-distance": "76.412082798 mm" },
    results: { "bolt-circle-diameter": 130, "adjacent-bolts": 76.4120828, "next-but-one-bolts": 123.6373471 },
    working: ["Diameter: 76.412 mm ÷ sin(180° ÷ 5) = 130 mm"],
    source: "points on a circle of 130 mm, the distance of two neighbours measured back",
  },
  {
    calculation: "bolt-circle",
    inputs: { bolts: "2", "bolt-circle": "55 mm" },
    results: { "bolt-circle-diameter": 55, "adjacent-bolts": 55 },
    source: "by definition: two bolts lie a diameter apart",
  },
  {
    calculation: "bolt-preload",
    inputs: { "bolt-diameter": "8 mm", "thread-pitch": "1.25 mm", "proof-stress": "830 MPa", share: "65 %" },
    results: { "stress-area": 36.60846284, "proof-load": 30385.02416, preload: 19750.2657 },
    source: "by hand with the radius of the core: M8 × 1.25 of class 10.9, to 65 %",
  },
  {
    calculation: "bolt-preload",
    inputs: { "bolt-diameter": "4 mm", "thread-pitch": "0.7 mm", "proof-stress": "970 MPa" },
    results: { "stress-area": 8.778699557, "proof-load": 8515.338571, preload: 6386.503928 },
    source:
      "by hand with the radius of the core: M4 × 0.7 of class 12.9, to the usual 75 %; ISO 898-1 prints 8.78 mm² (from memory)",
  },
  {
    calculation: "clamp-force",
    inputs: { torque: "8 N·m", "bolt-diameter": "6 mm", "friction-factor": "0.17" },
    results: { "clamp-force": 7843.137255 },
    source: "by hand: 8 N·m ÷ (0.17 × 0.006 m)",
  },
  {
    calculation: "clamp-force",
    inputs: { torque: "60 lbf·in", "bolt-diameter": "5 mm", "friction-factor": "0.15" },
    results: { "clamp-force": 9038.786322 },
    source: "by hand: 60 lbf·in are 60 × 0.45359237 × 9.80665 × 0.0254 N·m; ÷ (0.15 × 0.005 m)",
  },
  {
    calculation: "wrench-extension",
    inputs: { "torque-wanted": "35 N·m", "wrench-length": "260 mm", extension: "60 mm", "extension-angle": "60°" },
    results: { "wrench-setting": 31.37931034 },
    source: "by hand: 35 × 260 ÷ (260 + 60 × cos 60°), half of 60 mm in line",
  },
  {
    calculation: "wrench-extension",
    inputs: { "torque-wanted": "48 N·m", "wrench-length": "300 mm", extension: "45 mm", "extension-angle": "180°" },
    results: { "wrench-setting": 56.47058824 },
    source: "by hand: turned back along the wrench, 48 × 300 ÷ (300 − 45)",
  },
];
