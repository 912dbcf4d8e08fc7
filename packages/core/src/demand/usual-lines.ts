import { planetaryKinematics, rollingBearingKinematics, tradePractice } from '../source/index.ts';
import { type Clause, clause } from '../source/source.ts';
import type { TargetStatement } from './statement.ts';

/** A line that is worth a target wherever a machine has it. */
export interface UsualLine {
  /** The name of the line at its element: `inner-ring`. */
  readonly line: string;
  readonly harmonic: number;
  readonly state: 'lowest' | 'highest';
  readonly cause: string;
  readonly weight: TargetStatement['weight'];
  readonly source: Clause;
}

const practice = clause(tradePractice, 'what is usually looked for');
const kinematics = clause(rollingBearingKinematics);
const planetary = clause(planetaryKinematics);

/** What the trade looks for, element by element. One line here proposes it for every machine that has the line. */
export const usualLines: readonly UsualLine[] = [
  {
    line: '1x',
    harmonic: 1,
    state: 'lowest',
    cause: 'unbalance, while it is smallest',
    weight: 'essential',
    source: practice,
  },
  { line: '2x', harmonic: 1, state: 'highest', cause: 'misalignment', weight: 'desirable', source: practice },
  {
    line: 'inner-ring',
    harmonic: 3,
    state: 'highest',
    cause: 'spall on the inner ring, up to its third harmonic',
    weight: 'essential',
    source: kinematics,
  },
  {
    line: 'outer-ring',
    harmonic: 3,
    state: 'highest',
    cause: 'spall on the outer ring, up to its third harmonic',
    weight: 'essential',
    source: kinematics,
  },
  { line: 'whirl', harmonic: 1, state: 'lowest', cause: 'oil whirl', weight: 'essential', source: practice },
  {
    line: 'mesh',
    harmonic: 3,
    state: 'highest',
    cause: 'wear and load of the teeth, up to the third harmonic',
    weight: 'essential',
    source: practice,
  },
  {
    line: 'vane-pass',
    harmonic: 1,
    state: 'highest',
    cause: 'hydraulic or aerodynamic load, wear of the wheel',
    weight: 'essential',
    source: practice,
  },
  {
    line: 'twice-line',
    harmonic: 1,
    state: 'highest',
    cause: 'air gap, loose core',
    weight: 'desirable',
    source: practice,
  },
  {
    line: 'rotor-bar-pass-upper',
    harmonic: 1,
    state: 'highest',
    cause: 'loose or broken rotor bars',
    weight: 'desirable',
    source: practice,
  },
  {
    line: 'belt-pass',
    harmonic: 2,
    state: 'lowest',
    cause: 'worn or loose belt',
    weight: 'desirable',
    source: practice,
  },
  {
    line: 'sun-fault',
    harmonic: 3,
    state: 'highest',
    cause: 'a bad tooth of the sun, up to its third harmonic',
    weight: 'essential',
    source: planetary,
  },
  {
    line: 'planet-fault',
    harmonic: 3,
    state: 'highest',
    cause: 'a bad planet tooth, up to its third harmonic',
    weight: 'essential',
    source: planetary,
  },
  {
    line: 'ring-fault',
    harmonic: 3,
    state: 'highest',
    cause: 'a bad tooth of the ring, up to its third harmonic',
    weight: 'essential',
    source: planetary,
  },
  {
    line: 'chain-pass',
    harmonic: 2,
    state: 'lowest',
    cause: 'worn or stretched chain',
    weight: 'desirable',
    source: practice,
  },
  {
    line: 'pocket-pass',
    harmonic: 2,
    state: 'highest',
    cause: 'wear of the rotors, load of the outlet',
    weight: 'essential',
    source: practice,
  },
  {
    line: 'blade-pass',
    harmonic: 1,
    state: 'highest',
    cause: 'hydraulic load, wear of the runner',
    weight: 'essential',
    source: practice,
  },
  {
    line: 'rope',
    harmonic: 1,
    state: 'lowest',
    cause: 'vortex rope in the draft tube at part load',
    weight: 'desirable',
    source: practice,
  },
  {
    line: 'rod-load-reversal',
    harmonic: 2,
    state: 'highest',
    cause: 'loose crosshead, worn pin or piston',
    weight: 'essential',
    source: practice,
  },
  {
    line: 'pulsation',
    harmonic: 1,
    state: 'highest',
    cause: 'valves, gas pulsation',
    weight: 'desirable',
    source: practice,
  },
  {
    line: 'stroke',
    harmonic: 1,
    state: 'highest',
    cause: 'motion the machine works by: too little, too much, or unlike at its corners',
    weight: 'essential',
    source: practice,
  },
  {
    line: 'looseness',
    harmonic: 1,
    state: 'highest',
    cause: 'loose side plates, broken springs',
    weight: 'essential',
    source: practice,
  },
  {
    line: 'critical',
    harmonic: 1,
    state: 'highest',
    cause: 'shaft running near its critical speed',
    weight: 'desirable',
    source: practice,
  },
  {
    line: 'mode',
    harmonic: 1,
    state: 'highest',
    cause: 'motion of the structure in its natural frequency',
    weight: 'desirable',
    source: practice,
  },
];
