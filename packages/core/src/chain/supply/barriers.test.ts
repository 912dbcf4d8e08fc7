import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  cable,
  changed,
  input,
  known,
  mount,
  parts,
  point,
  predicted,
  supply,
  transducer,
} from '../../../../../evidence/bench.ts';
import { usualPolicy } from '../../demand/policy.ts';
import { answer, notStated, parseQuantity, stated } from '../../quantity/index.ts';
import { measuringChain, type OnwardCable } from '../chain.ts';
import { type Prediction, prediction } from '../prediction.ts';
import { type Allowances, allowanceSheet } from '../reading-allowances.ts';
import { readingUncertainty } from '../reading-uncertainty.ts';
import { chainRules } from '../rules/rules.ts';
import { terminalVoltages } from '../terminal-voltages.ts';

const zener = supply('ZB-28');
const isolator = supply('GI-VIB');
const loopIsolator = supply('GI-420');
const onward = (metres: number, behind = 0): readonly OnwardCable[] => [
  { behind, cable: cable('TSP'), length: answer(metres) },
];
const limit = (chain: Prediction) => Math.min(...chain.ceilings.map((each) => known(each).peak));
const biased = fc.constantFrom('ACC-100', 'ACC-100X', 'ACC-500', 'PVT-4');
const supplied = fc.constantFrom('ONL-24', 'PORT-24');
const metres = fc.double({ min: 0, max: 800, noNaN: true });

test('law: a shunt-diode barrier never raises the overload limit, nor the frequency its cable is driven to', () => {
  fc.assert(
    fc.property(biased, supplied, metres, metres, (name, entry, field, card) => {
      const chain = { transducer: transducer(name), input: input(entry), metres: field };
      const [without, through] = [predicted(chain), predicted({ ...chain, inLine: [zener], onward: onward(card) })];
      expect(limit(through)).toBeLessThanOrEqual(limit(without) * (1 + 1e-9));
      expect(known(through.drive).capacitance).toBeGreaterThanOrEqual(known(without.drive).capacitance);
      expect(known(through.bias).swing.top).toBeLessThanOrEqual(known(without.bias).swing.top + 1e-12);
      expect(known(through.bias).swing.bottom).toBe(known(without.bias).swing.bottom);
    }),
    { numRuns: 60 },
  );
});

test('law: behind an isolator neither cable nor input counts for bias and drive; the response still passes both', () => {
  fc.assert(
    fc.property(biased, supplied, supplied, metres, metres, (name, one, other, field, card) => {
      const at = (entry: string, behind: number) =>
        predicted({
          transducer: transducer(name),
          input: input(entry),
          metres: field,
          inLine: [isolator],
          onward: onward(behind),
        });
      const [near, far] = [at(one, 0), at(other, card)];
      expect(known(far.bias)).toEqual(known(near.bias));
      expect(known(far.drive)).toEqual(known(near.drive));
    }),
    { numRuns: 60 },
  );
});

test('law: behind a loop isolator the card costs the field nothing; a longer field cable still costs', () => {
  fc.assert(
    fc.property(metres, metres, fc.integer({ min: 0, max: 5000 }), (field, more, ohms) => {
      const at = (length: number, card: number) =>
        predicted({
          transducer: transducer('LPV-25X'),
          metres: length,
          inLine: [loopIsolator],
          input: changed(input('AI-16'), { resistance: `${card} ohm` }),
        }).loop!;
      expect(known(at(field, ohms).spare)).toBe(known(at(field, 250).spare));
      expect(known(at(field + more, 250).spare)).toBeLessThanOrEqual(known(at(field, 250).spare));
    }),
    { numRuns: 60 },
  );
});

test('law: along a constant-current line the direct voltage never falls towards the input, and the span never narrows', () => {
  fc.assert(
    fc.property(biased, metres, metres, (name, field, card) => {
      const { chain } = predicted({
        transducer: transducer(name),
        input: input('ONL-24'),
        metres: field,
        inLine: [supply('JB-IS'), zener],
        onward: [...onward(field / 2, 0), ...onward(card, 1)],
      });
      const volts = terminalVoltages(chain).map((each) => known(each.voltage));
      expect(volts).toHaveLength(5);
      for (const [index, { low, high }] of volts.entries()) {
        const before = volts[index - 1];
        if (before === undefined) continue;
        expect(low).toBeGreaterThanOrEqual(before.low);
        expect(high - low).toBeGreaterThanOrEqual(before.high - before.low - 1e-12);
      }
      expect(volts.at(-1)!.high - volts[0]!.high).toBeCloseTo(
        known(
          predicted({
            transducer: transducer(name),
            input: input('ONL-24'),
            metres: field * 1.5 + card,
            inLine: [zener],
          }).bias,
        ).lineDrop,
        9,
      );
    }),
    { numRuns: 40 },
  );
});

test('law: a junction box changes nothing: two lengths are one of their sum', () => {
  fc.assert(
    fc.property(biased, metres, metres, (name, one, other) => {
      const chain = { transducer: transducer(name), input: input('ONL-24') };
      const [whole, joined] = [
        predicted({ ...chain, metres: one + other }),
        predicted({ ...chain, metres: one, inLine: [supply('JB-IS')], onward: onward(other) }),
      ];
      expect(known(joined.bias).swing.top).toBeCloseTo(known(whole.bias).swing.top, 9);
      expect(known(joined.drive).capacitance).toBeCloseTo(known(whole.drive).capacitance, 15);
    }),
    { numRuns: 40 },
  );
});

