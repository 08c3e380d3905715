import { invalid } from "../../planning/text";

/** What may be opened. Above it a browser runs out of memory, or somebody means harm. */
export const limits = {
  fileBytes: 50_000_000, unpackedBytes: 300_000_000, textBytes: 160_000_000, tags: 12_000_000, betweenTags: 2_000_000,
  entries: 4_000, sheets: 250, cells: 1_500_000, elements: 12_000_000, treeElements: 500_000, depth: 200, merges: 100_000, rules: 20_000,
} as const;

/** Makes the problem of a file that is no whole workbook. */
export function damaged(): Error {
  return invalid("file", "", "This file is no .xlsx workbook, or it is damaged. Open it in a spreadsheet program, save it as .xlsx and open that.");
}

export function locked(): Error {
  return invalid("file", "", "This file is locked with a password or in the old .xls format. Save it as .xlsx without a password, then open that.");
}

/** Makes the problem of a whole file that holds something else than a workbook of ours: a document, a binary workbook. */
export function noWorkbook(): Error {
  return invalid("file", "", "This file is no .xlsx workbook. Save the workbook as .xlsx in a spreadsheet program and open that.");
}

export function tooLarge(what: string): Error {
  return invalid("file", what, `This file ${what}. Take out sheets or pictures that the plan does not need, or split it.`);
}

export function holdsMacros(): Error {
  return invalid("file", "", "This workbook holds macros, which are not run or kept here. Save it as .xlsx without them, then open that.");
}
