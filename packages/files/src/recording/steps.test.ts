import { expect, test } from 'vitest';
import { stepsOf } from './steps.ts';

/** What a converter of so many bits with its sign gives of a sine, and what a range makes of it. */
const converted = (bits: number, range: number) =>
  Float64Array.from(
    { length: 4096 },
    (_, n) => (range * Math.round(0.3 * 2 ** (bits - 1) * Math.sin(n / 5))) / 2 ** (bits - 1),
  );

test.each([16, 24])(
  'shares of full scale of %s bits are told, volts of a range of ten are not taken for them',
  (bits) => {
    expect(stepsOf(converted(bits, 1)).shareOfFullScale).toBe(bits - 1);
    expect(stepsOf(converted(bits, 10).map((each) => each / 4)).shareOfFullScale).toBeUndefined();
    expect(stepsOf(Float64Array.from(converted(bits, 5), Math.fround)).shareOfFullScale).toBeUndefined();
  },
);

test('the 24-bit shares of a converter of 20 bits are shares', () => {
  expect(stepsOf(converted(20, 1)).shareOfFullScale).toBeDefined();
});
