// Written by `npm run generate` from the files of this folder; edit those instead.

import type { Calculation } from "./define.ts";
import drivetrainCapacityNeeded from "./drivetrain/capacity-needed.ts";
import drivetrainChainAngle from "./drivetrain/chain-angle.ts";
import drivetrainChainLength from "./drivetrain/chain-length.ts";
import drivetrainChainlineOffset from "./drivetrain/chainline-offset.ts";
import drivetrainCogSteps from "./drivetrain/cog-steps.ts";
import drivetrainFrontChainline from "./drivetrain/front-chainline.ts";
import drivetrainFrontDifference from "./drivetrain/front-difference.ts";
import drivetrainGainRatios from "./drivetrain/gain-ratios.ts";
import drivetrainGearDevelopments from "./drivetrain/gear-developments.ts";
import drivetrainGearRatios from "./drivetrain/gear-ratios.ts";
import drivetrainGearSpeeds from "./drivetrain/gear-speeds.ts";
import drivetrainGearTable from "./drivetrain/gear-table.ts";
import drivetrainIndexingError from "./drivetrain/indexing-error.ts";
import drivetrainLongestChain from "./drivetrain/longest-chain.ts";
import drivetrainRearChainline from "./drivetrain/rear-chainline.ts";
import drivetrainSingleSpeedChain from "./drivetrain/single-speed-chain.ts";
import drivetrainSlackGears from "./drivetrain/slack-gears.ts";
import wheelWheelSize from "./wheel/wheel-size.ts";

export const calculations: readonly Calculation[] = [
  drivetrainCapacityNeeded,
  drivetrainChainAngle,
  drivetrainChainLength,
  drivetrainChainlineOffset,
  drivetrainCogSteps,
  drivetrainFrontChainline,
  drivetrainFrontDifference,
  drivetrainGainRatios,
  drivetrainGearDevelopments,
  drivetrainGearRatios,
  drivetrainGearSpeeds,
  drivetrainGearTable,
  drivetrainIndexingError,
  drivetrainLongestChain,
  drivetrainRearChainline,
  drivetrainSingleSpeedChain,
  drivetrainSlackGears,
  wheelWheelSize,
];
