import { nameParameters } from "./formula-parameters";

/**
 * Turns a formula as people type it into the one a file holds, without its equals sign.
 *
 * The spreadsheet host stores the functions of an add-in under the prefix `_xldudf_`, with the dots of their name as underscores, and
 * brings them to life again when the add-in is there (seen in files it wrote; no published source). Functions younger than the file
 * format carry `_xlfn.`, two of them `_xlws.` too; names that a formula gives carry `_xlpm.`.
 */
export function toFileFormula(formula: string): string {
  return outsideQuotes(nameParameters(formula.replace(/^=/, "")), (text) =>
    text
      .replace(/\bBAY\.([A-Z][A-Z0-9.]*)(?=\s*\()/gi, (_, id: string) => `_xldudf_BAY_${id.toUpperCase().replaceAll(".", "_")}`)
      .replace(/(?<![\w.])([A-Z][A-Z0-9.]*)(?=\()/gi, (whole, name: string) => {
        const known = name.toUpperCase();
        if (sheetFunctions.has(known)) return `_xlfn._xlws.${known}`;
        return youngFunctions.has(known) ? `_xlfn.${known}` : whole;
      }),
  );
}

/** Turns a formula of a file into the one people type, with its equals sign. Both forms of our functions are understood. */
export function fromFileFormula(formula: string): string {
  return `=${outsideQuotes(formula.replace(/^=/, ""), (text) =>
    text
      // A workbook that was opened beside another add-in may name that one's file before the prefix: "[2]!_xldudf_…".
      .replace(/(?:\[\d+\]!)?_xldudf_BAY_([A-Z][A-Z0-9_]*)(?=\s*\()/gi, (_, id: string) => `BAY.${id.toUpperCase()}`)
      .replace(/(?:\[\d+\]!)?\bBAY\.([A-Z][A-Z0-9]*)(?=\s*\()/gi, (_, id: string) => `BAY.${id.toUpperCase()}`)
      .replace(/_xlfn\.(?:_xlws\.)?|_xlws\.|_xlpm\./gi, ""),
  )}`;
}

/**
 * Tells of a stored formula whether the program that saved it did not know a function younger than the file format: it spells such a name in
 * small letters, as LibreOffice does, and what it shows is no result.
 */
export function hasUnknownFunction(stored: string): boolean {
  return /_xlfn\.(?:_xlws\.)?[a-z]/.test(stored);
}

/** Changes a formula outside its texts and quoted sheet names. */
function outsideQuotes(formula: string, change: (text: string) => string): string {
  return formula
    .split(/("(?:[^"]|"")*"|'(?:[^']|'')*')/)
    .map((part, index) => (index % 2 === 0 ? change(part) : part))
    .join("");
}

const sheetFunctions = new Set(["FILTER", "SORT"]);

const youngFunctions = new Set(
  `ACOT ACOTH AGGREGATE ARABIC ARRAYTOTEXT BASE BETA.DIST BETA.INV BINOM.DIST BINOM.DIST.RANGE BINOM.INV BITAND BITLSHIFT BITOR BITRSHIFT BITXOR BYCOL BYROW CEILING.MATH
  CHISQ.DIST CHISQ.DIST.RT CHISQ.INV CHISQ.INV.RT CHISQ.TEST CHOOSECOLS CHOOSEROWS COMBINA CONCAT CONFIDENCE.NORM CONFIDENCE.T COT COTH COVARIANCE.P COVARIANCE.S CSC CSCH
  DAYS DECIMAL DROP ERF.PRECISE ERFC.PRECISE EXPAND EXPON.DIST F.DIST F.DIST.RT F.INV F.INV.RT F.TEST FLOOR.MATH FORECAST.LINEAR FORMULATEXT GAMMA GAMMA.DIST GAMMA.INV
  GAMMALN.PRECISE GAUSS HSTACK HYPGEOM.DIST IFNA IFS ISFORMULA ISOMITTED ISOWEEKNUM LAMBDA LET LOGNORM.DIST LOGNORM.INV MAKEARRAY MAP MAXIFS MINIFS MODE.MULT MODE.SNGL
  MUNIT NEGBINOM.DIST NORM.DIST NORM.INV NORM.S.DIST NORM.S.INV NUMBERVALUE PDURATION PERCENTILE.EXC PERCENTILE.INC PERCENTRANK.EXC PERCENTRANK.INC PERMUTATIONA PHI
  POISSON.DIST QUARTILE.EXC QUARTILE.INC RANDARRAY RANK.AVG RANK.EQ REDUCE RRI SCAN SEC SECH SEQUENCE SHEET SHEETS SKEW.P SORTBY STDEV.P STDEV.S SWITCH T.DIST T.DIST.2T
  T.DIST.RT T.INV T.INV.2T T.TEST TAKE TEXTAFTER TEXTBEFORE TEXTJOIN TEXTSPLIT TOCOL TOROW UNICHAR UNICODE UNIQUE VALUETOTEXT VAR.P VAR.S VSTACK WEIBULL.DIST WRAPCOLS WRAPROWS
  XLOOKUP XMATCH XOR Z.TEST`.split(/\s+/),
);
