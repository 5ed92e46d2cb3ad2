import accessoryMounts from "./accessory-mounts.ferrule";
import axles from "./axles.ferrule";
import batteryTypes from "./battery-types.ferrule";
import beadSeats from "./bead-seats.ferrule";
import bottomBracketShells from "./bottom-bracket-shells.ferrule";
import brakeFluids from "./brake-fluids.ferrule";
import brakeMounts from "./brake-mounts.ferrule";
import chainGuideMounts from "./chain-guide-mounts.ferrule";
import connectors from "./connectors.ferrule";
import controlClamps from "./control-clamps.ferrule";
import crownRaces from "./crown-races.ferrule";
import derailleurMounts from "./derailleur-mounts.ferrule";
import driveFamilies from "./drive-families.ferrule";
import freehubBodies from "./freehub-bodies.ferrule";
import freewheelThreads from "./freewheel-threads.ferrule";
import frontDerailleurMounts from "./front-derailleur-mounts.ferrule";
import headsetFits from "./headset-fits.ferrule";
import hubLayouts from "./hub-layouts.ferrule";
import pedalThreads from "./pedal-threads.ferrule";
import rails from "./rails.ferrule";
import rimKinds from "./rim-kinds.ferrule";
import ringMounts from "./ring-mounts.ferrule";
import rotorMounts from "./rotor-mounts.ferrule";
import shockMounts from "./shock-mounts.ferrule";
import spindles from "./spindles.ferrule";
import spokeThreads from "./spoke-threads.ferrule";
import valves from "./valves.ferrule";

/**
 * The standards that come with the program, written in Ferrule itself: one file for each group of families. They are
 * read like any other file, so that "go to definition" opens them, and a workshop adds its own beside them.
 */
export const prelude: readonly { readonly uri: string; readonly text: string }[] = [
  file("accessory-mounts", accessoryMounts),
  file("axles", axles),
  file("battery-types", batteryTypes),
  file("bead-seats", beadSeats),
  file("bottom-bracket-shells", bottomBracketShells),
  file("brake-fluids", brakeFluids),
  file("brake-mounts", brakeMounts),
  file("chain-guide-mounts", chainGuideMounts),
  file("connectors", connectors),
  file("control-clamps", controlClamps),
  file("crown-races", crownRaces),
  file("derailleur-mounts", derailleurMounts),
  file("drive-families", driveFamilies),
  file("freehub-bodies", freehubBodies),
  file("freewheel-threads", freewheelThreads),
  file("front-derailleur-mounts", frontDerailleurMounts),
  file("headset-fits", headsetFits),
  file("hub-layouts", hubLayouts),
  file("pedal-threads", pedalThreads),
  file("rails", rails),
  file("rim-kinds", rimKinds),
  file("ring-mounts", ringMounts),
  file("rotor-mounts", rotorMounts),
  file("shock-mounts", shockMounts),
  file("spindles", spindles),
  file("spoke-threads", spokeThreads),
  file("valves", valves),
];

function file(name: string, text: string): { readonly uri: string; readonly text: string } {
  return { uri: `ferrule-standard:/${name}.ferrule`, text };
}
