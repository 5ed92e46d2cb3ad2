import { accessory } from "./accessory.ts";
import { axleNuts } from "./axle-nuts.ts";
import { barEndPlugs } from "./bar-end-plugs.ts";
import { battery } from "./battery.ts";
import { bell } from "./bell.ts";
import { belt } from "./belt.ts";
import { beltRing } from "./belt-ring.ts";
import { bottomBracket } from "./bottom-bracket.ts";
import { brakeAdapter } from "./brake-adapter.ts";
import { brakeLever } from "./brake-lever.ts";
import { brakePads } from "./brake-pads.ts";
import { builtWheel } from "./built-wheel.ts";
import { cable } from "./cable.ts";
import { caliper } from "./caliper.ts";
import { cassette } from "./cassette.ts";
import { cassetteSpacer } from "./cassette-spacer.ts";
import { chain } from "./chain.ts";
import { chainGuide } from "./chain-guide.ts";
import { chainTensioner } from "./chain-tensioner.ts";
import { chainring } from "./chainring.ts";
import { charger } from "./charger.ts";
import { childSeat } from "./child-seat.ts";
import { closureLink } from "./closure-link.ts";
import { crankset } from "./crankset.ts";
import { derailleurAdapter } from "./derailleur-adapter.ts";
import { dynamo } from "./dynamo.ts";
import { fork } from "./fork.ts";
import { frame } from "./frame.ts";
import { freewheel } from "./freewheel.ts";
import { frontDerailleur } from "./front-derailleur.ts";
import { grips } from "./grips.ts";
import { handlebar } from "./handlebar.ts";
import { hanger } from "./hanger.ts";
import { headset } from "./headset.ts";
import { hose } from "./hose.ts";
import { hub } from "./hub.ts";
import { lamp } from "./lamp.ts";
import { mudguard } from "./mudguard.ts";
import { nipples } from "./nipples.ts";
import { pedals } from "./pedals.ts";
import { quickRelease } from "./quick-release.ts";
import { rack } from "./rack.ts";
import { rearDerailleur } from "./rear-derailleur.ts";
import { rearShock } from "./rear-shock.ts";
import { reflectors } from "./reflectors.ts";
import { remote } from "./remote.ts";
import { rim } from "./rim.ts";
import { rimBrake } from "./rim-brake.ts";
import { rimTape } from "./rim-tape.ts";
import { rotor } from "./rotor.ts";
import { saddle } from "./saddle.ts";
import { sealant } from "./sealant.ts";
import { seatClamp } from "./seat-clamp.ts";
import { seatShim } from "./seat-shim.ts";
import { seatpost } from "./seatpost.ts";
import { shiftController } from "./shift-controller.ts";
import { spokes } from "./spokes.ts";
import { sprocket } from "./sprocket.ts";
import { stand } from "./stand.ts";
import { steererPlug } from "./steerer-plug.ts";
import { steererSpacers } from "./steerer-spacers.ts";
import { stem } from "./stem.ts";
import { tape } from "./tape.ts";
import { thruAxle } from "./thru-axle.ts";
import { tube } from "./tube.ts";
import { tyre } from "./tyre.ts";
import { valve } from "./valve.ts";
import { wire } from "./wire.ts";

/**
 * Every kind of part by its name, with its own facts only. The facts that every kind takes stand in common.ts; the
 * complete rows are made in ../index.ts.
 */
export const kindTable = {
  accessory,
  "axle-nuts": axleNuts,
  "bar-end-plugs": barEndPlugs,
  battery,
  bell,
  "belt-ring": beltRing,
  belt,
  "bottom-bracket": bottomBracket,
  "brake-adapter": brakeAdapter,
  "brake-lever": brakeLever,
  "brake-pads": brakePads,
  "built-wheel": builtWheel,
  cable,
  caliper,
  "cassette-spacer": cassetteSpacer,
  cassette,
  "chain-guide": chainGuide,
  "chain-tensioner": chainTensioner,
  chain,
  chainring,
  charger,
  "child-seat": childSeat,
  "closure-link": closureLink,
  crankset,
  "derailleur-adapter": derailleurAdapter,
  dynamo,
  fork,
  frame,
  freewheel,
  "front-derailleur": frontDerailleur,
  grips,
  handlebar,
  hanger,
  headset,
  hose,
  hub,
  lamp,
  mudguard,
  nipples,
  pedals,
  "quick-release": quickRelease,
  rack,
  "rear-derailleur": rearDerailleur,
  "rear-shock": rearShock,
  reflectors,
  remote,
  "rim-brake": rimBrake,
  "rim-tape": rimTape,
  rim,
  rotor,
  saddle,
  sealant,
  "seat-clamp": seatClamp,
  "seat-shim": seatShim,
  seatpost,
  "shift-controller": shiftController,
  spokes,
  sprocket,
  stand,
  "steerer-plug": steererPlug,
  "steerer-spacers": steererSpacers,
  stem,
  tape,
  "thru-axle": thruAxle,
  tube,
  tyre,
  valve,
  wire,
} as const;

/** The name of a kind of part, such as `cassette`. */
export type KindName = keyof typeof kindTable;
