/** Parts of a whole bicycle. No two of their numbers are the same, so that one taken for another changes a result. */
export const parts = `
part frame kestle.ridge {
  rear-travel: 137 mm; chainstay: 431 to 439 mm; rear-centre-growth-full: 11 mm
  reach: 447 mm; stack: 623 mm; head-angle: 65.5°; head-tube-length: 113 mm; bottom-bracket-drop: 27 mm
  seat-angle: 71.5°; effective-seat-angle: 76.25°; seat-tube-offset: 31 mm; seat-tube-length: 421 mm
  least-post-insertion: 105 mm; greatest-post-insertion: 242 mm; rear-native-rotor: 161 mm
  fork-axle-to-crown: 529 mm; fork-offset: 41 mm; mass: 3010 g; price: GBP 1000.00
}
part fork kestle.prong {
  axle-to-crown: 543 mm; fork-offset: 46 mm; travel: 143 mm; native-rotor: 181 mm; mass: 2020 g; price: GBP 500.00
}
part rear-shock kestle.heft { size: 210x52.5; mass: 430 g; price: GBP 250.00 }
part headset kestle.race { upper-stack: 14.5 mm; lower-stack: 10.5 mm; mass: 140 g; price: GBP 50.00 }
part rear-derailleur kestle.long {
  set-up: cable; total-capacity: 53 t; actuation-ratio: 1.13
  chain-allowance-rigid: 4; chain-allowance-sprung: 1; chain-allowance-double: 3; mass: 310 g; price: GBP 90.00
}
part cassette kestle.stack { cogs: 11-13-16-20-25-31-38-46 t; cog-pitch: 4.4 mm; mass: 420 g; price: GBP 80.00 }
part chain kestle.links { speeds: 8; mass: 260 g; price: GBP 25.00 }
part crankset kestle.arm {
  crank-length: 167.5 mm; chainline: 48.3 mm; rings: 38-26 t; ring-spacing: 7.6 mm; q-factor: 171 mm
  mass: 610 g; price: GBP 120.00
}
part pedals kestle.flat { outer-edge: 103 mm; underside-height: 11 mm; mass: 380 g; price: GBP 45.00 }
part shift-controller kestle.click { pull-per-click: 3.7 mm; mass: 120 g; price: GBP 30.00 }
part hub kestle.front-hub {
  spoke-holes: 28; spoke-hole-diameter: 2.5 mm; flange-diameter-left: 58 mm; flange-diameter-right: 47 mm
  flange-offset-left: 24 mm; flange-offset-right: 33 mm; spoke-head: elbow; mass: 180 g; price: GBP 60.00
}
part hub kestle.rear-hub {
  cog-line: 45.1 mm; spoke-holes: 32; spoke-hole-diameter: 2.7 mm; flange-diameter-left: 51 mm
  flange-diameter-right: 56 mm; flange-offset-left: 35 mm; flange-offset-right: 21 mm; spoke-head: elbow
  mass: 340 g; price: GBP 110.00
}
part rim kestle.front-rim {
  bead-seat: 622; inner-width: 31 mm; effective-rim-diameter: 601 mm; rim-kind: TSS; greatest-pressure: 2.9 bar
  hole-offset: -1.5 mm; mass: 520 g; price: GBP 70.00
}
part rim kestle.rear-rim {
  bead-seat: 584; inner-width: 28 mm; effective-rim-diameter: 563 mm; rim-kind: TSS; greatest-pressure: 3.4 bar
  hole-offset: 2 mm; mass: 490 g; price: GBP 65.00
}
part spokes kestle.wire { mass: 210 g; price: GBP 20.00 }
part tyre kestle.front-tread {
  size: 61-622; least-pressure: 1.1 bar; greatest-pressure: 3.1 bar; mass: 910 g; price: GBP 42.00
}
part tyre kestle.rear-tread {
  size: 58-584; measured-width: 56.5 mm; measured-on-rim: 25 mm; measured-height: 54 mm
  least-pressure: 1.3 bar; greatest-pressure: 3.2 bar; mass: 870 g; price: GBP 41.00
}
part stem kestle.stub { clamp-height: 39 mm; length: 47 mm; angle: 8°; mass: 150 g; price: GBP 55.00 }
part handlebar kestle.bar {
  bar: riser; rise: 27 mm; back-sweep: 8.5°; control-length: 196 mm; reach: 55 mm; mass: 290 g; price: GBP 62.00
}
part grips kestle.hold { length: 132 mm; mass: 95 g; price: GBP 18.00 }
part seatpost kestle.drop {
  overall-length: 452 mm; dropper-travel: 173 mm; body-length: 251 mm; setback: 7 mm; least-insertion: 93 mm
  mass: 640 g; price: GBP 190.00
}
part saddle kestle.perch {
  height: 48 mm; clamp-to-sitting: 33 mm; clamp-to-tail: 134 mm; tail-rise: 19 mm; mass: 270 g; price: GBP 75.00
}
part rotor kestle.front-disc { diameter: 203 mm; mass: 190 g; price: GBP 35.00 }
part rotor kestle.rear-disc { diameter: 183 mm; mass: 160 g; price: GBP 33.00 }
`;

/** The bicycle that is built of them. */
export const build = `
build example {
  rider { mass: 74 kg; kit-mass: 6.3 kg; height: 1790 mm; inseam: 845 mm; cadence: 83 rpm }
  fit { saddle-height: 726 mm; grip-stack: 712 mm }
  frame: kestle.ridge
  fork: kestle.prong { sag: 17 %; travel-set: 133 mm }
  rear-shock: kestle.heft { sag: 29 % }
  headset: kestle.race
  drivetrain {
    rear-derailleur: kestle.long; cassette: kestle.stack; chain: kestle.links { links: 118 }
    crankset: kestle.arm; pedals: kestle.flat; rear-controller: kestle.click
  }
  cockpit {
    stem: kestle.stub { spacers-below: 12.5 mm; spacers-above: 4 mm; cap-gap: 2.5 mm; flipped: yes }
    handlebar: kestle.bar
    grips: kestle.hold
  }
  seat {
    post: kestle.drop { insertion: 187 mm; travel-set: 158 mm; cut-length: 447 mm }
    saddle: kestle.perch { rail-position: -9 mm }
  }
  front-brake.rotor: kestle.front-disc
  rear-brake.rotor: kestle.rear-disc
  front-wheel {
    hub: kestle.front-hub; rim: kestle.front-rim; tyre: kestle.front-tread
    spokes: kestle.wire { cross-drive-side: 2; cross-non-drive-side: 3; cross: 1; lacing: even; tension: 1060 N }
  }
  rear-wheel {
    hub: kestle.rear-hub; rim: kestle.rear-rim; tyre: kestle.rear-tread
    spokes: kestle.wire { cross: 3; cross-drive-side: 2; lacing: even; tension: 1190 N }
  }
}
`;
