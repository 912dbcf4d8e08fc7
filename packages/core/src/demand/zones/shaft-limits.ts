import { type Finding, finding } from '../../finding/finding.ts';
import { measured, said } from '../../finding/measure.ts';
import { type Level, level, levelField, quantityField, Refusal } from '../../quantity/index.ts';
import { optional } from '../../quantity/stated.ts';
import { iso7919x3 } from '../../source/iso-7919-3.ts';
import { iso20816x3edition2022 } from '../../source/iso-20816-3-2022.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { clearanceShares } from './clearance.ts';
import type { Boundaries } from './zone-table.ts';

/** Boundaries over the root of the speed, in micrometres peak-to-peak at 1 r/min. */
const coefficients = { ab: 4800, bc: 9000, cd: 13_200 } as const;
/** Speeds for which the curve is known to be meant, in hertz: 1000 to 30 000 r/min. */
const validity = { from: 1000 / 60, to: 30_000 / 60 };

/**
 * Zone boundaries of shaft vibration relative to the bearing, peak-to-peak in metres: 4800, 9000 and 13200 µm over √n,
 * n in r/min, and at most 0.4, 0.6 and 0.7 of the diametral clearance where it is given. `speed` in hertz, above zero.
 * Sources: ISO 7919-3, now ISO 20816-3 Annex B, both from memory.
 */
export function shaftLimits(speed: number, clearance?: number): Boundaries {
  if (!(speed > 0)) throw new Refusal({ read: `speed=${speed} Hz`, expected: 'a shaft speed above zero' });
  if (clearance !== undefined && !(clearance > 0)) {
    throw new Refusal({ read: `clearance=${clearance} m`, expected: 'a diametral clearance above zero' });
  }
  const n = speed * 60;
  const limit = (boundary: keyof Boundaries): Level<'displacement'> => {
    const curve = (coefficients[boundary] * 1e-6) / Math.sqrt(n);
    const most = clearance === undefined ? curve : Math.min(curve, clearanceShares[boundary] * clearance);
    return level('displacement', most, 'peak-to-peak');
  };
  return { ab: limit('ab'), bc: limit('bc'), cd: limit('cd') };
}

const curves = clause(iso7919x3, 'boundary curves', 'from memory');
const annex = clause(iso20816x3edition2022, 'Annex B', 'from memory');

const boundary = (letters: string, name: string, coefficient: number, share: number) =>
  output(
    levelField(['displacement'], `Boundary ${name}, shaft relative to the bearing`, {
      symbol: `S_${letters}`,
      example: '80 um pp',
    }),
    `S_${letters} = min(${coefficient} µm/√(n/(1 r/min)), ${share} · c), or the first alone without c`,
  );

export const shaftLimitsWorking = working({
  name: 'shaft-limits',
  title: 'Zone boundaries of relative shaft vibration',
  inputs: {
    speed: quantityField('shaft speed', 'Shaft speed', { symbol: 'n', example: '3600 r/min' }),
    clearance: optional(
      quantityField('length', 'Diametral clearance of the bearing, not the radial one', {
        symbol: 'c',
        example: '165 um',
      }),
    ),
  },
  outputs: {
    aB: boundary('AB', 'A/B', coefficients.ab, clearanceShares.ab),
    bC: boundary('BC', 'B/C', coefficients.bc, clearanceShares.bc),
    cD: boundary('CD', 'C/D', coefficients.cd, clearanceShares.cd),
  },
  holds:
    'fluid-film bearings, 1000 to 30 000 r/min, peak-to-peak, the larger of two probes. All numbers from memory: confirm in a licensed copy.',
  sources: [curves, annex],
  evaluate: ({ speed, clearance }) => {
    const { ab, bc, cd } = shaftLimits(speed, clearance);
    return { aB: ab as Level<'displacement'>, bC: bc as Level<'displacement'>, cD: cd as Level<'displacement'> };
  },
  doubts: ({ speed, clearance }) => [...unverified(), ...outside(speed), ...governed(speed, clearance)],
  example: { speed: '3600 r/min' },
});

function unverified(): readonly Finding[] {
  return [
    finding({
      rule: 'zones/unverified-table',
      weight: 'warns',
      at: 'shaft-limits',
      found: 'boundaries known here from memory',
      limit: 'boundaries read in the standard itself',
      because: 'Nobody here read these numbers in the edition they are named after.',
      remedy: ['confirm in a licensed copy'],
      sources: [curves, annex],
    }),
  ];
}

function outside(speed: number): readonly Finding[] {
  if (speed >= validity.from * (1 - 1e-9) && speed <= validity.to * (1 + 1e-9)) return [];
  return [
    finding({
      rule: 'zones/speed',
      weight: 'warns',
      at: 'shaft-limits/speed',
      found: measured('shaft speed', speed),
      limit: said`${measured('shaft speed', validity.from)} to ${measured('shaft speed', validity.to)}`,
      because: 'The curve is meant for these speeds; below them it promises more than a bearing allows.',
      remedy: ['take the limits of the machine maker', 'look up the lowest speed in a licensed copy'],
      sources: [clause(iso7919x3, 'scope', 'second-hand')],
    }),
  ];
}

function governed(speed: number, clearance: number | undefined): readonly Finding[] {
  if (clearance === undefined) return [];
  const [curve, limited] = [shaftLimits(speed), shaftLimits(speed, clearance)];
  const names = [
    ['A/B', 'ab'],
    ['B/C', 'bc'],
    ['C/D', 'cd'],
  ] as const;
  const lowered = names.filter(([, key]) => limited[key].value < curve[key].value).map(([name]) => name);
  if (lowered.length === 0) return [];
  return [
    finding({
      rule: 'zones/clearance-governs',
      weight: 'notes',
      at: 'shaft-limits/clearance',
      found: said`the clearance of ${measured('length', clearance)} lowers ${lowered.join(', ')}`,
      limit: 'the curve over speed',
      because: 'A radial clearance entered for the diametral one would halve these limits.',
      remedy: ['check on the bearing drawing that the clearance is diametral'],
      sources: [annex],
      asks: 'Is the stated clearance diametral?',
    }),
  ];
}
