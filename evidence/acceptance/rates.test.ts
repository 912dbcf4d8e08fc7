import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { shareOf, showMeasure } from '../../packages/core/src/index.ts';
import { root } from '../reading.ts';
import { injected, injectedFaults } from './campaign/detection-rates.ts';
import { healthySession } from './campaign/healthy-session.ts';
import { ratesPage } from './campaign/page.ts';
import { campaignPlaces } from './campaign/places.ts';
import { oneMoreRecovery } from './campaign/recovery-rates.ts';
import { ways } from './recovery.ts';

const kept = (name: string) => JSON.parse(readFileSync(join(root, `evidence/acceptance/rates/${name}.json`), 'utf8'));

test.each(campaignPlaces().map((place) => [place.name, place] as const))(
  'law: a healthy acceptance of %s calls no fault',
  (_name, place) => {
    const results = healthySession(place, 5001);
    const fails = results.filter(({ verdict }) => verdict === 'fails');
    expect(fails.map(({ check, found }) => `${check}: ${showMeasure(found)}`)).toEqual([]);
    expect(results.some(({ verdict }) => verdict === 'meets')).toBe(true);
  },
  120_000,
);

describe('law: the largest size of every fault is found', () => {
  // What these miss stands in the page, with its rate.
  const missed = ['channels X and Y exchanged'];
  test.each(injectedFaults.filter(({ fault }) => !missed.includes(fault)).map((each) => [each.fault, each] as const))(
    '%s',
    (_fault, fault) => {
      const size = fault.sizes.at(-1)!;
      // A fault that depends on what the draw asks of the chain may need a second one.
      expect([900, 901, 902].some((turn) => injected(fault, size, turn).found)).toBe(true);
    },
    120_000,
  );
});

test('law: intervals of what is identified hold what was put in, as far as a dozen runs can tell', () => {
  const rates = { ways: {}, kinds: {} };
  for (let run = 0; run < 12 * Object.keys(ways).length; run++) oneMoreRecovery(rates, 12);
  for (const [kind, { told, inside }] of Object.entries(
    rates.kinds as Record<string, { told: number; inside: number }>,
  )) {
    expect(told, kind).toBeGreaterThan(0);
    expect(shareOf(inside, told, 0.999).high, kind).toBeGreaterThan(0.95);
  }
}, 240_000);

test('golden: the page of the rates is made of the rates that are kept', () => {
  const page = readFileSync(join(root, 'docs/acceptance-rates.md'), 'utf8');
  expect(page).toBe(ratesPage(kept('healthy'), kept('detection'), kept('recovery')));
});

test('every rate is one of the code that knows its faults', () => {
  const known = injectedFaults.flatMap(({ fault, sizes }) => sizes.map(({ said }) => `${fault} ${said}`));
  for (const { fault, said } of kept('detection').rates.rows) expect(known).toContain(`${fault} ${said}`);
});
