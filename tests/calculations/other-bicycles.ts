/**
 * A town bicycle: belt, gear hub, quill, rigid throughout. As with the bicycle beside this file, no two numbers are the
 * same.
 */
export const town = `
part frame kestle.lane {
  rear-travel: none; chainstay: 458 to 467 mm; reach: 378 mm; stack: 571 mm; head-angle: 69.5°
  head-tube-length: 147 mm; bottom-bracket-drop: 58 mm; bottom-bracket-shell: threaded-1.370x24-68
  seat-angle: 72.5°; effective-seat-angle: 73.25°; seat-tube-offset: 9 mm; seat-tube-length: 533 mm; least-post-insertion: 71 mm
  greatest-post-insertion: 226 mm; fork-axle-to-crown: 391 mm; fork-offset: 54 mm; mass: 2810 g
}
part fork kestle.blade { travel: none; axle-to-crown: 397 mm; fork-offset: 49 mm; steerer-shape: threaded; mass: 905 g }
part headset kestle.cup { upper-stack: 25 mm; lower-stack: 12 mm; mass: 122 g }
part stem kestle.quill { clamping: quill; quill-length: 143 mm; length: 83 mm; angle: -16.5°; mass: 315 g }
part handlebar kestle.swept {
  bar: swept-back; rise: 61 mm; back-sweep: 75°; control-length: 188 mm; reach: 41 mm; mass: 345 g
}
part grips kestle.cork { length: 128 mm; mass: 92 g }
part belt kestle.loop { pitch: 11 mm; teeth: 117 t; mass: 88 g }
part sprocket kestle.cog { cogs: 22 t; mass: 77 g }
part belt-ring kestle.ring { teeth: 50 t; ring-chainline: 46.2 mm; mass: 116 g }
part crankset kestle.arms { crank-length: 171.5 mm; chainline: 45.4 mm; rings: none; q-factor: 163 mm; mass: 590 g }
part bottom-bracket kestle.cartridge { drive-side-face: 36.5 mm; mass: 241 g }
part pedals kestle.block { outer-edge: 99 mm; underside-height: 14 mm; mass: 402 g }
part hub kestle.gears {
  gears: 8; lowest-gear: 0.53; gear-range: 3.06; least-primary-ratio: 1.9; cog-line: 44.1 mm; spoke-holes: 36
  spoke-hole-diameter: 2.9 mm; flange-diameter-left: 93 mm; flange-diameter-right: 94 mm; flange-offset-left: 29 mm
  flange-offset-right: 30.5 mm; spoke-head: elbow; mass: 1590 g
}
part hub kestle.plain {
  spoke-holes: 32; spoke-hole-diameter: 2.6 mm; flange-diameter-left: 38.5 mm; flange-diameter-right: 39.5 mm
  flange-offset-left: 35.5 mm; flange-offset-right: 36.5 mm; spoke-head: straight; mass: 176 g
}
part rim kestle.hoop {
  bead-seat: 622; inner-width: 19 mm; effective-rim-diameter: 602.5 mm; rim-kind: C; greatest-pressure: 5.6 bar; mass: 575 g
}
part spokes kestle.wire { mass: 206 g }
part tyre kestle.band { size: 42-622; least-pressure: 2.4 bar; greatest-pressure: 5.1 bar; mass: 730 g }
part mudguard kestle.guard { width: 53 mm; mass: 260 g }
part seatpost kestle.pillar {
  overall-length: 302 mm; dropper-travel: none; body-length: none; setback: 22 mm; least-insertion: 64 mm; mass: 283 g
}
part saddle kestle.seat { height: 62 mm; clamp-to-sitting: 27 mm; clamp-to-tail: 141 mm; tail-rise: 24 mm; mass: 470 g }

build example {
  rider { mass: 68 kg; kit-mass: 8.2 kg; height: 1710 mm; inseam: 792 mm; cadence: 71 rpm }
  fit { saddle-height: 688 mm; grip-stack: 741 mm }
  frame: kestle.lane
  fork: kestle.blade
  rear-shock: none
  headset: kestle.cup { locknut-spacers: 5.5 mm }
  drivetrain {
    rear-derailleur: none; cassette: kestle.cog; chain: kestle.loop; crankset: kestle.arms; pedals: kestle.block
    chainring: kestle.ring { ring-spacers: 1.2 mm }
    bottom-bracket: kestle.cartridge { shell-spacers-drive-side: 2 mm }
  }
  cockpit {
    stem: kestle.quill { quill-insertion: 74 mm }
    handlebar: kestle.swept
    grips: kestle.cork
  }
  seat {
    post: kestle.pillar { insertion: 117 mm }
    saddle: kestle.seat { rail-position: 6 mm }
  }
  carrying.front-mudguard: kestle.guard { gap: 13 mm }
  front-wheel {
    hub: kestle.plain; rim: kestle.hoop; tyre: kestle.band; spokes: kestle.wire { cross: 2; tension: 870 N }
  }
  rear-wheel {
    hub: kestle.gears; rim: kestle.hoop; tyre: kestle.band; spokes: kestle.wire { cross: 2; lacing: even; tension: 980 N }
  }
}
`;

/** One that is sprung by a coil behind, with one gear and a chain tensioner in front of it. */
export const sprung = `
part frame kestle.drop {
  rear-travel: 163 mm; chainstay: 441 mm; rear-centre-growth-full: 23 mm; rear-centre-growth-bottomed: 17 mm
  leverage-start: 3.1; leverage-end: 2.4; idler-teeth: 16 t; mass: 3550 g
}
part rear-shock kestle.coil { size: 230x65; spring: coil; spring-rate: 82 N/mm; mass: 910 g }
part crankset kestle.arms { crank-length: 164 mm; rings: 34 t; chainline: 51.4 mm; mass: 640 g }
part sprocket kestle.cog { cogs: 18 t; mass: 71 g }
part chain kestle.links { speeds: 1; half-link: yes; mass: 330 g }
part closure-link kestle.close { half-link: no; mass: 4 g }
part hub kestle.rear { cog-line: 49.3 mm; gears: none; mass: 390 g }
part tyre kestle.tread { size: 63-584; mass: 1190 g }

build example {
  rider { mass: 81 kg; kit-mass: 3.7 kg; cadence: 88 rpm }
  frame: kestle.drop
  rear-shock: kestle.coil { spring-fitted: 96 N/mm; sag: 31 % }
  drivetrain {
    rear-derailleur: none; crankset: kestle.arms; cassette: kestle.cog; chain: kestle.links { links: 104 }
    closure-link: kestle.close
  }
  rear-wheel { hub: kestle.rear; tyre: kestle.tread }
}
`;
