// Written by `npm run generate` from the files of this folder; edit those instead.
import brakeActuation from "./brake/actuation.ts";
import brakeAdapter from "./brake/adapter.ts";
import brakeBoltLength from "./brake/bolt-length.ts";
import brakeCablePull from "./brake/cable-pull.ts";
import brakeCaliperMount from "./brake/caliper-mount.ts";
import brakeFluid from "./brake/fluid.ts";
import brakeForbidden from "./brake/forbidden.ts";
import brakeFrontSide from "./brake/front-side.ts";
import brakeHose from "./brake/hose.ts";
import brakeHoseEntry from "./brake/hose-entry.ts";
import brakeHoseFluid from "./brake/hose-fluid.ts";
import brakeHoseKind from "./brake/hose-kind.ts";
import brakeHoseLength from "./brake/hose-length.ts";
import brakeHydraulicFamily from "./brake/hydraulic-family.ts";
import brakePad from "./brake/pad.ts";
import brakePadCompound from "./brake/pad-compound.ts";
import brakeRimBrakeReach from "./brake/rim-brake-reach.ts";
import brakeRimBrakeStop from "./brake/rim-brake-stop.ts";
import brakeRotorLimit from "./brake/rotor-limit.ts";
import brakeRotorSize from "./brake/rotor-size.ts";
import brakeRotorThickness from "./brake/rotor-thickness.ts";
import brakeSide from "./brake/side.ts";
import brakeTwoBrakes from "./brake/two-brakes.ts";
import buildAssemblyMass from "./build/assembly-mass.ts";
import buildAssemblyPrice from "./build/assembly-price.ts";
import buildBudgetMass from "./build/budget-mass.ts";
import buildBudgetPrice from "./build/budget-price.ts";
import buildMissingSlot from "./build/missing-slot.ts";
import buildUnusedPart from "./build/unused-part.ts";
import cockpitBarEndPlugs from "./cockpit/bar-end-plugs.ts";
import cockpitBarSpace from "./cockpit/bar-space.ts";
import cockpitBarWidth from "./cockpit/bar-width.ts";
import cockpitCarbonClamp from "./cockpit/carbon-clamp.ts";
import cockpitClampInterface from "./cockpit/clamp-interface.ts";
import cockpitClampZone from "./cockpit/clamp-zone.ts";
import cockpitControlClash from "./cockpit/control-clash.ts";
import cockpitControlDiameter from "./cockpit/control-diameter.ts";
import cockpitControlHand from "./cockpit/control-hand.ts";
import cockpitExpanderAllowed from "./cockpit/expander-allowed.ts";
import cockpitGripCut from "./cockpit/grip-cut.ts";
import cockpitGripsOrTape from "./cockpit/grips-or-tape.ts";
import cockpitLeverBar from "./cockpit/lever-bar.ts";
import cockpitTorqueWindow from "./cockpit/torque-window.ts";
import type { Check } from "./define.ts";
import drivetrainActuation from "./drivetrain/actuation.ts";
import drivetrainBatteryFamily from "./drivetrain/battery-family.ts";
import drivetrainBatteryFitted from "./drivetrain/battery-fitted.ts";
import drivetrainBatteryType from "./drivetrain/battery-type.ts";
import drivetrainBearingSpacers from "./drivetrain/bearing-spacers.ts";
import drivetrainBeltApproved from "./drivetrain/belt-approved.ts";
import drivetrainBeltLength from "./drivetrain/belt-length.ts";
import drivetrainBeltLine from "./drivetrain/belt-line.ts";
import drivetrainBeltOpening from "./drivetrain/belt-opening.ts";
import drivetrainBeltSprocket from "./drivetrain/belt-sprocket.ts";
import drivetrainBeltTension from "./drivetrain/belt-tension.ts";
import drivetrainBottomBracketShell from "./drivetrain/bottom-bracket-shell.ts";
import drivetrainCable from "./drivetrain/cable.ts";
import drivetrainCageCapacity from "./drivetrain/cage-capacity.ts";
import drivetrainCassetteSpacer from "./drivetrain/cassette-spacer.ts";
import drivetrainChainAngle from "./drivetrain/chain-angle.ts";
import drivetrainChainGuideMount from "./drivetrain/chain-guide-mount.ts";
import drivetrainChainGuideRange from "./drivetrain/chain-guide-range.ts";
import drivetrainChainLength from "./drivetrain/chain-length.ts";
import drivetrainChainParity from "./drivetrain/chain-parity.ts";
import drivetrainChainSupplied from "./drivetrain/chain-supplied.ts";
import drivetrainChainWidth from "./drivetrain/chain-width.ts";
import drivetrainChainline from "./drivetrain/chainline.ts";
import drivetrainClosureLink from "./drivetrain/closure-link.ts";
import drivetrainClosureLinkReuse from "./drivetrain/closure-link-reuse.ts";
import drivetrainCoasterArm from "./drivetrain/coaster-arm.ts";
import drivetrainCogSteps from "./drivetrain/cog-steps.ts";
import drivetrainCrankArmClearance from "./drivetrain/crank-arm-clearance.ts";
import drivetrainDerailleurMount from "./drivetrain/derailleur-mount.ts";
import drivetrainDriveFamily from "./drivetrain/drive-family.ts";
import drivetrainFamilyDimensions from "./drivetrain/family-dimensions.ts";
import drivetrainFixedLockRing from "./drivetrain/fixed-lock-ring.ts";
import drivetrainFreehubBody from "./drivetrain/freehub-body.ts";
import drivetrainFreewheelThread from "./drivetrain/freewheel-thread.ts";
import drivetrainFrontDerailleurAngle from "./drivetrain/front-derailleur-angle.ts";
import drivetrainFrontDerailleurCapacity from "./drivetrain/front-derailleur-capacity.ts";
import drivetrainFrontDerailleurChainline from "./drivetrain/front-derailleur-chainline.ts";
import drivetrainFrontDerailleurMount from "./drivetrain/front-derailleur-mount.ts";
import drivetrainFrontDerailleurPull from "./drivetrain/front-derailleur-pull.ts";
import drivetrainFrontDerailleurRange from "./drivetrain/front-derailleur-range.ts";
import drivetrainFrontDerailleurTyre from "./drivetrain/front-derailleur-tyre.ts";
import drivetrainFrontDifference from "./drivetrain/front-difference.ts";
import drivetrainFrontPositions from "./drivetrain/front-positions.ts";
import drivetrainFrontShifting from "./drivetrain/front-shifting.ts";
import drivetrainGearHubRatio from "./drivetrain/gear-hub-ratio.ts";
import drivetrainGearHubWashers from "./drivetrain/gear-hub-washers.ts";
import drivetrainGearingAims from "./drivetrain/gearing-aims.ts";
import drivetrainHangerSeat from "./drivetrain/hanger-seat.ts";
import drivetrainIndexing from "./drivetrain/indexing.ts";
import drivetrainLargestCog from "./drivetrain/largest-cog.ts";
import drivetrainLeastLargestCog from "./drivetrain/least-largest-cog.ts";
import drivetrainPedalThread from "./drivetrain/pedal-thread.ts";
import drivetrainRingClearance from "./drivetrain/ring-clearance.ts";
import drivetrainRingFitted from "./drivetrain/ring-fitted.ts";
import drivetrainRingMount from "./drivetrain/ring-mount.ts";
import drivetrainRingOrder from "./drivetrain/ring-order.ts";
import drivetrainRingPlace from "./drivetrain/ring-place.ts";
import drivetrainRingProfile from "./drivetrain/ring-profile.ts";
import drivetrainRingReplaced from "./drivetrain/ring-replaced.ts";
import drivetrainRingSize from "./drivetrain/ring-size.ts";
import drivetrainShiftFamily from "./drivetrain/shift-family.ts";
import drivetrainSingleSpeedChain from "./drivetrain/single-speed-chain.ts";
import drivetrainSingleSpeedLine from "./drivetrain/single-speed-line.ts";
import drivetrainSingleSpeedTension from "./drivetrain/single-speed-tension.ts";
import drivetrainSmallestCog from "./drivetrain/smallest-cog.ts";
import drivetrainSpeeds from "./drivetrain/speeds.ts";
import drivetrainSpindle from "./drivetrain/spindle.ts";
import drivetrainSpindleLength from "./drivetrain/spindle-length.ts";
import drivetrainTensionerForbidden from "./drivetrain/tensioner-forbidden.ts";
import drivetrainTensionerMount from "./drivetrain/tensioner-mount.ts";
import drivetrainTorqueArm from "./drivetrain/torque-arm.ts";
import fitBarPosition from "./fit/bar-position.ts";
import fitCrankLength from "./fit/crank-length.ts";
import fitLeanClearance from "./fit/lean-clearance.ts";
import fitLeverReach from "./fit/lever-reach.ts";
import fitSaddleHeight from "./fit/saddle-height.ts";
import fitSaddleSetback from "./fit/saddle-setback.ts";
import fitSaddleToBarDrop from "./fit/saddle-to-bar-drop.ts";
import fitStandover from "./fit/standover.ts";
import fitToeClearance from "./fit/toe-clearance.ts";
import fitWeightShare from "./fit/weight-share.ts";
import frameAirPressure from "./frame/air-pressure.ts";
import frameBattery from "./frame/battery.ts";
import frameCages from "./frame/cages.ts";
import frameCategory from "./frame/category.ts";
import frameChart from "./frame/chart.ts";
import frameChildSeat from "./frame/child-seat.ts";
import frameCoil from "./frame/coil.ts";
import frameFrontAndRear from "./frame/front-and-rear.ts";
import frameMotorNotCovered from "./frame/motor-not-covered.ts";
import frameMounts from "./frame/mounts.ts";
import frameRackLoad from "./frame/rack-load.ts";
import frameRouting from "./frame/routing.ts";
import frameSag from "./frame/sag.ts";
import frameShockMount from "./frame/shock-mount.ts";
import frameShockSize from "./frame/shock-size.ts";
import frameStandLoad from "./frame/stand-load.ts";
import frameSystemMass from "./frame/system-mass.ts";
import seatClampDiameter from "./seat/clamp-diameter.ts";
import seatDropperAllowed from "./seat/dropper-allowed.ts";
import seatDropperControl from "./seat/dropper-control.ts";
import seatDropperTravel from "./seat/dropper-travel.ts";
import seatHeightReachable from "./seat/height-reachable.ts";
import seatInsertionGreatest from "./seat/insertion-greatest.ts";
import seatInsertionLeast from "./seat/insertion-least.ts";
import seatPostCut from "./seat/post-cut.ts";
import seatPostDiameter from "./seat/post-diameter.ts";
import seatRailRange from "./seat/rail-range.ts";
import seatRails from "./seat/rails.ts";
import seatRiderMass from "./seat/rider-mass.ts";
import seatSaddleToTyre from "./seat/saddle-to-tyre.ts";
import seatShim from "./seat/shim.ts";
import steeringBearingAngle from "./steering/bearing-angle.ts";
import steeringCompressionRing from "./steering/compression-ring.ts";
import steeringCrownRace from "./steering/crown-race.ts";
import steeringForkLength from "./steering/fork-length.ts";
import steeringForkTravel from "./steering/fork-travel.ts";
import steeringFrameClearance from "./steering/frame-clearance.ts";
import steeringHeadsetLower from "./steering/headset-lower.ts";
import steeringHeadsetUpper from "./steering/headset-upper.ts";
import steeringPlugBore from "./steering/plug-bore.ts";
import steeringPlugSpan from "./steering/plug-span.ts";
import steeringQuillInsertion from "./steering/quill-insertion.ts";
import steeringRoutingSystem from "./steering/routing-system.ts";
import steeringSpacerLimit from "./steering/spacer-limit.ts";
import steeringSpacersSupplied from "./steering/spacers-supplied.ts";
import steeringSteererDiameter from "./steering/steerer-diameter.ts";
import steeringSteererLength from "./steering/steerer-length.ts";
import steeringSteererPlug from "./steering/steerer-plug.ts";
import steeringSteererSupplied from "./steering/steerer-supplied.ts";
import steeringSteererThread from "./steering/steerer-thread.ts";
import steeringStemBar from "./steering/stem-bar.ts";
import steeringStemClamping from "./steering/stem-clamping.ts";
import steeringStemSteerer from "./steering/stem-steerer.ts";
import steeringThreadedSteererLength from "./steering/threaded-steerer-length.ts";
import steeringTravelSet from "./steering/travel-set.ts";
import wheelAxle from "./wheel/axle.ts";
import wheelAxleFastening from "./wheel/axle-fastening.ts";
import wheelAxleLength from "./wheel/axle-length.ts";
import wheelAxleNutThread from "./wheel/axle-nut-thread.ts";
import wheelAxleSeat from "./wheel/axle-seat.ts";
import wheelAxleThread from "./wheel/axle-thread.ts";
import wheelBuiltWheel from "./wheel/built-wheel.ts";
import wheelDynamoLamp from "./wheel/dynamo-lamp.ts";
import wheelDynamoLoad from "./wheel/dynamo-load.ts";
import wheelEndCaps from "./wheel/end-caps.ts";
import wheelHubDropout from "./wheel/hub-dropout.ts";
import wheelLacingPossible from "./wheel/lacing-possible.ts";
import wheelLayoutVariant from "./wheel/layout-variant.ts";
import wheelMatchingDiameters from "./wheel/matching-diameters.ts";
import wheelMudguardGap from "./wheel/mudguard-gap.ts";
import wheelNippleThread from "./wheel/nipple-thread.ts";
import wheelOverLocknut from "./wheel/over-locknut.ts";
import wheelPressure from "./wheel/pressure.ts";
import wheelRadialLacing from "./wheel/radial-lacing.ts";
import wheelRetentionTabs from "./wheel/retention-tabs.ts";
import wheelRimBrakeTrack from "./wheel/rim-brake-track.ts";
import wheelRotorMount from "./wheel/rotor-mount.ts";
import wheelRotorTool from "./wheel/rotor-tool.ts";
import wheelSkewer from "./wheel/skewer.ts";
import wheelSpokeCount from "./wheel/spoke-count.ts";
import wheelSpokeEnd from "./wheel/spoke-end.ts";
import wheelSpokeHead from "./wheel/spoke-head.ts";
import wheelSpokeLength from "./wheel/spoke-length.ts";
import wheelSpokeTension from "./wheel/spoke-tension.ts";
import wheelSpokesSold from "./wheel/spokes-sold.ts";
import wheelStraightSideRim from "./wheel/straight-side-rim.ts";
import wheelTapeWidth from "./wheel/tape-width.ts";
import wheelThruAxle from "./wheel/thru-axle.ts";
import wheelTubeSize from "./wheel/tube-size.ts";
import wheelTubeless from "./wheel/tubeless.ts";
import wheelTubular from "./wheel/tubular.ts";
import wheelTyreClearance from "./wheel/tyre-clearance.ts";
import wheelTyreDirection from "./wheel/tyre-direction.ts";
import wheelTyreLoad from "./wheel/tyre-load.ts";
import wheelTyreRimWidth from "./wheel/tyre-rim-width.ts";
import wheelTyreSeat from "./wheel/tyre-seat.ts";
import wheelValveHole from "./wheel/valve-hole.ts";
import wheelValveLength from "./wheel/valve-length.ts";
import wheelWheelSize from "./wheel/wheel-size.ts";

