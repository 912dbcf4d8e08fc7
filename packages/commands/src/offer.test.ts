import { expect, test } from 'vitest';
import { offer } from './offer.ts';
import { done, fileOf, flowing, pumpPath, world } from './testing/house.ts';

const offersPath = 'examples/offers/accelerometers.yaml';
const generic = 'packages/files/catalogues/generic.yaml';

interface Json {
  readonly offers: readonly {
    readonly offered: string;
    readonly deviations: readonly { readonly field: string; readonly deviation: string }[];
    readonly points: readonly { readonly point: string; readonly is: string }[];
    readonly unproven: readonly { readonly target: string; readonly after: string }[];
    readonly changed: readonly unknown[];
  }[];
}

const run = (offers: string = fileOf(offersPath), asked = 'ACC-100', parts?: readonly string[]) =>
  done(offer, { plant: pumpPath, asked, offers: offersPath, parts }, world({ [offersPath]: offers }));

test('law: the part asked for, offered, deviates in nothing and changes no point', async () => {
  const { json, exit } = await run(fileOf(generic), 'ACC-100', ['ACC-100']);
  const [same] = (json as Json).offers;
  expect(same!.deviations.length).toBeGreaterThan(10);
  expect(same!.deviations.every(({ deviation }) => deviation === 'same')).toBe(true);
  expect(same!.points.map(({ is }) => is)).toEqual(['same']);
  expect(same!.unproven).toEqual([]);
  expect(same!.changed).toEqual([]);
  expect(exit).toBe(0);
});

test('an offer with a lower resonance loses the bursts it lies beside; one that states less proves nothing', async () => {
  const { offers } = (await run()).json as Json;
  const [a, b, c] = offers;
  expect(a!.points[0]!.is).toBe('lost');
  expect(a!.unproven.map(({ target, after }) => [target, after])).toContainEqual(['bearing bursts', 'fails']);
  expect(b!.points[0]!.is).toBe('lost');
  expect(b!.unproven.every(({ after }) => after === 'cannot tell')).toBe(true);
  expect(
    b!.deviations
      .filter(({ deviation }) => deviation === 'not stated in the offer')
      .map(({ field }) => field)
      .sort(),
  ).toEqual(['bias', 'caseIsolated', 'noise', 'settling']);
  expect(c!.points[0]!.is).toBe('better');
});

test('where every offer loses a proof the command ends with 1', async () => {
  expect((await run(undefined, 'ACC-100', ['OFFER-A', 'OFFER-B'])).exit).toBe(1);
  expect((await run(undefined, 'ACC-100', ['OFFER-C'])).exit).toBe(0);
});

test('a mount, a cable or an input can be offered as well', async () => {
  for (const asked of ['stud', 'TSP', 'ONL-24']) {
    const { json } = await run(fileOf(generic), asked, [asked]);
    expect(
      (json as Json).offers[0]!.points.every(({ is }) => is === 'same'),
      asked,
    ).toBe(true);
  }
});

test('a name that is nowhere is refused with the nearest one; an offer of another shelf too', async () => {
  expect(flowing(await run(undefined, 'ACC-1OO'))).toContain('ACC-100');
  expect((await run(undefined, 'stud')).exit).toBe(2);
});
