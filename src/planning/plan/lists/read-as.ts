import { invalid, isNumberText, isPlainNumber, quote } from "../../text";
import { isBlank, isError, isIsoDate, isoDateOf, longestText, sheetDayOf, showCell, type CellValue, type Scalar } from "../../../sheet";
import { readCell } from "../read";
import type { Column } from "../schema";

/** What has to be asked about the cells of a column, as they can be read in more than one way. */
export interface Question {
  readonly asks: string;
  readonly choices: readonly string[];
}

const dateOrders = ["day first", "month first"] as const;
const decimalMarks = ["decimal point", "decimal comma"] as const;
const sizeUnits = ["TB", "TiB", "GB", "GiB"] as const;

const writtenDate = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4})$/;
/** The number with which a text begins, and what stands behind it. */
const numberAhead = /^([+-]?\d[\d.,\u0020\u00a0\u2009\u202f'\u2019]*)(.*)$/s;
/** What stands between thousands beside a mark: a blank, a thin or an unbreakable one too (SI brochure, 9th edition, 5.4.4), or an apostrophe (common practice, no source). */
const parting = /[\u0020\u00a0\u2009\u202f'\u2019]/g;
/** A number that is parted so, in groups of three. */
const parted = /^[+-]?\d{1,3}(?:[\u0020\u00a0\u2009\u202f'\u2019]\d{3})+(?:[.,]\d*)?$/;
/** One mark with three digits behind it: thousands to some, thousandths to others. */
const eitherMark = /^[+-]?[1-9]\d{0,2}[.,]\d{3}(?![\d.,])/;

/** Finds what has to be asked about a column before its cells can be read; null where each can be read in one way, or none of them twice. */
export function questionOf(column: Column, cells: readonly CellValue[]): Question | null {
  const texts = textsOf(cells);
  switch (column.kind) {
    case "date":
      return texts.some(isEitherDate) && orderOf(texts) === "" ? { asks: "Which comes first in a date such as 03/04/2026?", choices: dateOrders } : null;
    case "size":
      if (cells.some((cell) => typeof cell === "number") || texts.some((text) => /^[\d.,\s]+$/.test(text))) return { asks: "In which unit is a size without one?", choices: sizeUnits };
      return askMark(texts);
    case "number":
    case "count":
    case "share":
      return askMark(texts);
    default:
      return null;
  }
}

function askMark(texts: readonly string[]): Question | null {
  return texts.some((text) => eitherMark.test(text)) && markOf(texts) === "" ? { asks: "What is the mark in a number such as 1.234?", choices: decimalMarks } : null;
}

/** Adds to what was answered what other cells of the column tell: the order of dates, the mark of decimals. */
export function readingOf(column: Column, cells: readonly CellValue[], answered: string): string {
  const texts = textsOf(cells);
  const told = column.kind === "date" ? orderOf(texts) : /^(?:number|count|share|size)$/.test(column.kind) ? markOf(texts) : "";
  return answered.includes("first") || answered.includes("decimal") ? answered : `${answered} ${told}`.trim();
}

function textsOf(cells: readonly CellValue[]): string[] {
  return cells.flatMap((cell) => (typeof cell === "string" && !isBlank(cell) ? [cell.trim()] : []));
}

/** A date with points begins with the day, as wherever points are written: common practice, no source. */
function isEitherDate(text: string): boolean {
  const [, one, mark, other] = writtenDate.exec(text) ?? [];
  return mark !== undefined && mark !== "." && Number(one) <= 12 && Number(other) <= 12 && one !== other;
}

/** Tells the order of dates by those that can be read in one way; "" where none tells, or they tell otherwise. */
function orderOf(texts: readonly string[]): (typeof dateOrders)[number] | "" {
  const found = texts.flatMap((text) => {
    const [, one, mark, other] = writtenDate.exec(text) ?? [];
    return mark === undefined || mark === "." ? [] : Number(one) > 12 ? [dateOrders[0]] : Number(other) > 12 ? [dateOrders[1]] : [];
  });
  return onlyOne(found);
}

/** Tells the mark of decimals by the numbers in which it can be one alone; "" where none tells, or they tell otherwise. */
function markOf(texts: readonly string[]): (typeof decimalMarks)[number] | "" {
  const found = texts.flatMap((text) => {
    const marks = [...(numberAhead.exec(text)?.[1] ?? "").replace(/[^.,]/g, "")];
    const last = marks.at(-1);
    if (last === undefined || eitherMark.test(text)) return [];
    // Several marks of one kind part thousands, and the other one decimals.
    const isThousands = marks.length > 1 && marks.every((mark) => mark === last);
    return [(last === ",") === isThousands ? decimalMarks[0] : decimalMarks[1]];
  });
  return onlyOne(found);
}

function onlyOne<Word extends string>(found: readonly Word[]): Word | "" {
  const [first] = found;
  return first !== undefined && found.every((one) => one === first) ? first : "";
}

/** Columns of text whose digits mean something each: a number has lost zeros in front, digits behind, or was rounded. */
const written: ReadonlySet<string> = new Set(["serial", "firmware", "part", "initiatorName", "address", "prefix", "gateway", "id"]);

/**
 * Reads a cell of a list for a column of ours: what is to be written there. `readAs` is what is known of the column, as `readingOf` has it.
 *
 * Refuses what the column cannot take, with a sentence that says what to write instead.
 */
export function readListCell(cell: CellValue, name: string, column: Column, readAs: string): Scalar {
  const { header, kind } = column;
  if (isBlank(cell) || cell === null) return null;
  if (isError(cell)) throw invalid(header, cell.error, `${header} shows ${cell.error}. Mend that cell of the list.`);
  if (typeof cell === "number" && written.has(name)) {
    throw invalid(header, cell, `${header} came as the number ${cell}, which loses zeros and digits. Make its column text in the list, and type it again.`);
  }
  if (kind === "text" || kind === "scheme" || kind === "tick") {
    const text = showCell(cell).trim();
    if (typeof cell === "number" && String(cell).includes("e")) throw invalid(header, cell, `${header} came as the rounded number ${cell}. Make its column text in the list.`);
    if (text.length > longestText) throw invalid(header, null, `${header} has ${text.length} characters; ${longestText} is the most that a cell holds. Shorten it.`);
    if (written.has(name) && /^\d(?:[.,]\d+E\+?|E\+)\d+$/i.test(text)) throw invalid(header, text, `${header} ${quote(text)} is a rounded number. Write the digits in the list, as text.`);
    readCell(text, column);
    return text;
  }
  if (kind === "choice") return readCell(showCell(cell).trim(), column) as string;
  if (kind === "date") return readDate(cell, column, readAs);
  const plain = typeof cell === "string" ? withPoint(cell.trim(), header, readAs) : cell;
  if (kind === "size") {
    const sized = typeof plain === "number" || isPlainNumber(String(plain)) ? `${String(plain)} ${unitOf(readAs)}` : plain;
    readCell(sized, column);
    return sized;
  }
  const read = readCell(plain, column);
  return typeof read === "number" ? read : plain;
}

function unitOf(readAs: string): string {
  return sizeUnits.find((unit) => readAs.includes(unit)) ?? "TB";
}

/** 1950-01-01 as sheets count days: an earlier one is a year or something else. */
const firstDay = 18_264;

function readDate(cell: Exclude<CellValue, null>, column: Column, readAs: string): Scalar {
  if (typeof cell === "number") {
    if (Number.isInteger(cell) && cell >= firstDay && isoDateOf(cell) !== null) return cell;
    throw invalid(column.header, cell, `${column.header} came as the number ${cell}, which is no day of our time. Write it as 2026-05-31.`);
  }
  const text = showCell(cell).trim();
  if (isIsoDate(text)) return sheetDayOf(text);
  const [, one = "", , other = "", year = ""] = writtenDate.exec(text) ?? [];
  if (year === "") throw invalid(column.header, text, `${column.header} ${quote(text)} is no date. Write it as 2026-05-31.`);
  if (isEitherDate(text) && readAs === "") throw invalid(column.header, text, `${column.header} ${quote(text)} can be read in two ways. Write it as 2026-05-31.`);
  const isMonthFirst = Number(other) > 12 || (isEitherDate(text) && readAs === "month first");
  const [month, day] = isMonthFirst ? [one, other] : [other, one];
  const iso = `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
  if (!isIsoDate(iso)) throw invalid(column.header, text, `${column.header} ${quote(text)} is no day that there is. Write it as 2026-05-31.`);
  return sheetDayOf(iso);
}

/**
 * Writes a number with a point and nothing between thousands: "1.234,5" is 1234.5, and so are "1,234.5" and "1 234,5". Refuses one that can be read in
 * two ways; what is parted otherwise than by thousands stays as it is.
 */
function withPoint(text: string, header: string, readAs: string): string {
  const [, ahead = "", rest = ""] = numberAhead.exec(text) ?? [];
  const number = ahead.trim();
  const packed = number.replace(parting, "");
  const isParted = packed !== number;
  const marks = [...packed.replace(/[^.,]/g, "")];
  const last = marks.at(-1);
  if (isParted ? !parted.test(number) : last === undefined) return text;
  const isOpen = eitherMark.test(packed);
  if (isOpen && !readAs.includes("decimal")) throw invalid(header, text, `${header} ${quote(text)} can be read in two ways. Write it without a mark, or with one or two decimals.`);
  const isThousands = isOpen ? readAs.includes("decimal comma") === (last === ".") : marks.length > 1 && marks.every((mark) => mark === last);
  const at = last === undefined || isThousands ? packed.length : packed.lastIndexOf(last);
  const decimals = packed.slice(at + 1);
  const digits = `${packed.slice(0, at).replace(/[.,]/g, "")}${decimals === "" ? "" : `.${decimals}`}`;
  const unit = rest.trim();
  return isNumberText(digits) ? `${digits}${unit === "" || unit === "%" ? unit : ` ${unit}`}` : text;
}