export const checks: readonly Check[] = [
  brakeActuation,
  brakeAdapter,
  brakeBoltLength,
  brakeCablePull,
  brakeCaliperMount,
  brakeFluid,
  brakeForbidden,
  brakeFrontSide,
  brakeHoseEntry,
  brakeHoseFluid,
  brakeHoseKind,
  brakeHoseLength,
  brakeHose,
  brakeHydraulicFamily,
  brakePadCompound,
  brakePad,
  brakeRimBrakeReach,
  brakeRimBrakeStop,
  brakeRotorLimit,
  brakeRotorSize,
  brakeRotorThickness,
  brakeSide,
  brakeTwoBrakes,
  buildAssemblyMass,
  buildAssemblyPrice,
  buildBudgetMass,
  buildBudgetPrice,
  buildMissingSlot,
  buildUnusedPart,
  cockpitBarEndPlugs,
  cockpitBarSpace,
  cockpitBarWidth,
  cockpitCarbonClamp,
  cockpitClampInterface,
  cockpitClampZone,
  cockpitControlClash,
  cockpitControlDiameter,
  cockpitControlHand,
  cockpitExpanderAllowed,
  cockpitGripCut,
  cockpitGripsOrTape,
  cockpitLeverBar,
  cockpitTorqueWindow,
  drivetrainActuation,
  drivetrainBatteryFamily,
  drivetrainBatteryFitted,
  drivetrainBatteryType,
  drivetrainBearingSpacers,
  drivetrainBeltApproved,
  drivetrainBeltLength,
  drivetrainBeltLine,
  drivetrainBeltOpening,
  drivetrainBeltSprocket,
  drivetrainBeltTension,
  drivetrainBottomBracketShell,
  drivetrainCable,
  drivetrainCageCapacity,
  drivetrainCassetteSpacer,
  drivetrainChainAngle,
  drivetrainChainGuideMount,
  drivetrainChainGuideRange,
  drivetrainChainLength,
  drivetrainChainParity,
  drivetrainChainSupplied,
  drivetrainChainWidth,
  drivetrainChainline,
  drivetrainClosureLinkReuse,
  drivetrainClosureLink,
  drivetrainCoasterArm,
  drivetrainCogSteps,
  drivetrainCrankArmClearance,
  drivetrainDerailleurMount,
  drivetrainDriveFamily,
  drivetrainFamilyDimensions,
  drivetrainFixedLockRing,
  drivetrainFreehubBody,
  drivetrainFreewheelThread,
  drivetrainFrontDerailleurAngle,
  drivetrainFrontDerailleurCapacity,
  drivetrainFrontDerailleurChainline,
  drivetrainFrontDerailleurMount,
  drivetrainFrontDerailleurPull,
  drivetrainFrontDerailleurRange,
  drivetrainFrontDerailleurTyre,
  drivetrainFrontDifference,
  drivetrainFrontPositions,
  drivetrainFrontShifting,
  drivetrainGearHubRatio,
  drivetrainGearHubWashers,
  drivetrainGearingAims,
  drivetrainHangerSeat,
  drivetrainIndexing,
  drivetrainLargestCog,
  drivetrainLeastLargestCog,
  drivetrainPedalThread,
  drivetrainRingClearance,
  drivetrainRingFitted,
  drivetrainRingMount,
  drivetrainRingOrder,
  drivetrainRingPlace,
  drivetrainRingProfile,
  drivetrainRingReplaced,
  drivetrainRingSize,
  drivetrainShiftFamily,
  drivetrainSingleSpeedChain,
  drivetrainSingleSpeedLine,
  drivetrainSingleSpeedTension,
  drivetrainSmallestCog,
  drivetrainSpeeds,
  drivetrainSpindleLength,
  drivetrainSpindle,
  drivetrainTensionerForbidden,
  drivetrainTensionerMount,
  drivetrainTorqueArm,
  fitBarPosition,
  fitCrankLength,
  fitLeanClearance,
  fitLeverReach,
  fitSaddleHeight,
  fitSaddleSetback,
  fitSaddleToBarDrop,
  fitStandover,
  fitToeClearance,
  fitWeightShare,
  frameAirPressure,
  frameBattery,
  frameCages,
  frameCategory,
  frameChart,
  frameChildSeat,
  frameCoil,
  frameFrontAndRear,
  frameMotorNotCovered,
  frameMounts,
  frameRackLoad,
  frameRouting,
  frameSag,
  frameShockMount,
  frameShockSize,
  frameStandLoad,
  frameSystemMass,
  seatClampDiameter,
  seatDropperAllowed,
  seatDropperControl,
  seatDropperTravel,
  seatHeightReachable,
  seatInsertionGreatest,
  seatInsertionLeast,
  seatPostCut,
  seatPostDiameter,
  seatRailRange,
  seatRails,
  seatRiderMass,
  seatSaddleToTyre,
  seatShim,
  steeringBearingAngle,
  steeringCompressionRing,
  steeringCrownRace,
  steeringForkLength,
  steeringForkTravel,
  steeringFrameClearance,
  steeringHeadsetLower,
  steeringHeadsetUpper,
  steeringPlugBore,
  steeringPlugSpan,
  steeringQuillInsertion,
  steeringRoutingSystem,
  steeringSpacerLimit,
  steeringSpacersSupplied,
  steeringSteererDiameter,
  steeringSteererLength,
  steeringSteererPlug,
  steeringSteererSupplied,
  steeringSteererThread,
  steeringStemBar,
  steeringStemClamping,
  steeringStemSteerer,
  steeringThreadedSteererLength,
  steeringTravelSet,
  wheelAxleFastening,
  wheelAxleLength,
  wheelAxleNutThread,
  wheelAxleSeat,
  wheelAxleThread,
  wheelAxle,
  wheelBuiltWheel,
  wheelDynamoLamp,
  wheelDynamoLoad,
  wheelEndCaps,
  wheelHubDropout,
  wheelLacingPossible,
  wheelLayoutVariant,
  wheelMatchingDiameters,
  wheelMudguardGap,
  wheelNippleThread,
  wheelOverLocknut,
  wheelPressure,
  wheelRadialLacing,
  wheelRetentionTabs,
  wheelRimBrakeTrack,
  wheelRotorMount,
  wheelRotorTool,
  wheelSkewer,
  wheelSpokeCount,
  wheelSpokeEnd,
  wheelSpokeHead,
  wheelSpokeLength,
  wheelSpokeTension,
  wheelSpokesSold,
  wheelStraightSideRim,
  wheelTapeWidth,
  wheelThruAxle,
  wheelTubeSize,
  wheelTubeless,
  wheelTubular,
  wheelTyreClearance,
  wheelTyreDirection,
  wheelTyreLoad,
  wheelTyreRimWidth,
  wheelTyreSeat,
  wheelValveHole,
  wheelValveLength,
  wheelWheelSize,
];
