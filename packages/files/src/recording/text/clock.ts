const time = /(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?\s*([ap]m)?/i;
const yearFirst = /(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})/;
const yearLast = /(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})/;
const day = 86_400;

/**
 * Seconds of a date and time of day, for the distance of two of them: `2026-11-20T14:05:07.125Z`, `20.11.2026 14:05:07,125`,
 * `2:05:07 PM`; undefined where no time of day stands there. A date is read as day and month unless that is none; of a
 * record that is all one needs.
 */
export function clockSeconds(text: string): number | undefined {
  const clock = time.exec(text);
  if (clock === null) return undefined;
  const [, hours, minutes, seconds = '0', fraction = '', half] = clock;
  if (Number(hours) > 23 || Number(minutes) > 59 || Number(seconds) > 60) return undefined;
  const hour = half === undefined ? Number(hours) : (Number(hours) % 12) + (half.toLowerCase() === 'pm' ? 12 : 0);
  const whole = 3600 * hour + 60 * Number(minutes) + Number(seconds);
  return day * days(text) + whole + (fraction === '' ? 0 : Number(fraction) / 10 ** fraction.length);
}

/** Days since 1970; 0 where no date stands there. */
function days(text: string): number {
  const first = yearFirst.exec(text);
  if (first !== null) return dayNumber(Number(first[1]), Number(first[2]), Number(first[3]));
  const last = yearLast.exec(text);
  if (last === null) return 0;
  const [a, b, year] = [Number(last[1]), Number(last[2]), Number(last[3])];
  return b > 12 ? dayNumber(year, a, b) : dayNumber(year, b, a);
}

function dayNumber(year: number, month: number, date: number): number {
  return Math.floor(Date.UTC(year, month - 1, date) / 1000 / day);
}

/** The times of day of a record one after another: where one without its date falls by half a day, midnight has passed. */
export class ClockColumn {
  #passed = 0;
  #last = Number.NEGATIVE_INFINITY;
  #origin: number | undefined;

  /** From the beginning of the first day: near to zero, a number tells finer steps. */
  seconds(text: string): number {
    const found = clockSeconds(text);
    if (found === undefined) return Number.NaN;
    this.#origin ??= day * Math.floor(found / day);
    const read = found - this.#origin;
    if (read + this.#passed < this.#last - day / 2) this.#passed += day;
    this.#last = read + this.#passed;
    return this.#last;
  }
}
