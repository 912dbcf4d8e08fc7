import fc from 'fast-check';
import { expect, test } from 'vitest';
import { faultCurrents } from '../../chain/formulas/index.ts';
import { showMeasure } from '../../finding/measure.ts';
import { answer, level, notStated, type Stated, si, stated } from '../../quantity/index.ts';
import { calculate } from '../../working/index.ts';
import { exampleCase, logic, response, rms, seconds } from '../rules/example.ts';
import { alarmRules, orderFindings } from '../rules/rules.ts';
import {
  type AlarmSample,
  type AlarmSetting,
  alarmRun,
  type ChannelState,
  channelStates,
  faultActions,
  firstAction,
  loopChannel,
  probeChannel,
  type ResponseTimes,
  responseTime,
  responseTimeWorking,
  statedResponseTime,
  vote,
  votingCalled,
  votings,
} from './index.ts';

/** Truth tables written out by hand: above, below, not OK; what no vote, vote and degrade make of each. */
const tables: Readonly<
  Record<string, readonly (readonly [channels: string, no: boolean, yes: boolean, degrade: boolean])[]>
> = {
  '1oo1': [
    ['a', true, true, true],
    ['b', false, false, false],
    ['n', false, true, false],
  ],
  '1oo2': [
    ['ab', true, true, true],
    ['bb', false, false, false],
    ['nb', false, true, false],
    ['na', true, true, true],
    ['nn', false, true, false],
  ],
  '2oo2': [
    ['aa', true, true, true],
    ['ab', false, false, false],
    ['an', false, true, true],
    ['bn', false, false, false],
    ['nn', false, true, false],
  ],
  '2oo3': [
    ['aab', true, true, true],
    ['abb', false, false, false],
    ['abn', false, true, true],
    ['bbn', false, false, false],
    ['bnn', false, true, false],
    ['ann', false, true, true],
    ['nnn', false, true, false],
  ],
};
const letters: Readonly<Record<string, ChannelState>> = { a: 'above', b: 'below', n: 'not-ok' };
const spelled = (text: string) => [...text].map((letter) => letters[letter]!);

test('printed: votes as written out by hand for every voting and every action on a fault', () => {
  expect(Object.keys(tables)).toEqual(votings.map((each) => each.name));
  for (const each of votings) {
    for (const [channels, ...expected] of tables[each.name]!) {
      const found = faultActions.map((action) => vote(each, spelled(channels), action).holds);
      expect(found, `${each.name} ${channels}`).toEqual(expected);
    }
  }
});

const anyVoting = fc.constantFrom(...votings);
const states = (count: number) => fc.array(fc.constantFrom(...channelStates), { minLength: count, maxLength: count });

test('law: order of channels does not matter, one more above never hinders, a fault alone trips only where it votes', () => {
  fc.assert(
    fc.property(anyVoting, fc.constantFrom(...faultActions), fc.nat(2), (voting, action, at) => {
      fc.assert(
        fc.property(states(voting.of), (channels) => {
          const found = vote(voting, channels, action);
          expect(vote(voting, [...channels].reverse(), action).holds).toBe(found.holds);
          const raised = channels.map(
            (each, index): ChannelState => (index === at && each === 'below' ? 'above' : each),
          );
          if (found.holds) expect(vote(voting, raised, action).holds).toBe(true);
          if (action !== 'vote' && !channels.includes('above')) expect(found.holds).toBe(false);
          if (found.blind) expect(found.holds).toBe(false);
        }),
        { numRuns: 40 },
      );
    }),
    { numRuns: 40 },
  );
});

test('negative: 21 mA is a fault and no trip, 3.6 mA is a fault and no machine at rest', () => {
  expect(loopChannel(faultCurrents.high, 0.00944)).toBe('not-ok');
  expect(loopChannel(faultCurrents.low, 0.00944)).toBe('not-ok');
  expect(loopChannel(0.0207, 0.00944)).toBe('not-ok');
  expect(loopChannel(0.0205, 0.00944)).toBe('above');
  expect(loopChannel(0.0095, 0.00944)).toBe('above');
  expect(loopChannel(0.0094, 0.00944)).toBe('below');
  const sound = { low: -17.7, high: -3 };
  expect(probeChannel(-19, sound, 1, 0.5)).toBe('not-ok');
  expect(probeChannel(-1, sound, 0, 0.5)).toBe('not-ok');
  expect(probeChannel(-10, sound, 1, 0.5)).toBe('above');
});

