import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  catalogue,
  changed,
  type Entry,
  input,
  known,
  mount,
  predicted,
  supply,
  transducer,
} from '../../../../evidence/bench.ts';
import { slewLimit } from './formulas/iepe-cable-drive.ts';
import { usableFrequency } from './formulas/mounted-response.ts';
import type { Prediction } from './prediction.ts';
import type { Ceiling } from './transducer/transducer-kind.ts';

/** Laws of whole chains: what may only get worse when a part gets worse. Parts are those of the generic catalogue. */

/** Six decimals, as a person would type: a file refuses a number of 300 zeros. */
const between = (low: number, high: number) =>
  fc.double({ min: low, max: high, noNaN: true }).map((x) => Math.round(x * 1e6) / 1e6);
const decades = (low: number, high: number) => between(low, high).map((x) => 10 ** x);
const biased = fc.constantFrom('ACC-100', 'ACC-100W', 'ACC-100H', 'ACC-500', 'ACC-10', 'ACC-50M', 'PVT-4');
const supplied = fc.constantFrom('ONL-24', 'PORT-24', 'PORT-18');
const tolerance = { low: -0.1, high: 0.1 };

const ceilingsOf = (chain: Prediction): readonly Ceiling[] => chain.ceilings.map(known);
const ceilingCalled = (chain: Prediction, start: string) =>
  ceilingsOf(chain).find((each) => each.name.startsWith(start))!;
/** The peak at which a chain overloads at a frequency, of the ceilings in the motion it senses. */
const overloadAt = (chain: Prediction, frequency: number) =>
  Math.min(
    ...ceilingsOf(chain)
      .filter((each) => each.motion === chain.chain.transducer.senses)
      .map((each) => each.peak / each.gain(frequency)),
  );

test('law: a softer mount never raises the mounted resonance, the usable frequency or the first 10 % of the response', () => {
  const springy = fc.constantFrom('epoxy-pad', 'quick-lock', 'magnet-flat', 'magnet-2pole', 'isolating-stud');
  fc.assert(
    fc.property(
      biased,
      springy,
      decades(6, 10),
      between(0, 3),
      between(0, 200),
      (name, on, stiffness, softer, grams) => {
        const standing = (newtons: number, entries: Readonly<Record<string, Entry>> = {}) =>
          predicted({
            transducer: transducer(name),
            mount: changed(mount(on), { stiffness: `${newtons} N/m`, ...entries }),
          });
        const [stiff, soft] = [standing(stiffness), standing(stiffness / 10 ** softer)];
        const heavier = standing(stiffness, { addedMass: `${55 + grams} g` });
        const lighter = standing(stiffness, { addedMass: '55 g' });
        const onStud = predicted({ transducer: transducer(name) });
        const resonance = (chain: Prediction) => known(chain.chain.transducer.mountedResonance);
        const usable = (chain: Prediction) => usableFrequency(resonance(chain), undefined, tolerance);
        for (const of of [resonance, usable, risesBy10Percent]) {
          const digits = 1 + 1e-9;
          expect(of(soft)).toBeLessThanOrEqual(of(stiff) * digits);
          expect(of(heavier)).toBeLessThanOrEqual(of(lighter) * digits);
          expect(of(stiff)).toBeLessThanOrEqual(of(onStud) * digits);
        }
      },
    ),
    { numRuns: 60 },
  );
});

/** Where the mechanical part of the response has risen by 10 %, found on the response itself by halving. */
function risesBy10Percent(chain: Prediction): number {
  const gain = ceilingCalled(chain, 'rated').gain;
  const middle = known(chain.chain.transducer.mountedResonance) / 20;
  const flat = gain(middle);
  let [low, high] = [middle, 12 * middle];
  if (gain(high) / flat < 1.1) return Number.POSITIVE_INFINITY;
  for (let step = 0; step < 60; step++) {
    const between = Math.sqrt(low * high);
    if (gain(between) / flat < 1.1) low = between;
    else high = between;
  }
  return low;
}

test('law: more cable never raises the frequency up to which it is driven, nor the voltage left for the signal', () => {
  fc.assert(
    fc.property(
      biased,
      supplied,
      between(1, 500),
      between(0, 500),
      between(0.1, 8),
      (name, entry, metres, more, volts) => {
        const along = (length: number) =>
          predicted({ transducer: transducer(name), input: input(entry), metres: length });
        const [short, long] = [along(metres), along(metres + more)];
        const slew = (chain: Prediction) => {
          const { current, capacitance } = known(chain.drive);
          return slewLimit(capacitance, current, 0, volts);
        };
        expect(slew(long)).toBeLessThanOrEqual(slew(short));
        expect(known(long.bias).swing.top).toBeLessThanOrEqual(known(short.bias).swing.top);
        expect(overloadAt(long, 100)).toBeLessThanOrEqual(overloadAt(short, 100) * (1 + 1e-9));
      },
    ),
    { numRuns: 60 },
  );
});

