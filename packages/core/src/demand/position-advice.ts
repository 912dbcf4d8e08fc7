import type { MachineElementKindName } from '../machine/kinds.ts';
import { api670, iso5348, iso13373x1, iso20816x1, tradePractice } from '../source/index.ts';
import { type Clause, clause } from '../source/source.ts';

/** Where to measure on a kind of machine, in which directions, and why: advice, never a limit. */
export interface PositionAdvice {
  readonly name: string;
  /** Elements of a train it speaks of; of every machine where left out. */
  readonly elements?: readonly MachineElementKindName[];
  readonly position: string;
  readonly directions: string;
  readonly because: string;
  readonly sources: readonly Clause[];
}

const radial = 'two radial directions at a right angle';
const practice = [clause(tradePractice, 'positions and directions')];
const general = [clause(iso20816x1, 'measuring positions')];
const byKind = [clause(iso13373x1, 'measuring positions by kind of machine')];

/** Advice on positions, the general first. One entry each; how it is known stands at its source. */
export const positionAdvice: readonly PositionAdvice[] = [
  {
    name: 'bearing-housings',
    position: 'the housing of each main bearing, on its solid part',
    directions: radial,
    because: 'Forces of the rotor leave it there. Of the two the higher one is judged.',
    sources: general,
  },
  {
    name: 'axial-at-thrust-bearing',
    position: 'the housing of the thrust bearing',
    directions: 'axial',
    because: 'Axial motion elsewhere is mostly that of the housing; at the thrust bearing it is that of the rotor.',
    sources: general,
  },
  {
    name: 'no-covers',
    position: 'never a guard, fan cover, thin sheet or split line',
    directions: 'any',
    because: 'It has modes of its own, and moves as they like.',
    sources: [clause(iso5348, 'place of mounting', 'from memory'), ...practice],
  },
  {
    name: 'same-place-each-time',
    position: 'a marked place, machined where a route comes by',
    directions: 'as marked, with the side it is seen from',
    because: 'A trend compares places; a hand away the number may double.',
    sources: byKind,
  },
  {
    name: 'rolling-bearing-load-zone',
    elements: ['rolling-bearing'],
    position: 'the housing in the load zone of the bearing, one solid path from the outer ring',
    directions: 'radial, towards the load',
    because: 'Each joint on the way damps the bursts of a spall.',
    sources: practice,
  },
  {
    name: 'fluid-film-probes',
    elements: ['fluid-film-bearing'],
    position: 'the shaft within about 75 mm of the bearing, clear of nodes of its modes',
    directions: 'X and Y at 90°, each 45° from the vertical, seen from the driver',
    because: 'An oil film hides the motion of the shaft from the housing.',
    sources: [clause(api670, 'radial shaft vibration probes', 'from memory')],
  },
  {
    name: 'thrust-probes',
    elements: ['fluid-film-bearing'],
    position: 'the thrust collar, or the shaft end within about 300 mm of it',
    directions: 'two, axial, side by side',
    because: 'They vote; farther away thermal growth is read as wear of the pads.',
    sources: [clause(api670, 'axial position probes', 'from memory')],
  },
  {
    name: 'once-per-turn',
    elements: ['phase-reference'],
    position: 'one notch or key of the driver, and one for each shaft of another speed',
    directions: 'radial',
    because: 'Without it there is no phase, no vector of the slow roll, no order.',
    sources: [clause(api670, 'phase reference transducer', 'from memory')],
  },
  {
    name: 'motor-both-ends',
    elements: ['induction-motor', 'synchronous-motor'],
    position: 'both bearing shields, beside the bearing, not the fan cover nor a cooling fin',
    directions: `${radial}, axial at the fixed bearing`,
    because: 'Bent feet, a bent shaft and the air gap show at one end before the other.',
    sources: byKind,
  },
  {
    name: 'gear-each-shaft',
    elements: ['gear-pair', 'worm-pair'],
    position: 'the casing at the bearings of each shaft',
    directions: `${radial}, axial for helical, bevel and worm gears`,
    because: 'The mesh pulls along its line of action; thrust goes where the helix sends it.',
    sources: byKind,
  },
  {
    name: 'planetary-ring',
    elements: ['planetary-stage'],
    position: 'the ring outside over the mesh, and the bearing of the carrier',
    directions: 'radial',
    because: 'Planets pass by the place: it hears each of them once a turn of the carrier.',
    sources: practice,
  },
  {
    name: 'belt-line',
    elements: ['belt-drive', 'timing-belt', 'chain-drive', 'friction-pair'],
    position: 'the bearing housings next to the pulleys',
    directions: 'in the line of the pull, and across it',
    because: 'Tension and eccentricity show along the pull, slackness across.',
    sources: practice,
  },
  {
    name: 'coupling-both-sides',
    elements: ['coupling'],
    position: 'the bearings on both sides of the coupling',
    directions: `${radial}, and axial`,
    because: 'Misalignment is told by the phase across the coupling.',
    sources: byKind,
  },
  {
    name: 'pump-and-fan-ends',
    elements: ['impeller', 'screw-rotors'],
    position: 'both bearing housings; of a vertical pump the top of the motor and its foot',
    directions: 'radial, in the line of the discharge and across it',
    because: 'The pipe holds one direction, the structure sways in the other.',
    sources: byKind,
  },
  {
    name: 'hydraulic-guide-bearings',
    elements: ['hydraulic-turbine'],
    position: 'each guide bearing, and the head cover where a rope or cavitation is looked for',
    directions: 'two radial at 90°, one upstream; vertical on the head cover',
    because: 'The rope turns below the speed of the shaft and shakes the cover.',
    sources: practice,
  },
  {
    name: 'crosshead',
    elements: ['reciprocating-machine'],
    position: 'the crosshead guide of each throw for impacts, and the frame at the height of the crankshaft',
    directions: 'in line with the pin load at the crosshead, all three on the frame',
    because: 'Looseness knocks at the reversal of the rod load; the frame tells the foundation.',
    sources: practice,
  },
  {
    name: 'screen-bearings',
    elements: ['screen-exciter'],
    position: 'the bearing housing of the exciter, and the four corners of the side plates',
    directions: 'radial at the bearing; all three at the corners',
    because: 'The stroke is meant, its twist is not; a burst of the bearing is far below the stroke.',
    sources: practice,
  },
  {
    name: 'away-from-nodes',
    elements: ['structural-mode', 'critical-speed'],
    position: 'where the mode moves, as its shape or a walk with a portable sensor shows',
    directions: 'that of the mode',
    because: 'At a node a large motion reads as none.',
    sources: practice,
  },
];

/** The advice for a machine of these elements, the general first. */
export function positionAdviceFor(elements: readonly MachineElementKindName[]): readonly PositionAdvice[] {
  return positionAdvice.filter((each) => each.elements?.some((kind) => elements.includes(kind)) ?? true);
}
