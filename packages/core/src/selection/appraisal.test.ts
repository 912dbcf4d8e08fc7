import { expect, test } from 'vitest';
import {
  type AnyPart,
  cable,
  catalogue,
  changed,
  dataSheetOf,
  input,
  kindsOf,
  mount,
  parts,
  point,
  supply,
  transducer,
} from '../../../../evidence/bench.ts';
import { shelves } from '../chain/catalogue.ts';
import type { ChainParts } from '../chain/chain.ts';
import type { Judgement } from '../chain/rules/rule.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import { usualPolicy } from '../demand/policy.ts';
import type { Reference } from '../demand/target.ts';
import { fieldOf, Refusal, unanswered, words } from '../quantity/index.ts';
import { type Appraisal, appraisal } from './appraisal.ts';

/** Law: what is not known never becomes a number. It is named, and what does not depend on it stays as it was. */

/** Every number in a record, however deep, with the way to it. */
function numbersIn(value: unknown, way = ''): readonly (readonly [string, number])[] {
  if (typeof value === 'number') return [[way, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => numbersIn(each, `${way}/${key}`));
}

function holdsNoNaN(appraised: Appraisal): void {
  const bad = numbersIn(appraised.judgements).filter(([, number]) => Number.isNaN(number));
  expect(bad).toEqual([]);
  const { response, noise, ceilings } = appraised.prediction;
  for (const hertz of [0.1, 10, 1000, 20_000]) {
    const found = [
      response.known ? response.value(hertz) : undefined,
      noise.known ? noise.value(hertz) : undefined,
      ceilings.map((each) => (each.known ? [each.value.peak, each.value.gain(hertz)] : undefined)),
    ];
    expect(numbersIn(found).filter(([, number]) => Number.isNaN(number))).toEqual([]);
  }
}

const one = (judgement: Judgement) => JSON.stringify(judgement);

/** Each judgement stands as before, or cannot be made and says for want of what. */
function unaffectedOrNamed(before: Appraisal, after: Appraisal, what: string): void {
  const stood = new Set(before.judgements.map(one));
  for (const judgement of after.judgements) {
    if (stood.has(one(judgement))) continue;
    expect(judgement.outcome, one(judgement)).toBe('cannot tell');
    expect(judgement.missing!.map((each) => each.what)).toContain(what);
  }
  // No rule falls silent either: what was judged before is still judged, or said to be open.
  const spoken = (appraised: Appraisal) => new Set(appraised.judgements.map((each) => `${each.rule} ${each.target}`));
  expect([...spoken(before)].filter((each) => !spoken(after).has(each))).toEqual([]);
}

type Change = (asked: Asked) => Asked;
interface Asked {
  readonly targets: Parameters<typeof point>[0];
  readonly around: Parameters<typeof point>[1];
}

/** What a point may state beside its surface, so that to leave it unknown takes something away. */
const surroundings: Readonly<Record<string, string>> = {
  converterTemperature: '40 °C',
  exposure: 'splashed',
  strayField: 'no',
  localMass: '40 kg',
  shaftDiameter: '300 mm',
  shaftMaterial: 'forged 4140',
  restTravel: '0.1 mm',
  sideClearance: '50 mm',
  tipSpacing: '200 mm',
  surfaceSpeed: '10 m/s',
  tilt: '1 deg',
};

/** Everything a point may ask for at once, in the reference the transducer senses. */
function everything(reference: Reference, change: Change = (asked) => asked): MeasuringPoint {
  const { targets, around } = change({
    targets: {
      overall: {
        see: 'overall',
        at: '10..1000 Hz',
        components: ['25 Hz', '150 Hz'],
        smallest: '0.5 mm/s rms',
        largest: '10 mm/s rms',
        largestAt: '25 Hz',
        reference,
      },
      line: {
        see: 'line',
        at: '25 Hz',
        smallest: '0.1 mm/s rms',
        largest: '8 mm/s rms',
        spacing: '0.3125 Hz',
        reference,
      },
      burst: {
        see: 'burst',
        at: '2..10 kHz',
        smallest: '0.1 g peak',
        largest: '2 g peak',
        tolerance: '±3 dB',
        reference,
      },
    },
    around: { around: surroundings, disturbances: { knock: { level: '5 g peak', band: '1..3 kHz' } } },
  });
  return point(targets, around);
}

const cards: Readonly<Record<string, Partial<ChainParts>>> = {
  'loop-sensor': { input: input('AI-16'), inLine: [supply('LOOP-24'), supply('IND-250')] },
  'proximity-system': { input: changed(input('RACK-DC'), { inputResistance: '1 Mohm' }) },
  lvdt: { input: input('RACK-DC') },
  'capacitive-dc': { input: input('RACK-DC') },
  'low-frequency-velocity': { input: input('RACK-DC') },
  'dual-output': { input: input('AI-16'), inLine: [supply('LOOP-24')] },
};

/** Whose motion each kind senses, where it is not that of the casing. */
const sensed: Readonly<Record<string, Reference>> = {
  'proximity-system': 'shaft-relative',
  lvdt: 'two-body',
  'shaft-rider': 'shaft-absolute',
};
const referenceOf = (chain: ChainParts): Reference => sensed[chain.transducer.kind] ?? 'casing';

/** Optional fields that change a number, stated, so that to leave them unknown takes something away. */
const wholly: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'moving-coil': { coilResistance: '600 ohm', settling: '1 s', largestTilt: '5 deg', shunt: '5 kohm' },
  'shaft-rider': { coilResistance: '600 ohm', movingMass: '20 g', openDamping: '0.3', shunt: '5 kohm' },
  'charge-accelerometer': { cableCapacitance: '500 pF', amplifierGain: '20000' },
  'capacitive-dc': { highCorner: '3 kHz', highCornerOrder: '2', outputResistance: '100 ohm' },
  'low-frequency-velocity': { outputResistance: '100 ohm', largestTilt: '5 deg' },
  lvdt: { highCornerOrder: '2', outputResistance: '50 ohm' },
  'proximity-system': { temperatureCoefficient: '0.1 %/K', transverse: '5 %', mass: '50 g', settling: '1 s' },
  'loop-sensor': { temperatureCoefficient: '0.1 %/K', transverse: '5 %', mass: '50 g', settling: '1 s' },
  'iepe-accelerometer': { elementCount: '1' },
  'constant-current-input': { inputResistance: '1 Mohm' },
  'direct-voltage-input': { inputResistance: '1 Mohm' },
};

