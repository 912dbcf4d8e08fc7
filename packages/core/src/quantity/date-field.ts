import { describe, type Field } from './field.ts';
import { Refusal } from './refusal.ts';

/** A day as ISO 8601 writes it, which no reader takes for another day: 11/12/2026 is two. */
export function dateField(meaning: string, options: { readonly example?: string } = {}): Field<string> {
  const expected = "a date as year-month-day, such as '2026-11-25'";
  const example = options.example ?? '2026-11-25';
  return {
    type: 'text',
    meaning,
    expected,
    example,
    schema: { type: 'string', description: meaning, pattern: '^\\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])$' },
    read: (raw) => {
      const text = describe(raw).trim();
      const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? [];
      if (year !== undefined && isDay(Number(year), Number(month), Number(day))) return text;
      const dayFirst = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(text);
      const suggestion =
        dayFirst === null || !isDay(Number(dayFirst[3]), Number(dayFirst[2]), Number(dayFirst[1]))
          ? "Day and month are exchanged from country to country: write '2026-11-25'."
          : `Did you mean '${dayFirst[3]}-${dayFirst[2]!.padStart(2, '0')}-${dayFirst[1]!.padStart(2, '0')}'?`;
      throw new Refusal({ read: text, expected, suggestion });
    },
    show: (value) => value,
    json: (value) => value,
  };
}

/** Whether the day exists; every fourth year is a leap year, every hundredth is none, every four hundredth is one. */
function isDay(year: number, month: number, day: number): boolean {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return days !== undefined && day >= 1 && day <= days;
}
