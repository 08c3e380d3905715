// A sheet counts days from the end of 1899 on (ECMA-376 first edition, part 4, section 3.17.4.1, the 1900 date base). Its 60 is 29 February
// 1900, a day that never was: only from 61 on are its days those of the calendar, so a smaller number is not read as a date.

/** Day number of 1900-03-01. */
export const firstDay = 61;
/** Day number of 9999-12-31. */
export const lastDay = 2_958_465;

/** Day number of 1970-01-01, from which a `Date` counts. */
const dayOf1970 = 25_569;
const dayMilliseconds = 86_400_000;

/** Writes a day number as an ISO date, such as 2026-05-31; the time of the day is left out. Null where it is no day from `firstDay` to `lastDay`. */
export function isoOfDay(day: number): string | null {
  const whole = Math.floor(day);
  return whole >= firstDay && whole <= lastDay ? instantOfDay(whole).toISOString().slice(0, 10) : null;
}

/** Reads an ISO date as a day number: 2026-05-31 is 46173. Null where the text is none, names no day of the calendar or is out of range. */
export function dayOfIso(text: string): number | null {
  const day = /^\d{4}-\d{2}-\d{2}$/.test(text) ? dayOfInstant(new Date(`${text}T00:00:00Z`)) : NaN;
  // A date such as 2026-02-30 is read as a day of the next month: it does not come out as it went in.
  return isoOfDay(day) === text ? day : null;
}

/** Turns a day number, the time of the day behind the point, into the instant that it is in UTC. For days before `firstDay` too. */
export function instantOfDay(day: number): Date {
  return new Date(Math.round((day - dayOf1970) * dayMilliseconds));
}

/** Turns an instant into its day number in UTC, the time of the day behind the point. */
export function dayOfInstant(instant: Date): number {
  return instant.getTime() / dayMilliseconds + dayOf1970;
}