test('an isolator with a source resistance is the same source at 20 mA and a weaker one above', () => {
  const allowed = (resistance: string | undefined) => {
    const chain = predicted({
      transducer: transducer('LPV-25X'),
      metres: 0,
      inLine: [changed(loopIsolator, { sourceResistance: resistance })],
      input: input('AI-16'),
    });
    const at20 = terminalVoltages(chain.chain).find(
      (each) => each.terminal === 'GI-420, field side' && each.state === 'at 20 mA',
    )!;
    expect(known(at20.voltage).low).toBeCloseTo(15.5, 12);
    return known(chain.loop!.largestResistance) - known(chain.loop!.resistance);
  };
  expect(allowed(undefined)).toBeCloseTo(139.53488, 4);
  // 15.5 V − 1.5 mA · 100 Ω = 15.35 V are left at 21.5 mA: (15.35 − 12.5)/21.5 mA.
  expect(allowed('100 ohm')).toBeCloseTo(132.55814, 4);
});

test('the gain of an isolator is part of the sensitivity of the chain, its tolerance part of the budget', () => {
  const tenth = changed(isolator, { gain: '0.1' });
  const chain = { transducer: transducer('ACC-100'), input: input('ONL-24'), metres: 10 };
  const [whole, less] = [predicted({ ...chain, inLine: [isolator] }), predicted({ ...chain, inLine: [tenth] })];
  expect(known(less.response)(100).re).toBeCloseTo(known(whole.response)(100).re, 6);
  const inputRange = (each: Prediction) =>
    each.ceilings.map(known).find((ceiling) => ceiling.name === 'input range')!.peak;
  expect(inputRange(less) / inputRange(whole)).toBeCloseTo(10, 9);
  const allowances: Allowances = {
    of: 'bench',
    values: {
      ...(Object.fromEntries(
        Object.keys(allowanceSheet).map((name) => [name, notStated]),
      ) as unknown as Allowances['values']),
      calibration: stated(0.015 as never),
      referenceTemperature: stated(parseQuantity('23 °C', 'temperature')),
      mounting: stated(0.02 as never),
      inputGain: stated(0.01 as never),
      crossMotion: stated(1 as never),
      responseResidual: stated(0.005 as never),
    },
  };
  const line = point({
    line: { see: 'line', at: '100 Hz', smallest: '0.1 g peak', largest: '1 g peak', spacing: '1 Hz' },
  });
  const budget = (inLine: Parameters<typeof parts>[0]) =>
    readingUncertainty(
      line.targets[0]!,
      line,
      prediction(measuringChain(parts({ ...chain, ...inLine }))),
      allowances,
      'individual',
    );
  const through = known(budget({ inLine: [isolator] }));
  expect(through.lines.map((each) => each.contribution.name)).toContain(`gain of ${isolator.sheet.of}`);
  expect(through.expandedUncertainty).toBeGreaterThan(known(budget({})).expandedUncertainty);
  const untold = budget({ inLine: [changed(isolator, { gainTolerance: undefined })] });
  expect(untold).toEqual({ known: false, missing: [{ of: isolator.sheet.of, what: 'gain tolerance' }] });
});

test('negative: an isolator for another kind of transducer does not meet it, and the rule says which part refuses', () => {
  const judged = (inLine: Parameters<typeof parts>[0]) => {
    const subject = { point: point({}), prediction: predicted({ metres: 10, ...inLine }), policy: usualPolicy };
    return chainRules.find((rule) => rule.id === 'chain/ports-meet')!.judge(subject)[0]!;
  };
  expect(judged({ inLine: [loopIsolator], input: input('ONL-24') })).toMatchObject({
    outcome: 'fails',
    limit: { words: expect.stringContaining('GI-420') },
  });
  expect(judged({ inLine: [isolator], input: input('ONL-24') }).outcome).toBe('meets');
  expect(judged({ inLine: [isolator], input: input('AI-16') }).outcome).toBe('fails');
  const asVoltage = changed(isolator, { cardSide: 'voltage-supply' });
  expect(judged({ inLine: [asVoltage], input: input('RACK-DC') }).outcome).toBe('meets');
  expect(judged({ inLine: [changed(isolator, { cardSide: 'unknown' })], input: input('ONL-24') }).outcome).toBe(
    'cannot tell',
  );
});

test('negative: a loop through a shunt-diode barrier and a card of 250 Ω does not carry its failure current', () => {
  const { loop } = predicted({
    transducer: transducer('LPV-25X'),
    metres: 160,
    inLine: [zener, supply('LOOP-24')],
    input: input('AI-16'),
  });
  expect(known(loop!.resistance)).toBeGreaterThan(known(loop!.largestResistance));
  const terminals = terminalVoltages(
    predicted({
      transducer: transducer('LPV-25X'),
      metres: 160,
      inLine: [zener, supply('LOOP-24')],
      input: input('AI-16'),
    }).chain,
  );
  const atSensor = terminals.find((each) => each.terminal === 'transducer' && each.state === 'at 20 mA')!;
  // 21.6 V − 20 mA · (11.84 + 340 + 250) Ω, below the 12.5 V it needs.
  expect(known(atSensor.voltage).low).toBeCloseTo(21.6 - 0.02 * 601.84, 9);
  expect(known(atSensor.voltage).high).toBeCloseTo(26.4 - 0.02 * 581.84, 9);
});

test('a transducer whose sheet tells no direct voltage has none to expect', () => {
  expect(terminalVoltages(predicted({ transducer: transducer('MCV-20'), mount: mount('stud') }).chain)).toEqual([]);
});
