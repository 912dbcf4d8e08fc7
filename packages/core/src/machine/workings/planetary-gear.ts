import {
  choiceField,
  countField,
  numberField,
  quantityField,
  Refusal,
  si,
  stated,
  toNumber,
} from '../../quantity/index.ts';
import { planetaryKinematics } from '../../source/planetary-kinematics.ts';
import { planetaryPhasing } from '../../source/planetary-phasing.ts';
import { clause } from '../../source/source.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import {
  assemblyShare,
  ordersAtRing,
  planetaryFrequencies,
  planetaryMembers,
  planetWindow,
  turnsPerInput,
} from '../planetary-frequencies.ts';
import { planetaryStageSheet } from '../planetary-stage.ts';
import { planetaryGeometry } from '../rules/planetary-geometry.ts';
import { planetsAssemble } from '../rules/planets-assemble.ts';

const frequency = (meaning: string, symbol: string) => quantityField('frequency', meaning, { symbol });
const speed = (meaning: string, symbol: string) => quantityField('shaft speed', meaning, { symbol });
const { sunTeeth, planetTeeth, ringTeeth, planets, spacing, profileShift } = planetaryStageSheet;

export const planetaryGear = working({
  name: 'planetary-gear',
  title: 'Speeds, mesh and fault frequencies of a planetary stage with any member held',
  inputs: {
    sunTeeth,
    planetTeeth,
    ringTeeth,
    planets,
    fixed: choiceField(['ring', 'sun', 'carrier'], 'The member that is held'),
    drivenBy: choiceField(['sun', 'ring', 'carrier'], 'The member whose speed is given', { example: 'carrier' }),
    inputSpeed: quantityField('shaft speed', 'Speed of that member', { symbol: 'n_i', example: '8.5 r/min' }),
    spacing,
    profileShift,
  },
  outputs: {
    carrierSpeed: output(
      speed('Speed of the carrier; negative is against the input', 'n_c'),
      'n_c = (z_s · n_s + z_r · n_r) / (z_s + z_r)',
    ),
    ringSpeed: output(
      speed('Speed of the ring; negative is against the input', 'n_r'),
      'n_r = ((z_s + z_r) · n_c − z_s · n_s) / z_r',
    ),
    sunSpeed: output(
      speed('Speed of the sun; negative is against the input', 'n_s'),
      'n_s = ((z_s + z_r) · n_c − z_r · n_r) / z_s',
    ),
    mesh: output(frequency('Tooth mesh', 'f_m'), 'f_m = z_s · |n_s − n_c| = z_r · |n_c − n_r|'),
    planetSpin: output(speed('Turns of a planet as the carrier sees them', 'f_p'), 'f_p = f_m / z_p'),
    sunFault: output(frequency('A bad tooth of the sun', 'f_sun'), 'f_sun = N · f_m / z_s'),
    planetFault: output(frequency('A bad planet tooth, meeting sun and ring', 'f_pl'), 'f_pl = 2 · f_m / z_p'),
    planetFaultOneFlank: output(frequency('A bad flank of a planet tooth', 'f_pl1'), 'f_pl1 = f_m / z_p'),
    ringFault: output(frequency('A bad tooth of the ring', 'f_ring'), 'f_ring = N · f_m / z_r'),
    assembly: output(numberField('Whole where planets at equal angles go in', { symbol: 'k' }), 'k = (z_s + z_r) / N'),
    strongestOrder: optionalOutput(
      countField('Order of the carrier that stands out at one place of a held ring', { symbol: 'm' }),
      'm = the multiple of N nearest to z_r',
    ),
    toothWindow: output(
      countField('Turns of the carrier until the same planet tooth meets the same ring tooth', { symbol: 'w' }),
      'w = z_p / gcd(z_p, z_r)',
    ),
  },
  holds:
    'pure kinematics, exact; planets alike. The strongest order is for a held ring and planets at equal angles; where two multiples are equally near, the lower is given.',
  sources: [clause(planetaryKinematics), clause(planetaryPhasing)],
  evaluate: ({
    sunTeeth: zs,
    planetTeeth: zp,
    ringTeeth: zr,
    planets: N,
    fixed,
    drivenBy,
    inputSpeed: n,
    spacing: at,
  }) => {
    if (fixed === drivenBy) {
      throw new Refusal({
        read: `fixed=${fixed}, driven-by=${drivenBy}`,
        expected: 'two different members: what is held is not driven',
        suggestion: `The speed given is that of ${planetaryMembers.filter((each) => each !== fixed).join(' or ')}.`,
      });
    }
    if (zr <= zs) {
      throw new Refusal({
        read: `sun-teeth=${zs}, ring-teeth=${zr}`,
        expected: 'a ring with more teeth than the sun inside it',
        suggestion: 'Are the two exchanged?',
      });
    }
    const teeth = { sun: zs, planet: zp, ring: zr, planets: N };
    const turns = turnsPerInput(teeth, fixed, drivenBy);
    const speeds = {
      sun: toNumber(turns.sun) * n,
      carrier: toNumber(turns.carrier) * n,
      ring: toNumber(turns.ring) * n,
    };
    const found = planetaryFrequencies(teeth, speeds.sun, speeds.carrier);
    return {
      sunSpeed: si('shaft speed', speeds.sun),
      carrierSpeed: si('shaft speed', speeds.carrier),
      ringSpeed: si('shaft speed', speeds.ring),
      mesh: si('frequency', found.mesh),
      planetSpin: si('shaft speed', found.planetSpin),
      sunFault: si('frequency', found.sunFault),
      planetFault: si('frequency', found.planetFault),
      planetFaultOneFlank: si('frequency', found.planetFaultOneFlank),
      ringFault: si('frequency', found.ringFault),
      assembly: toNumber(assemblyShare(teeth)),
      strongestOrder: fixed === 'ring' && at !== 'unequal' ? ordersAtRing(teeth)[0] : undefined,
      toothWindow: planetWindow(teeth),
    };
  },
  doubts: ({ sunTeeth: zs, planetTeeth: zp, ringTeeth: zr, planets: N, spacing: angles, profileShift: shift }) => {
    const sheet = {
      of: 'planetary-gear',
      values: {
        sunTeeth: stated(zs),
        planetTeeth: stated(zp),
        ringTeeth: stated(zr),
        planets: stated(N),
        spacing: angles === undefined ? undefined : stated(angles),
        profileShift: shift === undefined ? undefined : stated(shift),
        ratio: undefined,
      },
    };
    return [...planetaryGeometry.check(sheet), ...planetsAssemble.check(sheet)];
  },
  example: {
    'sun-teeth': '21',
    'planet-teeth': '39',
    'ring-teeth': '99',
    planets: '3',
    fixed: 'ring',
    'driven-by': 'carrier',
    'input-speed': '8.5 r/min',
  },
});
