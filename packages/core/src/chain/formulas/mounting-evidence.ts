import { beamTextbook } from '../../source/beam-textbook.ts';
import { broch1984 } from '../../source/broch-1984.ts';
import { clause } from '../../source/source.ts';
import { statics } from '../../source/statics.ts';
import { type Printed, printed } from '../../working/printed.ts';
import { bracketFirstModeWorking } from './bracket-first-mode.ts';
import { magnetHolding } from './magnet-holding.ts';
import { massLoadingWorking } from './mass-loading.ts';

type Row = Readonly<Record<string, string>>;

/** A beam of one kilogram; its modes are compared by the root alone, which needs no material. */
const oneKilogram: Row = {
  length: '1 m',
  width: '10 mm',
  thickness: '10 mm',
  modulus: '205 GPa',
  density: '10000 kg/m3',
};

const beam = (endMass: string, root: string, place: string) =>
  printed({
    working: bracketFirstModeWorking,
    given: { ...oneKilogram, 'end-mass': endMass },
    printed: { root },
    source: clause(beamTextbook, place),
  });

const magnet: Row = { pull: '200 N', mass: '200 g', height: '30 mm', foot: '25 mm', friction: '0.2' };

/** Printed numbers of the formulas of mounting, from other hands. */
export const mountingEvidence: readonly Printed[] = [
  beam('0 kg', '1.8751', 'cantilever, first root'),
  beam('1 kg', '1.248', 'cantilever with an end mass of its own mass, first root'),
  printed({
    working: massLoadingWorking,
    given: { 'local-mass': '1 kg', 'added-mass': '0.1 kg' },
    printed: { 'motion-ratio': '0.909', 'frequency-ratio': '0.953' },
    source: clause(broch1984, '10 % of the local mass: 1/1.1 and its square root', 'computed here'),
  }),
  printed({
    working: massLoadingWorking,
    given: { 'local-mass': '300 g', 'added-mass': '100 g', frequency: '1000 Hz' },
    printed: { 'loaded-frequency': '866 Hz' },
    source: clause(broch1984, '√(3/4)', 'computed here'),
  }),
  printed({
    working: magnetHolding,
    given: magnet,
    // By hand: 0.2 · 200/0.2, 200 · 0.025/(0.4 · 0.03) and 200/0.2, each less 9.80665.
    printed: { 'slips-at': '190.19 m/s2 peak', 'tips-at': '406.86 m/s2 peak', 'lifts-at': '990.19 m/s2 peak' },
    source: clause(statics, 'by hand', 'computed here'),
  }),
];
