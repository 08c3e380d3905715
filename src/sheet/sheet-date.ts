/** Number of 1970-01-01 in the calendar of a sheet, the 1900 date base of ECMA-376 first edition, part 4, section 3.17.4.1. */
const dayOf1970 = 25_569;
const millisecondsADay = 86_400_000;

/** 1900-03-01: before it, sheets count a 29 February 1900 that never was, and not all of them in the same way. */
const firstDay = 61;
/** 9999-12-31, the last day that a sheet shows. */
const lastDay = 2_958_465;

/**
 * Writes the day number of a sheet as an ISO date, such as 2026-05-31; a time of day is left out.
 *
 * Null before 1900-03-01 and after 9999-12-31, where a number is no date that all spreadsheet programs agree on.
 */
export function isoDateOf(day: number): string | null {
  if (!(day >= firstDay && day < lastDay + 1)) return null;
  return instantOfDay(Math.floor(day)).toISOString().slice(0, 10);
}

/** Finds the day number of an ISO date in the calendar of a sheet; null where the text is no date from 1900-03-01 to 9999-12-31. */
export function sheetDayOf(iso: string): number | null {
  if (!isIsoDate(iso)) return null;
  const day = dayOfInstant(new Date(`${iso}T00:00:00Z`));
  return day >= firstDay && day <= lastDay ? day : null;
}

/** Tells whether a text is a day of the calendar, written as 2026-05-31; of any year, also where a sheet has no number for it. */
export function isIsoDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const instant = new Date(`${text}T00:00:00Z`);
  // A date such as 2026-02-30 is read as a day of the next month: it does not come out as it went in.
  return !Number.isNaN(instant.getTime()) && instant.toISOString().startsWith(text);
}

/** Turns a day number, with the time of day behind the point, into the instant that it is in UTC; for any number, also where it is no date. */
export function instantOfDay(day: number): Date {
  return new Date(Math.round((day - dayOf1970) * millisecondsADay));
}

/** Turns an instant into its day number in UTC, with the time of day behind the point. */
export function dayOfInstant(instant: Date): number {
  return instant.getTime() / millisecondsADay + dayOf1970;
}
