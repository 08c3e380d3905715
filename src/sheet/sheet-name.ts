/** Most characters a sheet's name may have. */
export const longestSheetName = 31;

/**
 * Tells what is wrong with a name for a sheet, as the end of a sentence, or null where nothing is.
 *
 * The rules are those of the spreadsheet host: 1 to 31 characters, none of `\ / ? * [ ] :`, no apostrophe at either end, not "History"; and those of
 * its file, which is XML: no control character and no half of a pair of surrogates, with which nothing could open it again.
 */
export function sheetNameFault(name: string): string | null {
  if (name.trim() === "") return "is blank";
  if (name.length > longestSheetName) return `has ${name.length} characters; ${longestSheetName} is the most`;
  const wrong = /[\\/?*[\]:]/.exec(name);
  if (wrong !== null) return `holds the character ${wrong[0]}`;
  if (/\p{Cc}|\p{Cs}/u.test(name)) return "holds a line break or another character that cannot be seen";
  if (name.startsWith("'") || name.endsWith("'")) return "begins or ends with an apostrophe";
  if (sameSheetName(name, "History")) return "is kept by the spreadsheet program for itself";
  return null;
}

/** Makes names of sheets and tables comparable, as the spreadsheet host compares them: case does not count, blanks do. */
export function foldSheetName(name: string): string {
  return name.toLowerCase();
}

/** Tells whether two names mean the same sheet, or the same table. */
export function sameSheetName(a: string, b: string): boolean {
  return foldSheetName(a) === foldSheetName(b);
}

/** Writes the name of a sheet as a formula takes it: in apostrophes, unless it is letters only. */
export function quoteSheetName(name: string): string {
  return /^[A-Za-z_]+$/.test(name) ? name : `'${name.replaceAll("'", "''")}'`;
}