const setting = (changes: Partial<AlarmSetting> = {}): AlarmSetting => ({
  level: 10,
  voting: votingCalled('1oo1'),
  whenNotOk: 'no vote',
  delay: 2,
  hysteresis: 0.1,
  start: { action: 'none', factor: 1, time: 0 },
  ...changes,
});
const run = (values: readonly (number | 'not-ok')[], changes: Partial<AlarmSetting> = {}) =>
  alarmRun(
    setting(changes),
    values.map((value, time) => ({ time, channels: [value] })),
  ).map(({ time, is }) => `${time} ${is}`);

test('printed: what an alarm does second by second, written out by hand', () => {
  expect(run([5, 11, 11, 5, 11, 5])).toEqual([]);
  expect(run([5, 11, 11, 11, 9.5, 8.9])).toEqual(['3 acts', '5 resets']);
  expect(run([11, 'not-ok', 11, 11, 11])).toEqual(['1 fault', '1 blind', '2 sound', '4 acts']);
  expect(run([12, 12, 12, 12], { start: { action: 'inhibit', factor: 1, time: 10 } })).toEqual([]);
  expect(run([12, 12, 12, 12, 12], { start: { action: 'inhibit', factor: 1, time: 2 } })).toEqual(['4 acts']);
  expect(run([19, 19, 19, 19], { start: { action: 'multiply', factor: 2, time: 10 } })).toEqual([]);
  expect(run([21, 21, 21, 21], { start: { action: 'multiply', factor: 2, time: 10 } })).toEqual(['2 acts']);
  expect(run([21, 21], { delay: 0 })).toEqual(['0 acts']);
});

const level01 = fc.double({ min: 0, max: 20, noNaN: true });
const record: fc.Arbitrary<readonly AlarmSample[]> = fc
  .array(level01, { minLength: 1, maxLength: 40 })
  .map((values) => values.map((value, time) => ({ time, channels: [value] })));

test('law: a longer delay, a higher set point or a wait at start never makes it act earlier', () => {
  const first = (changes: Partial<AlarmSetting>, samples: readonly AlarmSample[]) =>
    firstAction(alarmRun(setting(changes), samples)) ?? Number.POSITIVE_INFINITY;
  fc.assert(
    fc.property(record, fc.nat(5), fc.nat(5), (samples, delay, more) => {
      const reference = first({ delay }, samples);
      expect(first({ delay: delay + more }, samples)).toBeGreaterThanOrEqual(reference);
      expect(first({ delay, level: 10 + more }, samples)).toBeGreaterThanOrEqual(reference);
      const start = { factor: 2, time: more };
      expect(first({ delay, start: { ...start, action: 'multiply' } }, samples)).toBeGreaterThanOrEqual(reference);
      expect(first({ delay, start: { ...start, action: 'inhibit' } }, samples)).toBeGreaterThanOrEqual(reference);
    }),
  );
});

test('law: it acts and resets in turn, and what stays below the set point never makes it act', () => {
  fc.assert(
    fc.property(record, fc.double({ min: 0, max: 0.5, noNaN: true }), (samples, hysteresis) => {
      const turns = alarmRun(setting({ hysteresis, delay: 0 }), samples).map(({ is }) => is);
      for (const [index, is] of turns.entries()) expect(is).toBe(index % 2 === 0 ? 'acts' : 'resets');
      const quiet = samples.map(({ time, channels }) => ({ time, channels: channels.map((each) => Number(each) / 2) }));
      expect(alarmRun(setting({ hysteresis }), quiet)).toEqual([]);
    }),
  );
});

const wait = fc.double({ min: 0, max: 100, noNaN: true });
const waits = fc.record({ detector: wait, filter: wait, scan: wait, delay: wait, finalElement: wait });

test('law: the budget of a trip is additive: each wait adds itself and nothing else', () => {
  fc.assert(
    fc.property(
      waits,
      fc.constantFrom('detector', 'filter', 'scan', 'delay', 'finalElement'),
      wait,
      (times, name, more) => {
        const key = name as keyof ResponseTimes;
        const longer = { ...times, [key]: times[key] + more };
        expect(responseTime(longer)).toBeCloseTo(responseTime(times) + more, 9);
        const zero: ResponseTimes = { detector: 0, filter: 0, scan: 0, delay: 0, finalElement: 0 };
        const alone = Object.entries(times).map(([each, time]) => responseTime({ ...zero, [each]: time }));
        expect(alone.reduce((total, time) => total + time, 0)).toBeCloseTo(responseTime(times), 9);
      },
    ),
  );
});

