import { isBlank } from "../../sheet";
import { mostDrives, type PoolMember, type Scheme } from "../../planning/capacity";
import { invalid, quote } from "../../planning/text";
import type { Bytes } from "../../planning/quantity";
import type { Shown } from "./answers";
import { atMost } from "./at-most";
import { HeaderNames } from "./header";
import { name } from "./names";
import { number } from "./numbers";
import { driveSize } from "./plausible-sizes";
import { scheme, size, sizeOrZero } from "./quantities";
import { mapped, type Reader } from "./reader";
import { eachRow, isRange, rowPlace, rowsOf } from "./rows";
import { readScalar } from "./scalar";
import { cells, column, table } from "./table";

/** Reads a range of schemes, in its own order; null where it is blank throughout. */
const schemeHeadings = { headings: ["Scheme", "Schemes"], passes: ["Usable TB", "Usable TiB", "Efficiency", "Always survives", "At best survives", "Write cost"] };

export const schemeCells: Reader<readonly Scheme[] | null> = mapped(cells(scheme, schemeHeadings), (found) =>
  found.length === 0 ? null : found.map(({ value }) => value),
);

/** Reads the size of every drive from a range, row by row; empty rows are skipped, a blank within a row is refused. */
export const driveSizeCells: Reader<readonly Bytes[]> = mapped(
  cells(driveSize, {
    headings: ["Drive size", "Drive sizes", "Size", "Sizes", "Capacity", "TB", "Size TB", "Size (TB)", "Drive size TB"],
    otherwise: ["Drive", "Drives"],
    passes: ["Array", "Shelf", "Bay", "Serial", "Part", "Firmware"],
    give: 'Give a range with the size of every drive, such as 4 or "960 GB".',
    blanks: true,
  }),
  (sizes, argument) => {
    if (sizes.length > mostDrives) throw invalid(argument, sizes.length, `${argument} holds ${sizes.length} drives. Give at most ${mostDrives}.`);
    return sizes.map(({ value }) => value);
  },
);

/** Reads the arrays of a pool: name, usable and used, a row each. Used may be 0; it is never more than usable. */
export const poolMembers: Reader<readonly PoolMember[]> = mapped(
  table(
    {
      name: column("name", ["Name", "Array", "Arrays", "Member", "Members"], name),
      usable: column("usable", ["Usable", "Usable TB", "Capacity", "Capacity TB"], sized(size)),
      used: column("used", ["Used", "Used TB"], sized(sizeOrZero)),
    },
    { give: "Give a range of array name, usable and used." },
  ),
  (members, argument) =>
    members.map(({ name: called, usable, used, at }) => {
      if (used.bytes <= usable.bytes) return { name: called, usable: usable.bytes, used: used.bytes };
      throw invalid(argument, used.shown, `${at} used ${used.shown} is more than its usable ${usable.shown}. Write what is used of it.`);
    }),
);

/** Reads a size, and keeps how it was written for a sentence that compares two. */
function sized({ read }: Reader<Bytes>): Reader<{ readonly bytes: Bytes; readonly shown: string }> {
  return { read: (received, place) => ({ bytes: read(received, place), shown: quote(readScalar(received, place)) }) };
}

/** Rows of years: each is worked out to forty digits. */
const mostYears = 100_000;

const yearsFromNow = number({ min: 0, max: 100, example: 3 });

/** A number of years, or a range of them, to be answered one by one. */
export interface AskedYears {
  /** Answers each of them by `at`, in the shape of the range; a header row is answered by `header`. */
  readonly answer: (header: string, at: (years: number) => number) => number | Shown[][];
}

/**
 * Reads a number of years, or a range of them.
 *
 * A range is answered cell by cell in its own shape, so that every answer stands beside its year: empty rows stay empty, a header row
 * is answered by a header, and a blank within a row is refused. Of a table with a header only the column of years is.
 */
export const years: Reader<AskedYears> = atMost(mostYears, {
  range: true,
  example: "3",
  read: (received, argument) => {
    if (!isRange(received)) {
      const asked = yearsFromNow.read(received, argument);
      return { answer: (_, at) => at(asked) };
    }
    const asked = new Map<number, number[]>();
    let width = 1;
    eachRow(received, argument, yearHeader, (line, row, places) => {
      const years = (places?.[0] ?? line.map((_, place) => place)).map((place) => yearsFromNow.read(line[place], rowPlace(argument, row)));
      asked.set(row, years);
      width = years.length;
    });
    if (asked.size === 0) throw invalid(argument, null, `${argument} is blank. Write a number of years, such as 3, or a range of them.`);
    return {
      answer: (header, at) => rowsOf(received).map((line, index) => asked.get(index + 1)?.map(at) ?? new Array<string>(width).fill(line.every(isBlank) ? "" : header)),
    };
  },
});

const yearHeader = new HeaderNames(
  [{ title: "years", headings: ["Year", "Years"], optional: false, many: true, anyText: false }],
  ["Demand TB", "Capacity TB", "Steps bought", "Fill"],
);
