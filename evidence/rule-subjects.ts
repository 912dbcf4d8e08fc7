import { expect } from 'vitest';
import { type ChainParts, measuringChain } from '../packages/core/src/chain/chain.ts';
import { prediction } from '../packages/core/src/chain/prediction.ts';
import { type Judgement, reason } from '../packages/core/src/chain/rules/rule.ts';
import type { MeasuringPoint } from '../packages/core/src/demand/measuring-point.ts';
import { usualPolicy } from '../packages/core/src/demand/policy.ts';
import { cable, changed, input, mount, parts, point, supply, transducer } from './bench.ts';

/** One case each rule must pass, and one it must not: the outcome, and where somebody else has the number, the number. */
export interface Row {
  readonly meets: Subject;
  /** A rule of yes or no that has nothing to say while all is well. */
  readonly silent?: true;
  readonly fails?: Subject;
  readonly warns?: Subject;
  readonly 'cannot tell'?: Subject;
}

export interface Subject {
  readonly chain?: Parameters<typeof parts>[0];
  readonly point: MeasuringPoint;
  /** Found by another: value, unit of the last printed digit, and whose it is. */
  readonly found?: { readonly value: number; readonly within: number; readonly source: string };
}

export const rawWaterPump = 'screening table of the reference plant with the raw-water pump, computed by its author';

export const line = (at: string, levels: { smallest?: string; largest?: string; tolerance?: string } = {}) =>
  point({
    line: { see: 'line', at, smallest: '0.1 mm/s rms', largest: '10 mm/s rms', spacing: '0.3125 Hz', ...levels },
  });
export const overall = (levels: { smallest?: string; largest?: string; tolerance?: string } = {}) =>
  point({
    overall: {
      see: 'overall',
      at: '2..1000 Hz',
      components: ['24.77 Hz', '148.6 Hz'],
      largestAt: '24.77 Hz',
      smallest: '0.5 mm/s rms',
      largest: '12 mm/s rms',
      ...levels,
    },
  });
export const burst = (levels: { smallest?: string; largest?: string; tolerance?: string } = {}) =>
  point({
    burst: {
      see: 'burst',
      at: '2..10 kHz',
      smallest: '0.1 g peak',
      largest: '5 g peak',
      tolerance: '±3 dB',
      ...levels,
    },
  });
export const position = point({
  thrust: { see: 'position', smallest: '10 um peak', largest: '500 um peak', reference: 'shaft-relative' },
});
export const connected = (connectorTemperature: string) => ({
  transducer: changed(transducer('ACC-100'), { connectorTemperature }),
});
export const sunk = (immersionDepth: string) => point({}, { around: { exposure: 'immersed', immersionDepth } });
export const jacket = (resists: string) => ({ cable: changed(cable('TSP'), { resists }) });
export const on = (name: string, entries: Readonly<Record<string, string>>) => ({
  mount: changed(mount(name), entries),
});
export const holding = { gravityHeight: '20 mm', footWidth: '30 mm', friction: '0.2' };
export const loop = (name: string, more: readonly string[] = []): Parameters<typeof parts>[0] => ({
  transducer: transducer(name),
  metres: 85,
  input: input('AI-16'),
  inLine: [supply('LOOP-24'), ...more.map(supply)],
});

export const slowKiln = 'screening table of the reference plant with the kiln roller, computed by its author';
export const probe = (name: string): Parameters<typeof parts>[0] => ({
  transducer: transducer(name),
  input: input('RACK-DC'),
});
export const probed = (change: Readonly<Record<string, string>>): Parameters<typeof parts>[0] => ({
  transducer: changed(transducer('PRX-8'), change),
  input: input('RACK-DC'),
});
export const shaft = (around: Readonly<Record<string, string>> = {}) =>
  point(
    {
      turn: {
        see: 'line',
        at: '25 Hz',
        smallest: '10 um pp',
        largest: '250 um pp',
        spacing: '0.1 Hz',
        reference: 'shaft-relative',
      },
    },
    { around },
  );
export const roller = (around: Readonly<Record<string, string>> = {}) =>
  point(
    {
      roller: {
        see: 'line',
        at: '0.2 Hz',
        smallest: '50 um pp',
        largest: '6 mm pp',
        spacing: '6 mHz',
        reference: 'any',
      },
      place: { see: 'position', smallest: '50 um peak', largest: '2 mm peak', reference: 'any' },
    },
    { around },
  );
export const tilted = { transducer: changed(transducer('MCV-20'), { largestTilt: '5 deg' }) };
export const portable = (at: MeasuringPoint): MeasuringPoint => ({ ...at, installation: 'portable' });

export const throughBarrier = (entries: Parameters<typeof changed>[1]): Parameters<typeof parts>[0] => ({
  input: changed(input('ONL-24'), entries),
  inLine: [supply('ZB-28')],
});

export function caseOf(subject: Subject) {
  const chain: ChainParts = parts(subject.chain);
  return { point: subject.point, prediction: prediction(measuringChain(chain)), policy: usualPolicy };
}

/** What every judgement owes its reader: its own rule, a sentence of real numbers, and what would mend it if it fails. */
export function sound(id: string, judgement: Judgement): void {
  expect(judgement.rule).toBe(id);
  const sentence = `${reason(judgement)} ${judgement.needs ?? ''}`;
  expect(sentence).not.toMatch(/NaN|undefined|Infinity|∞/);
  if (judgement.margin !== undefined) {
    expect(Number.isFinite(judgement.margin), sentence).toBe(true);
    if (judgement.outcome === 'fails') expect(judgement.margin, sentence).toBeLessThanOrEqual(0);
    if (judgement.outcome === 'meets') expect(judgement.margin, sentence).toBeGreaterThanOrEqual(0);
  }
  if (judgement.outcome === 'meets') expect(judgement.needs, sentence).toBeUndefined();
  if (judgement.outcome === 'fails') expect(judgement.needs, sentence).toBeDefined();
  if (judgement.outcome === 'cannot tell') expect(judgement.missing?.length, sentence).toBeGreaterThan(0);
}
