import { expect, test } from 'vitest';
import { changed, input, mount, parts, point, supply, transducer } from '../../../../../evidence/bench.ts';
import {
  burst,
  caseOf,
  loop,
  overall,
  portable,
  probe,
  probed,
  roller,
  type Subject,
  shaft,
  sound,
} from '../../../../../evidence/rule-subjects.ts';
import type { MeasuringPoint } from '../../demand/measuring-point.ts';
import { measuringChain } from '../chain.ts';
import { sealingOf } from '../sealing.ts';
import { reason } from './rule.ts';
import { chainRules } from './rules.ts';

/** Negative: what stands at the edge of a number stays a number. */
const edges: Readonly<Record<string, Subject>> = {
  'a loop whose supply cannot even feed the sensor': {
    chain: { ...loop('LPV-25'), inLine: [changed(supply('LOOP-24'), { voltage: '5..6 V' })] },
    point: overall(),
  },
  'a card and a cable without resistance': {
    chain: { ...loop('LPV-25'), metres: 0, input: changed(input('AI-16'), { resistance: '0 ohm' }) },
    point: overall(),
  },
  'a transducer without cable': { chain: { metres: 0 }, point: burst() },
  'a supply that gives what the electronics keep': {
    chain: { metres: 100, input: changed(input('PORT-24'), { current: '1 mA' }) },
    point: burst(),
  },
  'no swing, and nothing to survive': {
    chain: { input: changed(input('PORT-24'), { compliance: '10 V' }) },
    point: point({}),
  },
  'a bias below saturation': {
    chain: { transducer: changed(transducer('ACC-100'), { bias: '1..2 V' }) },
    point: burst(),
  },
  'a disturbance at one frequency, such as a converter carrier': {
    point: point({}, { disturbances: { carrier: { level: '2 g peak', band: '4 kHz' } } }),
  },
  'a position beside the moving coil': {
    chain: { transducer: transducer('MCV-20') },
    point: point({ position: { see: 'position', smallest: '10 um peak', largest: '1 mm peak' } }),
  },
  'a sensor with no error of its zero': {
    chain: { ...loop('LPV-25'), transducer: changed(transducer('LPV-25'), { zeroError: '0 %' }) },
    point: overall(),
  },
};

test.each(Object.entries(edges))('negative: %s gives judgements with numbers in them, no error', (_name, subject) => {
  for (const rule of chainRules) {
    for (const judgement of rule.judge(caseOf(subject))) sound(rule.id, judgement);
  }
});

test('negative: a carrier of one frequency counts against the ceiling as it is lifted there, not as nothing', () => {
  const judge = (level: string) => {
    const disturbances = { carrier: { level, band: '27 kHz' } };
    const subject = { chain: { mount: mount('stud') }, point: point({}, { disturbances }) };
    const overload = chainRules.find((rule) => rule.id === 'chain/overload')!;
    return overload.judge(caseOf(subject)).map((each) => each.outcome);
  };
  // On its resonance of quality 12 an accelerometer of 80 g takes 6.7 g.
  expect(judge('6 g peak')).not.toContain('fails');
  expect(judge('7 g peak')).toContain('fails');
});

const judgedBy = (id: string, subject: Subject) => chainRules.find((rule) => rule.id === id)!.judge(caseOf(subject));
const outcomesOf = (id: string, subject: Subject) => judgedBy(id, subject).map((each) => each.outcome);

test('a case that is the signal ground is refused online, and accepted on a portable collector', () => {
  const chain = { transducer: transducer('ACC-50M') };
  expect(outcomesOf('chain/case-grounding', { chain, point: burst() })).toEqual(['fails']);
  expect(outcomesOf('chain/case-grounding', { chain, point: portable(burst()) })).toEqual(['meets']);
  // Not a question of probes: their case is not on the machine's signal.
  expect(outcomesOf('chain/case-grounding', { chain: probe('PRX-8'), point: burst() })).toEqual([]);
});

test('a gap set off the middle has room on its nearer side only, and the gap voltage is told', () => {
  const set = (gap: string) => probed({ setGap: gap });
  const at = shaft({ restTravel: '0.6 mm' });
  expect(outcomesOf('chain/travel-and-position', { chain: set('1.25 mm'), point: at })).toEqual(['meets']);
  expect(outcomesOf('chain/travel-and-position', { chain: set('0.8 mm'), point: at })).toEqual(['fails']);
  expect(outcomesOf('chain/travel-and-position', { chain: set('3 mm'), point: shaft() })).toEqual(['fails']);
  const travel = measuringChain(parts(probe('PRX-8'))).transducer.linearTravel;
  if (travel?.known !== true) throw new Error('the linear range is known');
  expect(travel.value.set!.voltage).toBeCloseTo(-9.8375, 9);
});

test('without a stated rest the position that is to be measured counts; with neither the words say so', () => {
  const words = (at: MeasuringPoint) =>
    judgedBy('chain/travel-and-position', { chain: probe('PRX-25'), point: at }).map((each) => reason(each));
  expect(words(roller())).toEqual(words(roller({ restTravel: '2 mm' })));
  expect(words(shaft())[0]).toMatch(/none stated/);
});

test('a transducer of another motion tells no position, however low its corner', () => {
  const chain = { transducer: transducer('DCA-2'), input: input('RACK-DC') };
  expect(outcomesOf('chain/passes-rest', { chain, point: roller() })).toEqual(['fails']);
});

test('trap: IP67 does not imply IP66; two codes are read as two, and the ladder is climbed by the higher', () => {
  const read = (text: string) => sealingOf(text);
  expect(read('IP67 (mated)')).toMatchObject({ water: 7, jets: false });
  expect(read('IP66')).toMatchObject({ water: 6, jets: true });
  for (const both of ['IP66/IP68 moulded', 'IP66/68 moulded', 'IP68 / IP66 moulded']) {
    expect(read(both), both).toMatchObject({ water: 8, jets: true, state: 'moulded' });
  }
  expect(read('IP69K')).toMatchObject({ water: 9, jets: true });
  expect(read('IP68 (10 m, continuous)').depth).toBe(10);
  expect(read('IP67 (1 m for 30 min)').depth).toBe(1);
  for (const none of [
    'IP68 moulded',
    'IP67 with 5 m cable',
    'IP68, cable 5 m',
    'IP68 (moulded cable 5 m)',
    'IP68, hole of 10 mm',
  ])
    expect(read(none).depth).toBe(undefined);
  expect(read('hermetic, hardline')).toMatchObject({ water: undefined, jets: false, state: 'hermetic' });
});

test.each([
  ['dry', 'IP54', 'meets'],
  ['splashed', 'IP54', 'meets'],
  ['splashed', 'IP63', 'fails'],
  ['splashed', 'mated', 'cannot tell'],
  ['washed down', 'IP68 (mated)', 'fails'],
  ['washed down', 'IP67 integral cable', 'fails'],
  ['washed down', 'IP68 moulded cable', 'meets'],
  ['washed down', 'IP65', 'fails'],
  ['immersed', 'hermetic, hardline', 'meets'],
  ['immersed', 'IP68 (10 m, continuous)', 'meets'],
])('sealing: a %s place and %s %s', (exposure, sealing, outcome) => {
  const chain = { transducer: changed(transducer('ACC-100'), { sealing }) };
  expect(outcomesOf('chain/sealing', { chain, point: point({}, { around: { exposure } }) })).toEqual([outcome]);
});
