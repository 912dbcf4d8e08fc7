/** Days from 1 March of the year 0 to the first day of a year counted from March, Gregorian. */
function daysToYear(year: number): number {
  return 365 * year + Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);
}

/** Days from 1 March to the first of a month counted from March as 0: (153·m + 2)/5, whole part. */
function daysToMonth(month: number): number {
  return Math.floor((153 * month + 2) / 5);
}

/** Running number of a day written as year-month-day, counted from 1 March of the year 0, Gregorian calendar. */
export function dayNumber(written: string): number {
  const [year = 0, month = 1, day = 1] = written.split('-').map(Number);
  const before = month < 3 ? 1 : 0;
  return daysToYear(year - before) + daysToMonth(month - 3 + 12 * before) + day - 1;
}

/** The day with that running number, as year-month-day. */
export function dayCalled(number: number): string {
  let year = Math.floor(number / 365.2425);
  while (daysToYear(year) > number) year--;
  while (daysToYear(year + 1) <= number) year++;
  const inYear = number - daysToYear(year);
  const month = Math.floor((5 * inYear + 2) / 153);
  const day = inYear - daysToMonth(month) + 1;
  const calendarMonth = month < 10 ? month + 3 : month - 9;
  const calendarYear = month < 10 ? year : year + 1;
  const two = (n: number) => String(n).padStart(2, '0');
  return `${String(calendarYear).padStart(4, '0')}-${two(calendarMonth)}-${two(day)}`;
}
