// Written by `npm run generate` from the files of this folder; edit those instead.
import brakeRotorAdapter from "./brake/rotor-adapter.ts";
import type { Calculation } from "./define.ts";
import drivetrainBeltLength from "./drivetrain/belt-length.ts";
import drivetrainCapacityNeeded from "./drivetrain/capacity-needed.ts";
import drivetrainChainAngle from "./drivetrain/chain-angle.ts";
import drivetrainChainLength from "./drivetrain/chain-length.ts";
import drivetrainChainWear from "./drivetrain/chain-wear.ts";
import drivetrainChainlineOffset from "./drivetrain/chainline-offset.ts";
import drivetrainCogSteps from "./drivetrain/cog-steps.ts";
import drivetrainFrontChainline from "./drivetrain/front-chainline.ts";
import drivetrainFrontDifference from "./drivetrain/front-difference.ts";
import drivetrainGainRatios from "./drivetrain/gain-ratios.ts";
import drivetrainGearDevelopments from "./drivetrain/gear-developments.ts";
import drivetrainGearHub from "./drivetrain/gear-hub.ts";
import drivetrainGearHubDevelopments from "./drivetrain/gear-hub-developments.ts";
import drivetrainGearRatios from "./drivetrain/gear-ratios.ts";
import drivetrainGearSpeeds from "./drivetrain/gear-speeds.ts";
import drivetrainGearTable from "./drivetrain/gear-table.ts";
import drivetrainIndexingError from "./drivetrain/indexing-error.ts";
import drivetrainLongestChain from "./drivetrain/longest-chain.ts";
import drivetrainRearChainline from "./drivetrain/rear-chainline.ts";
import drivetrainSingleSpeedChain from "./drivetrain/single-speed-chain.ts";
import drivetrainSlackGears from "./drivetrain/slack-gears.ts";
import fastenerBoltCircle from "./fastener/bolt-circle.ts";
import fastenerBoltPreload from "./fastener/bolt-preload.ts";
import fastenerClampForce from "./fastener/clamp-force.ts";
import fastenerWrenchExtension from "./fastener/wrench-extension.ts";
import fitBarPosition from "./fit/bar-position.ts";
import fitCrankLength from "./fit/crank-length.ts";
import fitHandPosition from "./fit/hand-position.ts";
import fitPostInsertion from "./fit/post-insertion.ts";
import fitRiderCentre from "./fit/rider-centre.ts";
import fitSaddleHeight from "./fit/saddle-height.ts";
import fitSaddlePosition from "./fit/saddle-position.ts";
import fitSaddleRange from "./fit/saddle-range.ts";
import fitSaddleToBarDrop from "./fit/saddle-to-bar-drop.ts";
import fitSaddleToTyre from "./fit/saddle-to-tyre.ts";
import fitSpacersForHeight from "./fit/spacers-for-height.ts";
import fitSteererLength from "./fit/steerer-length.ts";
import fitSteererStack from "./fit/steerer-stack.ts";
import fitStemSolutions from "./fit/stem-solutions.ts";
import fitThreadedSteerer from "./fit/threaded-steerer.ts";
import geometryEffectiveTopTube from "./geometry/effective-top-tube.ts";
import geometryForkLengthEffect from "./geometry/fork-length-effect.ts";
import geometryLeanClearance from "./geometry/lean-clearance.ts";
import geometryToeClearance from "./geometry/toe-clearance.ts";
import geometryTrail from "./geometry/trail.ts";
import geometryWheelbase from "./geometry/wheelbase.ts";
import suspensionChainGrowth from "./suspension/chain-growth.ts";
import suspensionCoilSag from "./suspension/coil-sag.ts";
import suspensionForkSag from "./suspension/fork-sag.ts";
import suspensionLeverage from "./suspension/leverage.ts";
import suspensionShockSag from "./suspension/shock-sag.ts";
import suspensionSpringRate from "./suspension/spring-rate.ts";
import wheelLacing from "./wheel/lacing.ts";
import wheelPressureLimits from "./wheel/pressure-limits.ts";
import wheelPressureWarming from "./wheel/pressure-warming.ts";
import wheelSpokeLength from "./wheel/spoke-length.ts";
import wheelSpokeStretch from "./wheel/spoke-stretch.ts";
import wheelSpokeTensions from "./wheel/spoke-tensions.ts";
import wheelStartingPressure from "./wheel/starting-pressure.ts";
import wheelTensionBalance from "./wheel/tension-balance.ts";
import wheelTensionSpread from "./wheel/tension-spread.ts";
import wheelTyreWidth from "./wheel/tyre-width.ts";
import wheelWheelSize from "./wheel/wheel-size.ts";
import wholeBikeCentreOfMass from "./whole-bike/centre-of-mass.ts";
import wholeBikeMass from "./whole-bike/mass.ts";
import wholeBikePrice from "./whole-bike/price.ts";
import wholeBikeRidingLoad from "./whole-bike/riding-load.ts";
import wholeBikeWheelLoads from "./whole-bike/wheel-loads.ts";

export const calculations: readonly Calculation[] = [
  brakeRotorAdapter,
  drivetrainBeltLength,
  drivetrainCapacityNeeded,
  drivetrainChainAngle,
  drivetrainChainLength,
  drivetrainChainWear,
  drivetrainChainlineOffset,
  drivetrainCogSteps,
  drivetrainFrontChainline,
  drivetrainFrontDifference,
  drivetrainGainRatios,
  drivetrainGearDevelopments,
  drivetrainGearHubDevelopments,
  drivetrainGearHub,
  drivetrainGearRatios,
  drivetrainGearSpeeds,
  drivetrainGearTable,
  drivetrainIndexingError,
  drivetrainLongestChain,
  drivetrainRearChainline,
  drivetrainSingleSpeedChain,
  drivetrainSlackGears,
  fastenerBoltCircle,
  fastenerBoltPreload,
  fastenerClampForce,
  fastenerWrenchExtension,
  fitBarPosition,
  fitCrankLength,
  fitHandPosition,
  fitPostInsertion,
  fitRiderCentre,
  fitSaddleHeight,
  fitSaddlePosition,
  fitSaddleRange,
  fitSaddleToBarDrop,
  fitSaddleToTyre,
  fitSpacersForHeight,
  fitSteererLength,
  fitSteererStack,
  fitStemSolutions,
  fitThreadedSteerer,
  geometryEffectiveTopTube,
  geometryForkLengthEffect,
  geometryLeanClearance,
  geometryToeClearance,
  geometryTrail,
  geometryWheelbase,
  suspensionChainGrowth,
  suspensionCoilSag,
  suspensionForkSag,
  suspensionLeverage,
  suspensionShockSag,
  suspensionSpringRate,
  wheelLacing,
  wheelPressureLimits,
  wheelPressureWarming,
  wheelSpokeLength,
  wheelSpokeStretch,
  wheelSpokeTensions,
  wheelStartingPressure,
  wheelTensionBalance,
  wheelTensionSpread,
  wheelTyreWidth,
  wheelWheelSize,
  wholeBikeCentreOfMass,
  wholeBikeMass,
  wholeBikePrice,
  wholeBikeRidingLoad,
  wholeBikeWheelLoads,
];
