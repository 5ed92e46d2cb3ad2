import type { WorkedCase } from "./define.ts";

/** Brakes. */
export const brakeCases: readonly WorkedCase[] = [
  {
    calculation: "rotor-adapter",
    inputs: { "native-rotor": "180 mm", rotor: "203 mm" },
    results: { "rotor-change-needed": 23, "caliper-shift": 11.5 },
    working: ["Change: 203 mm − 180 mm = 23 mm", "Shift: 23 mm ÷ 2 = 11.5 mm"],
    source: "by hand: (203 − 180) ÷ 2",
  },
  {
    calculation: "rotor-adapter",
    inputs: { "native-rotor": "160 mm", rotor: "160 mm" },
    results: { "rotor-change-needed": 0, "caliper-shift": 0 },
    source: "by hand: the rotor that the mount is made for needs nothing",
  },
  {
    calculation: "rotor-adapter",
    inputs: { "native-rotor": "160 mm", rotor: "220 mm" },
    results: { "rotor-change-needed": 60, "caliper-shift": 30 },
    source: "by hand: (220 − 160) ÷ 2",
  },
];