test('law: a resistance in the line never raises the overload limit, and costs the top of the swing I·R', () => {
  fc.assert(
    fc.property(biased, supplied, between(0, 3000), decades(0, 4), (name, entry, ohms, hertz) => {
      const line = (inLine: Parameters<typeof predicted>[0]) =>
        predicted({ transducer: transducer(name), input: input(entry), ...inLine });
      const without = line({});
      const with_ = line({ inLine: [changed(supply('BAR-340'), { resistance: `${ohms} ohm` })] });
      expect(overloadAt(with_, hertz)).toBeLessThanOrEqual(overloadAt(without, hertz) * (1 + 1e-9));
      const lost = known(without.bias).swing.top - known(with_.bias).swing.top;
      const amperes = entry === 'PORT-18' ? 2.2e-3 : 4e-3;
      expect(lost).toBeCloseTo(amperes * ohms, 9);
      expect(known(with_.bias).swing.bottom).toBe(known(without.bias).swing.bottom);
    }),
    { numRuns: 60 },
  );
});

test('law: a resistance or a length of cable more in a loop never raises its spare voltage', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('LPV-25', 'LPV-12L', 'LPA-10P', 'LPV-25X'),
      between(0, 2000),
      between(0, 1000),
      between(0, 1000),
      (name, metres, more, ohms) => {
        const loop = (length: number, resistances: readonly number[]) =>
          predicted({
            transducer: transducer(name),
            input: input('AI-16'),
            metres: length,
            inLine: [
              supply('LOOP-24'),
              ...resistances.map((each) => changed(supply('IND-250'), { resistance: `${each} ohm` })),
            ],
          }).loop!;
        const [plain, longer, loaded] = [loop(metres, []), loop(metres + more, []), loop(metres, [ohms])];
        expect(known(longer.spare)).toBeLessThanOrEqual(known(plain.spare) + 1e-12);
        expect(known(loaded.spare)).toBeLessThanOrEqual(known(plain.spare) + 1e-12);
        // The spare voltage and the largest resistance are one statement: none is left exactly where none may be added.
        for (const each of [plain, longer, loaded]) {
          const room = known(each.largestResistance) - known(each.resistance);
          expect(known(each.spare)).toBeCloseTo(room * each.failureCurrent, 9);
        }
      },
    ),
    { numRuns: 60 },
  );
});

test('law: twice the sensitivity halves the ceilings of swing and input, leaves the rated one, and never adds noise', () => {
  fc.assert(
    fc.property(biased, supplied, decades(0, 3.5), (name, entry, hertz) => {
      const part = transducer(name);
      const sensitivity = known(predicted({ transducer: part }).chain.transducer.sensitivity);
      const unit = name === 'PVT-4' ? 'V/(m/s)' : 'V/(m/s2)';
      const [once, twice] = [1, 2].map((times) =>
        predicted({
          transducer: changed(part, { sensitivity: `${times * sensitivity} ${unit}` }),
          input: input(entry),
        }),
      ) as [Prediction, Prediction];
      for (const start of ['swing', 'input']) {
        const [one, two] = [ceilingCalled(once, start), ceilingCalled(twice, start)];
        expect(two.peak / one.peak).toBeCloseTo(0.5, 9);
        expect(two.gain(hertz)).toBeCloseTo(one.gain(hertz), 9);
      }
      expect(ceilingCalled(twice, 'rated').peak).toBe(ceilingCalled(once, 'rated').peak);
      // The noise of the transducer is stated in its motion and stays; the input's halves; the whole cannot grow.
      const shares = (chain: Prediction) => known(chain.noiseOf).map((share) => share.density(hertz));
      const [[sensor1, input1], [sensor2, input2]] = [shares(once), shares(twice)];
      expect(sensor2! / sensor1!).toBeCloseTo(1, 9);
      expect(input2! / input1!).toBeCloseTo(0.5, 9);
      expect(known(twice.noise)(hertz)).toBeLessThanOrEqual(known(once.noise)(hertz));
    }),
    { numRuns: 60 },
  );
});

test('law: the shares of the noise add as squares to the whole, in every chain that the catalogue makes', () => {
  const frequency = decades(-1, 4.5);
  const chains = catalogue.transducers.flatMap((each) =>
    catalogue.inputs
      .map((entry) => predicted({ transducer: each, input: entry, metres: 120 }))
      .filter((chain) => chain.chain.meets && chain.chain.transducer.signal === 'dynamic'),
  );
  expect(chains.length).toBeGreaterThan(20);
  fc.assert(
    fc.property(fc.constantFrom(...chains), frequency, (chain, hertz) => {
      const shares = known(chain.noiseOf).map((share) => share.density(hertz));
      const whole = known(chain.noise)(hertz);
      expect(shares.length).toBeGreaterThan(0);
      expect(Math.hypot(...shares) / whole).toBeCloseTo(1, 12);
    }),
    { numRuns: 200 },
  );
});

test('law: a smaller input resistance never raises the response well inside the band', () => {
  fc.assert(
    fc.property(decades(2, 7), between(0, 3), between(1, 500), (ohms, less, metres) => {
      const coil = changed(transducer('MCV-20'), { coilResistance: '600 ohm' });
      const into = (resistance: number) =>
        predicted({
          transducer: coil,
          metres,
          input: changed(input('RACK-DC'), { inputResistance: `${resistance} ohm` }),
        });
      const at100 = (chain: Prediction) => {
        const { re, im } = known(chain.response)(100);
        return Math.hypot(re, im);
      };
      expect(at100(into(ohms / 10 ** less))).toBeLessThanOrEqual(at100(into(ohms)) * (1 + 1e-9));
    }),
    { numRuns: 60 },
  );
});
