// The counted things that every notebook knows, in the singular: as a builder counts on a take-off.
// None of them is a unit: a day is counted (a working day is not 24 hours), a yard is measured.
const LISTS = [
  // Wood and framing
  `board, deck board, plank, joist, beam, girder, post, stud, plate, header, rafter, truss, purlin,
   batten, lath, sleeper, stringer, riser, tread, nosing, baluster, spindle, picket, rail, newel,
   stick, timber, sheet, panel, shim, wedge, brace, bracket, corbel, ledger`,
  // Fixings and hardware
  `screw, nail, bolt, nut, washer, anchor, hanger, clip, tie, staple, pin, dowel, plug, strap, hinge,
   lag, lag screw, lag bolt, latch, handle, lock, connector, fastener, rivet, stake, peg, hook, cap, base, bar, chair, dobie, coil`,
  // Concrete, masonry, paving
  `footing, pier, slab, form, bag, sack, block, brick, paver, stone, tile, course, pour, batch,
   cylinder, column, lintel, sill, slate, shingle, kerb, curb, step`,
  // How things are packed
  `box, bundle, pallet, carton, case, crate, pack, packet, roll, tube, can, pail, bucket, barrel,
   drum, cartridge, bottle, jar, spool, reel, bale, skid, kit, pair, set`,
  // The parts of a job
  `piece, load, truck, truckload, trip, visit, delivery, rental, dumpster, bin, permit, inspection,
   job, lot, unit, section, bay, run, row, strip, corner, end, cut, gap, hole, joint, seam, coat,
   opening, space, layer, overhang, side, face, wall, door, window, landing, stair, flight, deck, fence, gate, fixture, light, lamp,
   outlet, switch, circuit, fitting, elbow, valve, drain, downspout, gutter, pipe, vent, skylight,
   drawing, room, floor, house`,
  // Out of doors
  `plant, shrub, tree, pot, bush, seedling, bulb, bed, plot`,
  // People and time
  `person, crew, apprentice, carpenter, mason, painter, roofer, electrician, plumber, operator,
   driver, shift, day, week, month, year`,
];

export const TRADE_NOUNS: readonly string[] = LISTS.flatMap((list) => list.split(/,\s*/));