const whole = <P extends AnyPart>(part: P): P => changed(part, wholly[part.kind] ?? {});

const transducersInUse = [
  'ACC-100',
  'PVT-4',
  'MCV-20',
  'PRX-8',
  'LPV-25',
  'CHG-25',
  'DCA-2',
  'LFV-75',
  'LVD-25',
  'SRD-20',
  'DUO-25',
];

/** Chains in which, between them, every kind stands once. */
const chains: readonly ChainParts[] = [
  ...transducersInUse.map((name) => {
    const each = whole(transducer(name));
    return parts({ transducer: each, input: whole(input('PORT-24')), metres: 60, ...cards[each.kind] });
  }),
  ...catalogue.mounts
    .filter((each) => each.name !== 'stud')
    .map((each) => parts({ mount: changed(each, { temperature: '-40..90 °C' }), input: whole(input('PORT-24')) })),
  parts({
    mount: changed(mount('stud'), { temperature: '-40..200 °C' }),
    cable: cable('FEP'),
    inLine: [supply('BAR-340')],
  }),
  parts({
    metres: 60,
    inLine: [supply('JB-IS'), supply('ZB-28')],
    input: changed(input('ONL-24'), { highestCompliance: '25 V' }),
  }),
  parts({
    metres: 60,
    inLine: [changed(supply('GI-VIB'), { signalPeak: '9 V', restVoltage: '11..13 V' })],
    input: input('ONL-24'),
  }),
  parts({
    transducer: whole(transducer('LPV-25')),
    metres: 60,
    inLine: [changed(supply('GI-420'), { sourceResistance: '20 ohm' })],
    input: input('AI-16'),
  }),
];

const shelfOf = { transducer: 'transducers', mount: 'mounts', cable: 'cables', input: 'inputs' } as const;

/** Each chain with each field of each of its parts unknown. */
const cases = chains.flatMap((chain) => {
  const subject = everything(referenceOf(chain));
  const single = (Object.keys(shelfOf) as (keyof typeof shelfOf)[]).flatMap((place) =>
    Object.keys(dataSheetOf(chain[place])).map((field) => ({
      name: `${chain.transducer.name} on ${chain.mount.name}, ${chain.input.name}: ${chain[place].kind}, ${field}`,
      field,
      subject,
      chain,
      without: { ...chain, [place]: changed(chain[place] as AnyPart, { [field]: 'unknown' }) } as ChainParts,
    })),
  );
  const inLine = chain.inLine.flatMap((part, index) =>
    Object.keys(dataSheetOf(part)).map((field) => ({
      name: `${chain.transducer.name}, in its line ${part.kind}, ${field}`,
      field,
      subject,
      chain,
      without: {
        ...chain,
        inLine: chain.inLine.with(index, changed(part, { [field]: 'unknown' })),
      },
    })),
  );
  return [...single, ...inLine];
});

test('the chains of this law hold every kind of every list, so that none escapes it', () => {
  const used = new Set(
    chains.flatMap((each) => [each.transducer, each.mount, each.cable, each.input, ...each.inLine]).map((p) => p.kind),
  );
  const all = shelves.flatMap((shelf) => kindsOf[shelf].map((kind) => kind.kind));
  expect(all.filter((kind) => !used.has(kind))).toEqual([]);
});

test.each(cases.map((each) => [each.name, each] as const))('law, unknown field: %s', (_name, each) => {
  const before = appraisal(each.subject, each.chain, usualPolicy);
  const after = appraisal(each.subject, each.without, usualPolicy);
  holdsNoNaN(before);
  holdsNoNaN(after);
  unaffectedOrNamed(before, after, words(each.field));
});

