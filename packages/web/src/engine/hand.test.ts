import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Engine } from './engine.ts';
import { exampleDisk, exampleNames } from './example-disk.ts';
import { Hand } from './hand.ts';
import type { PictureView, TrialAsked } from './views.ts';

const picture = ({ outcome, chart, decides, shown, speed }: PictureView) => ({ outcome, chart, decides, shown, speed });

test.each(exampleNames)('law: on the page and in the worker a hand sees the same, to the letter, at %s', (name) => {
  const engine = new Engine();
  const opened = engine.open(exampleDisk(name));
  if ('refused' in opened) throw new Error(opened.refused.message);
  engine.show({ units: 'us', decimal: 'comma', detector: 'peak' });
  for (const { of } of engine.plant().points) {
    const point = engine.point(of)!;
    // As it passes from thread to thread.
    const hand = new Hand(structuredClone(engine.held(of)!));
    const keys = point.trial.handles.map((each) => each.key);
    const places = point.places.filter((each) => each.place !== 'transducer' && each.choices.length > 0);
    const asked: fc.Arbitrary<TrialAsked> = fc.record({
      of: fc.constant(of),
      moved:
        keys.length === 0
          ? fc.constant({})
          : fc.dictionary(fc.constantFrom(...keys), fc.double({ min: -1, max: 1, noNaN: true }), { maxKeys: 2 }),
      parts: fc.oneof(
        fc.constant({}),
        fc
          .constantFrom(...places)
          .chain(({ place, choices }) => fc.constantFrom(...choices).map((each) => ({ [place]: each.name }))),
      ),
      speed: fc.option(fc.double({ min: point.speed?.low ?? 1, max: point.speed?.high ?? 1, noNaN: true }), {
        nil: undefined,
      }),
      width: fc.constantFrom('wide' as const, 'narrow' as const),
    });
    fc.assert(
      fc.property(asked, (each) => {
        expect(hand.picture(each)).toEqual(picture(engine.trial(each)!));
      }),
      { numRuns: 6, seed: 11 },
    );
  }
});

test('a transducer that was not handed over is not drawn as another one; handed over it is', () => {
  const engine = new Engine();
  engine.open(exampleDisk('raw-water-pump'));
  const of = 'P-301/pump-drive-end-horizontal';
  const { places } = engine.point(of)!;
  const { chosen, choices } = places.find((each) => each.place === 'transducer')!;
  const other = choices.find((each) => each.name !== chosen)!.name;
  const asked: TrialAsked = { of, moved: {}, parts: { transducer: other }, speed: undefined };
  expect(new Hand(structuredClone(engine.held(of)!)).picture(asked)).toBeUndefined();
  const handed = new Hand(structuredClone(engine.held(of, other)!));
  expect(handed.picture(asked)).toEqual(picture(engine.trial(asked)!));
});
