import { parseScheme } from "../../capacity";
import { describeRule, fits, parseShare, parseSize, parseSizeOrZero } from "../../quantity";
import { explainComma, foldName, invalid, isNumberText, quote } from "../../text";
import { isBeingComputed, isBlank, isError, isIsoDate, isoDateOf, showCell, type CellValue, type Scalar } from "../../../sheet";
import type { Column, ColumnKind } from "../schema";
import type { Readings } from "./row";

type Filled = Exclude<Scalar, null>;

/** What a blank cell of each kind is read as. */
const blanks: Readonly<Readings> = {
  text: "", choice: "", count: null, number: null, size: null, share: null, scheme: null, date: null, tick: false, formula: null,
};

const readers: { readonly [Kind in ColumnKind]: (cell: Filled, column: Column) => Readings[Kind] } = {
  text: (cell) => showCell(cell).trim(),
  choice: (cell, { header, choices = [] }) => {
    const text = showCell(cell).trim();
    const match = choices.find((one) => foldName(one) === foldName(text));
    if (match === undefined) throw invalid(header, cell, `${header} ${quote(text)} is not known. Write ${choices.join(" or ")}.`);
    return match;
  },
  number: (cell, column) => within(readNumber(cell, column.header), column),
  count: (cell, column) => {
    const { header } = column;
    const number = readNumber(cell, header);
    if (!Number.isInteger(number) || number < 0) throw invalid(header, cell, `${header} ${quote(cell)} is no count. Write a whole number.`);
    return within(number, column);
  },
  size: (cell, { header, zero }) => (zero === true ? parseSizeOrZero(cell, header) : parseSize(cell, header)),
  share: (cell, { header }) => parseShare(cell, header),
  scheme: (cell, { header }) => parseScheme(cell, header),
  date: (cell, { header }) => readDate(cell, header),
  tick: (cell) => cell === true || /^(yes|y|x|true|1|✓|✔)$/i.test(showCell(cell).trim()),
  formula: () => null,
};

/** Gives what a blank cell of a column is read as. */
export function blankOf(column: Column): Readings[ColumnKind] {
  return blanks[column.kind];
}

/** Reads a cell as its column asks; throws a problem that says what to write where it cannot. */
export function readCell(cell: CellValue, column: Column): Readings[ColumnKind] {
  if (column.kind === "formula" || cell === null || isBlank(cell)) return blankOf(column);
  if (isBeingComputed(cell)) throw invalid(column.header, cell.error, `${column.header} shows ${cell.error}: it is still being computed. Wait until it shows a result.`);
  if (isError(cell)) throw invalid(column.header, cell.error, `${column.header} shows ${cell.error}. Mend that cell first.`);
  return readers[column.kind](cell, column);
}

function readNumber(cell: Filled, header: string): number {
  const number = typeof cell === "number" ? cell : typeof cell === "string" && isNumberText(cell.trim()) ? Number(cell) : NaN;
  if (Number.isFinite(number)) return number;
  const comma = typeof cell === "string" ? explainComma(cell.trim(), header, (proposal) => readNumber(proposal, header)) : null;
  throw comma ?? invalid(header, cell, `${header} ${quote(cell)} is not a number. Write digits, such as 42 or 0.5.`);
}

/** Refuses a number that its column cannot mean. */
function within(number: number, { header, within: rule }: Column): number {
  if (rule !== undefined && !fits(number, rule)) throw invalid(header, number, `${header} is ${number}. Write ${describeRule(rule)}, such as ${rule.example}.`);
  return number;
}

function readDate(cell: Filled, header: string): string {
  const text = (typeof cell === "number" ? isoDateOf(cell) : null) ?? showCell(cell).trim();
  if (!isIsoDate(text)) throw invalid(header, cell, `${header} ${quote(text)} is no date. Write it as 2026-05-31.`);
  return text;
}