/** What a point states, each unknown in its turn, and the name by which it must be asked for. */
const ofTarget = (target: string, field: string, what: string): readonly [string, Change, string] => [
  `${field} of ${target}`,
  (asked) => ({ ...asked, targets: { ...asked.targets, [target]: { ...asked.targets[target]!, [field]: 'unknown' } } }),
  what,
];
const openPoints: readonly (readonly [string, Change, string])[] = [
  ...['overall', 'line', 'burst'].flatMap((target) => [
    ofTarget(target, 'smallest', 'smallest level'),
    ofTarget(target, 'largest', 'largest level'),
    ofTarget(target, 'tolerance', 'tolerance'),
    ofTarget(target, 'at', target === 'line' ? 'frequency' : 'band'),
  ]),
  ofTarget('overall', 'largestAt', 'frequency of the largest level'),
  ofTarget('line', 'spacing', 'line spacing'),
  [
    'a component of overall',
    (asked) => ({
      ...asked,
      targets: { ...asked.targets, overall: { ...asked.targets.overall!, components: ['25 Hz', 'unknown'] } },
    }),
    'component',
  ],
  ...Object.keys(surroundings).map((field): readonly [string, Change, string] => [
    `${field} around`,
    (asked) => ({ ...asked, around: { ...asked.around, around: { ...surroundings, [field]: 'unknown' } } }),
    words(field),
  ]),
  ['surface', (asked) => ({ ...asked, around: { ...asked.around, surface: 'unknown' } }), 'surface temperature'],
  [
    'level of the knock',
    (asked) => ({
      ...asked,
      around: { ...asked.around, disturbances: { knock: { level: 'unknown', band: '1..3 kHz' } } },
    }),
    'level',
  ],
  [
    'band of the knock',
    (asked) => ({
      ...asked,
      around: { ...asked.around, disturbances: { knock: { level: '5 g peak', band: 'unknown' } } },
    }),
    'band',
  ],
];

test.each(
  chains
    .slice(0, transducersInUse.length)
    .flatMap((chain) => openPoints.map((open) => [chain.transducer.name, open[0], chain, open] as const)),
)('law, unknown at the point, %s: %s', (_name, _field, chain, [, change, what]) => {
  const reference = referenceOf(chain);
  const before = appraisal(everything(reference), chain, usualPolicy);
  const after = appraisal(everything(reference, change), chain, usualPolicy);
  holdsNoNaN(after);
  unaffectedOrNamed(before, after, what);
});

test.each(chains.slice(0, transducersInUse.length).map((chain) => [chain.transducer.name, chain] as const))(
  'law, unknown length of the cable of %s',
  (_name, chain) => {
    const reference = referenceOf(chain);
    const after = appraisal(
      everything(reference),
      { ...chain, cableLength: unanswered([{ of: 'bench', what: 'cable length' }]) },
      usualPolicy,
    );
    holdsNoNaN(after);
    unaffectedOrNamed(appraisal(everything(reference), chain, usualPolicy), after, 'cable length');
  },
);

/** What a careless hand may type: nothing, less than nothing, an order no filter has. */
function careless(part: AnyPart): readonly (readonly [string, string])[] {
  return Object.entries(dataSheetOf(part)).flatMap(([name, entry]): readonly (readonly [string, string])[] => {
    const { type, example } = fieldOf(entry);
    if (type === 'quantity' || type === 'level') {
      const unit = example.replace(/^[-+\d.e]+/, '');
      return [
        [name, `0${unit}`],
        [name, `-1${unit}`],
      ];
    }
    if (type === 'span') return [[name, `0${example.replace(/^.*\.\.[-+\d.e]+/, '').replace(/^[-+\d.e]+/, '')}`]];
    return type === 'count'
      ? [
          [name, '0'],
          [name, '9'],
          [name, '64'],
          [name, '2000'],
        ]
      : [];
  });
}

const slips = chains.flatMap((chain) =>
  (Object.keys(shelfOf) as (keyof typeof shelfOf)[]).flatMap((place) =>
    careless(chain[place] as AnyPart).map(
      ([field, text]) =>
        [`${chain.transducer.name} on ${chain.mount.name}, ${chain[place].kind}`, field, text, chain, place] as const,
    ),
  ),
);

test.each(slips)('negative, %s, %s: %s is refused where it is read, or judged in real numbers', (...slip) => {
  const [, field, text, chain, place] = slip;
  const typed = (() => {
    try {
      return changed(chain[place] as AnyPart, { [field]: text });
    } catch (error) {
      expect(error).toBeInstanceOf(Refusal);
      return undefined;
    }
  })();
  if (typed === undefined) return;
  const appraised = appraisal(everything(referenceOf(chain)), { ...chain, [place]: typed }, usualPolicy);
  holdsNoNaN(appraised);
  const endless = numbersIn(appraised.judgements).filter(([, number]) => !Number.isFinite(number));
  expect(endless).toEqual([]);
});
