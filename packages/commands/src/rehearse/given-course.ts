import { parseQuantity, Refusal, type SpeedCourse, type SpeedStatement, type Writing } from '@soundpost/core';

const courses = ['steady', 'ramp', 'run-up', 'coast-down'] as const;

export const courseWords = courses.join(', ');

/** `run-up:10 r/min:highest`: evenly for a ramp, ever more slowly for a run-up and a coast-down. Throws Refusal. */
export function givenCourse(typed: string | undefined, state: string, writing?: Writing): SpeedCourse {
  const [word = 'steady', ...speeds] = (typed ?? 'steady').split(':').map((each) => each.trim());
  const kind = courses.find((each) => each === word);
  const [from, to] = speeds;
  if (kind === 'steady' && to === undefined)
    return { is: 'steady', at: from === undefined ? state : speed(from, writing) };
  if (kind === undefined || kind === 'steady' || from === undefined || to === undefined || speeds.length > 2) {
    throw new Refusal({
      read: `--course ${typed}`,
      expected: `one of ${courseWords} with its speeds, such as 'run-up:100 r/min:highest'`,
    });
  }
  return { is: kind === 'ramp' ? 'ramp' : 'run-up', from: speed(from, writing), to: speed(to, writing) };
}

/** A speed where it begins with a digit, otherwise the name of a state. */
function speed(typed: string, writing: Writing | undefined): SpeedStatement {
  return /^\s*\d/.test(typed) ? parseQuantity(typed, 'shaft speed', writing) : typed;
}
