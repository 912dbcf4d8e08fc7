import {
  type Level,
  level,
  type Motion,
  motions,
  parseLevel,
  parseQuantity,
  Refusal,
  type RehearsedMotion,
  withCalibrator,
  withTaps,
} from '@soundpost/core';

/** An occasion on which a record is rehearsed: what stands still, how it is coupled, what is done meanwhile. */
export interface GivenOccasion {
  readonly kind: 'running' | 'stopped' | 'at-rest' | 'taps' | 'calibrator';
  readonly standing: boolean;
  readonly coupling: 'as designed' | 'direct';
  done(motion: RehearsedMotion): RehearsedMotion;
}

const usualTap = level('acceleration', 300, 'peak');
const usualTaps = 5;
const usualCalibrator = { level: level('acceleration', 10, 'rms'), frequency: 159.15 } as const;

const occasions: Readonly<Record<GivenOccasion['kind'], (size: string | undefined) => GivenOccasion>> = {
  running: () => ({ kind: 'running', standing: false, coupling: 'as designed', done: (motion) => motion }),
  stopped: () => ({ kind: 'stopped', standing: true, coupling: 'as designed', done: (motion) => motion }),
  'at-rest': () => ({ kind: 'at-rest', standing: true, coupling: 'direct', done: (motion) => motion }),
  taps: (size) => {
    const highest = size === undefined ? usualTap : aboveZero(parseLevel(size, motions), size);
    return {
      kind: 'taps',
      standing: true,
      coupling: 'as designed',
      done: (motion) => withTaps(motion, usualTaps, highest),
    };
  },
  calibrator: (size) => {
    const given = size === undefined ? usualCalibrator : calibratorOf(size);
    return {
      kind: 'calibrator',
      standing: true,
      coupling: 'as designed',
      done: (motion) => withCalibrator(motion, given.level, given.frequency),
    };
  },
};

export const occasionWords = Object.keys(occasions).join(', ');

/** `taps`, `taps:50 g peak`, `calibrator:10 m/s2 rms at 159.15 Hz`. Throws Refusal. */
export function givenOccasion(typed: string | undefined): GivenOccasion {
  const [word, ...size] = (typed ?? 'running').split(':').map((each) => each.trim());
  const make = Object.hasOwn(occasions, word!) ? occasions[word as GivenOccasion['kind']] : undefined;
  if (make === undefined) throw new Refusal({ read: `--occasion ${typed}`, expected: occasionWords });
  return make(size.length === 0 ? undefined : size.join(':'));
}

function calibratorOf(size: string): { readonly level: Level<Motion>; readonly frequency: number } {
  const [what, at] = size.split(/ at /);
  if (at === undefined) {
    throw new Refusal({ read: size, expected: "LEVEL at FREQUENCY, such as '10 m/s2 rms at 159.15 Hz'" });
  }
  const frequency = parseQuantity(at.trim(), 'frequency');
  if (!(frequency > 0)) throw new Refusal({ read: at, expected: 'a frequency above zero' });
  return { level: aboveZero(parseLevel(what!.trim(), motions), what!), frequency };
}

function aboveZero(level: Level<Motion>, typed: string): Level<Motion> {
  if (level.value > 0) return level;
  throw new Refusal({ read: typed, expected: 'a level above zero' });
}
