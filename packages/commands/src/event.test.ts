import { expect, test } from 'vitest';
import { event } from './event.ts';
import { done, flowing, pump, pumpPath, text, world } from './testing/house.ts';

const point = 'pump-drive-end-loop';

interface EventJson {
  readonly days: number;
  readonly faults: readonly {
    readonly target: string;
    readonly statedAt?: string;
    readonly unknown?: readonly { readonly what: string }[];
    readonly baselineAdded?: boolean;
    readonly alarms?: readonly {
      readonly name: string;
      readonly level: { readonly value: number };
      readonly acts: { readonly day?: number; readonly trueDay?: number };
      readonly never?: string;
    }[];
  }[];
}

const faultsOf = async (given: Readonly<Record<string, unknown>>, surroundings = world()) => {
  const outcome = await done(event, { plant: pumpPath, point, ...given }, surroundings);
  return { outcome, faults: (outcome.json as EventJson).faults };
};

test('independent: the motion itself reaches a set point on the day that exponential growth gives', async () => {
  for (const days of [40, 60.5]) {
    const { faults } = await faultsOf({ target: 'overall velocity', days: String(days) });
    const alarms = faults[0]!.alarms!;
    expect(alarms.map((each) => each.name)).toEqual(['alert', 'trip']);
    for (const { level, acts } of alarms) {
      const byHand = (days * Math.log(level.value / 0.0005)) / Math.log(25 / 0.5);
      expect(acts.trueDay).toBeCloseTo(byHand, 3);
      // The loop sensor shows 0.995 of the shaft speed, which is no half day of a growth of fifty in forty days.
      expect(Math.abs(acts.day! - byHand)).toBeLessThan(0.5);
    }
  }
});

test('each alarm stands in a table with its day, level and delay, in the units and decimal sign asked for', async () => {
  const outcome = await done(event, { plant: pumpPath, point }, world(), { units: 'us', decimal: 'comma' });
  expect(flowing(outcome)).toMatch(/alert 0,125 in\/s 19 /);
  expect(flowing(outcome)).toContain('3 s');
  expect(text(outcome)).not.toMatch(/mm\/s|\d\.\d/);
  expect(Math.max(...outcome.lines.map((line) => [...line.text].length))).toBeLessThanOrEqual(80);
});

test('negative: bursts of the bearing never move the loop, and the reason is said for both alarms at once', async () => {
  const { outcome, faults } = await faultsOf({ target: 'pump-drive-end-horizontal/bearing bursts' });
  expect(faults).toMatchObject([{ statedAt: 'P-301/pump-drive-end-horizontal', baselineAdded: true }]);
  for (const { acts, never } of faults[0]!.alarms!) {
    expect(acts).not.toHaveProperty('day');
    expect(never).toContain('outside its band');
  }
  expect(flowing(outcome)).toContain("alert and trip never act: 'bearing bursts' at 4472 Hz lies outside its band");
});

test('negative: a chain that keeps the trip from acting ends with 1, and says what it shows of how much', async () => {
  // By hand: √(8.6² + 1.9²) = 8.81 passes 8.5; the loop sensor, −3 dB at 8 Hz, shows 0.924 of 12.44 Hz: √(7.95² + 1.9²) = 8.17.
  const surroundings = world({ [pumpPath]: pump({ 'largest: 10 mm/s rms': 'largest: 8.6 mm/s rms' }) });
  const { outcome, faults } = await faultsOf({ target: 'pump-drive-end-horizontal/1x at lowest speed' }, surroundings);
  expect(outcome.exit).toBe(1);
  const [alert, trip] = faults[0]!.alarms!;
  expect(alert!.acts.day).toBeGreaterThan(alert!.acts.trueDay!);
  expect(trip!.acts).not.toHaveProperty('day');
  expect(trip!.never).toMatch(/^of 8\.80\d mm\/s rms .* the chain shows 8\.1\d* mm\/s rms/);
  expect(flowing(outcome)).toContain('The trip never acts in 40 days against day');
});

test('negative: an unknown level gives no day, and is named', async () => {
  const [place] = pump().split('pump-drive-end-loop:').slice(1);
  const unknown = pump({ [place!]: place!.replace('smallest: 0.5 mm/s rms', 'smallest: unknown') });
  const { outcome, faults } = await faultsOf({}, world({ [pumpPath]: unknown }));
  expect(faults).toMatchObject([{ target: 'overall velocity', unknown: [{ what: 'smallest level' }] }]);
  expect(flowing(outcome)).toContain('overall velocity: cannot be told');
});

test.each([
  [{ days: '0' }, 'days as a number above 0'],
  [{ days: '40 d' }, 'days as a number above 0'],
  [{ target: 'overall velocty' }, "Did you mean 'overall velocity'?"],
  [{ point: 'pump-drive-end-horizontal' }, "expected a point with an 'alarm'. Here pump-drive-end-loop has one"],
])('refused: %j', async (given, meant) => {
  const { outcome } = await faultsOf(given);
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toContain(meant);
});