test('negative: a trip later than allowed blocks, one quicker than ten turns is warned of, an unknown wait is asked', () => {
  const typed = { detector: '0.5 s', filter: '0 s', scan: '0.1 s', delay: '3 s', 'final-element': '0.5 s' };
  const rules = (more: Readonly<Record<string, string>>) =>
    calculate(responseTimeWorking, { ...typed, ...more }).findings.map(({ rule, weight }) => `${rule} ${weight}`);
  expect(rules({})).toEqual([]);
  expect(rules({ allowed: '4 s' })).toEqual(['alarm/response-time blocks-issue']);
  expect(rules({ slowest: '12 r/min' })).toEqual(['alarm/response-time warns']);
  const open = { ...response(stated(si('time', 5))), values: { ...response(stated(5)).values, scan: notStated } };
  const found = statedResponseTime(open, seconds(3), 'K-11');
  expect(found.total).toMatchObject({ known: false, missing: [{ what: 'scan' }] });
  const rule = alarmRules.find((each) => each.rule === 'alarm/response-time')!;
  const asked = rule.findings(exampleCase({ subject: { response: open } }));
  expect(asked.map(({ weight }) => weight)).toEqual(['question']);
  expect(showMeasure(asked[0]!.asks ?? '')).toMatch(/scan/);
});

const judged = (subject: Parameters<typeof exampleCase>[0]) =>
  orderFindings(exampleCase(subject)).map(({ rule, weight }) => `${rule} ${weight}`);

test('negative: no logic stated says nothing; an unknown vote or fault action is asked, who owns it named', () => {
  expect(judged({})).toEqual([]);
  expect(judged({ subject: { logic: logic({}) } })).toEqual([]);
  const unknown = logic({});
  const values = { ...unknown.values, voting: { known: false, ask: 'owner of the trip' } as Stated<never> };
  const open = { logic: { ...unknown, values: { ...values, whenNotOk: notStated } } };
  expect(judged({ subject: open })).toEqual(['alarm/vote question', 'alarm/fault-is-no-trip question']);
  expect(showMeasure(orderFindings(exampleCase({ subject: open }))[0]!.asks ?? '')).toMatch(/owner of the trip/);
  expect(judged({ subject: { logic: logic({ voting: '2oo2', whenNotOk: 'no vote' }) } })).toEqual(['alarm/vote warns']);
  expect(judged({ subject: { logic: logic({ voting: '2oo3', whenNotOk: 'vote' }) } })).toEqual([
    'alarm/fault-is-no-trip warns',
  ]);
});

test('negative: a start without an end, a factor beyond the range or unknown', () => {
  const start = (changes: Parameters<typeof logic>[0]) => judged({ subject: { logic: logic(changes) } });
  expect(start({ atStart: 'none' })).toEqual([]);
  expect(start({ atStart: 'multiply', startFactor: 2 })).toEqual(['alarm/at-start question']);
  expect(start({ atStart: 'multiply', startTime: 90 })).toEqual(['alarm/at-start question']);
  expect(start({ atStart: 'multiply', startFactor: 3, startTime: 90 })).toEqual(['alarm/at-start blocks-issue']);
  expect(start({ atStart: 'multiply', startFactor: 5, startTime: 90 })).toEqual([
    'alarm/at-start blocks-issue',
    'alarm/at-start warns',
  ]);
});

test('negative: further set points are put in order with all others of their kind, in their band alone', () => {
  const wide = exampleCase();
  const named = (name: string, does: 'alert' | 'trip', value: number, band?: { low: number; high: number }) => ({
    name,
    does,
    because: '',
    delay: seconds(3),
    level: answer(level('velocity', value / 1000, 'rms', band)),
  });
  const rules = (...rows: ReturnType<typeof named>[]) =>
    orderFindings({ ...wide, rows: [...wide.rows, ...rows] }).map(({ rule }) => rule);
  expect(rules(named('early', 'alert', 3))).toEqual([]);
  expect(rules(named('late', 'alert', 9.5))).toEqual(['alarm/alert-below-trip']);
  expect(rules(named('bearing lines', 'trip', 2, { low: 100, high: 400 }))).toEqual([]);
});

test('negative: the baseline of a sister machine or an assumed one is asked about', () => {
  const baseline = (source: string, status: 'measured' | 'assumed' = 'measured') =>
    judged({ subject: { baseline: stated(rms(2), '2 mm/s rms', status, source) } });
  expect(baseline('route data')).toEqual([]);
  expect(baseline('copied from the sister machine K-12')).toEqual(['alarm/own-baseline question']);
  expect(baseline('design review', 'assumed')).toEqual(['alarm/own-baseline question']);
});
