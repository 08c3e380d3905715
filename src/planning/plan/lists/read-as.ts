import { invalid, isNumberText, isPlainNumber, quote } from "../../text";
import { isBlank, isError, isIsoDate, sheetDayOf, showCell, type CellValue, type Scalar } from "../../../sheet";
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

const slashDate = /^(\d{1,2})[./-](\d{1,2})[./-](\d{4})$/;
/** One mark with three digits behind it: thousands to some, thousandths to others. */
const eitherMark = /^[+-]?\d{1,3}[.,]\d{3}(?!\d)/;

/** Finds what has to be asked about a column before its cells can be read; null where each can be read in one way. */
export function questionOf(column: Column, cells: readonly CellValue[]): Question | null {
  const texts = cells.flatMap((cell) => (typeof cell === "string" && !isBlank(cell) ? [cell.trim()] : []));
  if (column.kind === "date") {
    const dates = texts.flatMap((text) => slashDate.exec(text) ?? []).length === 0 ? [] : texts.map((text) => slashDate.exec(text)).filter((found) => found !== null);
    const decides = dates.some(([, one, other]) => Number(one) > 12 || Number(other) > 12);
    return dates.length === 0 || decides ? null : { asks: "Which comes first in a date such as 03/04/2026?", choices: dateOrders };
  }
  if (column.kind === "size" && cells.some((cell) => typeof cell === "number" || (typeof cell === "string" && /^[\d.,\s]+$/.test(cell.trim()) && !isBlank(cell)))) {
    return { asks: "In which unit is a size without one?", choices: sizeUnits };
  }
  if (column.kind !== "number" && column.kind !== "count" && column.kind !== "share") return null;
  const decides = texts.some((text) => /[.,]\d{1,2}(?!\d)/.test(text) || /[.,]\d{4,}/.test(text) || /\d[.,]\d{3}[.,]/.test(text));
  return texts.some((text) => eitherMark.test(text)) && !decides ? { asks: "What is the mark in a number such as 1.234?", choices: decimalMarks } : null;
}

/** Columns of text whose digits mean something each: a number has lost zeros in front, digits behind, or was rounded. */
const written: ReadonlySet<string> = new Set(["serial", "firmware", "part", "initiatorName", "address", "prefix", "gateway", "id"]);

/**
 * Reads a cell of a list for a column of ours: what is to be written there. `readAs` is what was answered to the column's question.
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
    if (written.has(name) && /^\d(?:[.,]\d+)?E[+-]?\d+$/i.test(text)) throw invalid(header, text, `${header} ${quote(text)} is a rounded number. Write the digits in the list, as text.`);
    readCell(text, column);
    return text;
  }
  if (kind === "choice") return readCell(showCell(cell).trim(), column) as string;
  if (kind === "date") return readDate(cell, column, readAs);
  const plain = typeof cell === "string" ? withPoint(cell.trim(), readAs) : cell;
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

function readDate(cell: Exclude<CellValue, null>, column: Column, readAs: string): Scalar {
  if (typeof cell === "number") return cell;
  const text = showCell(cell).trim();
  if (isIsoDate(text)) return sheetDayOf(text);
  const [, one = "", other = "", year = ""] = slashDate.exec(text) ?? [];
  if (year === "") throw invalid(column.header, text, `${column.header} ${quote(text)} is no date. Write it as 2026-05-31.`);
  const isMonthFirst = Number(other) > 12 || (Number(one) <= 12 && readAs === "month first");
  const [month, day] = isMonthFirst ? [one, other] : [other, one];
  const iso = `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
  if (!isIsoDate(iso)) throw invalid(column.header, text, `${column.header} ${quote(text)} is no day that there is. Write it as 2026-05-31.`);
  return sheetDayOf(iso);
}

/** Writes a number with a point and no marks between thousands: "1.234,5" is 1234.5, and so is "1,234.5". */
function withPoint(text: string, readAs: string): string {
  const [, number = "", rest = ""] = /^([+-]?\d[\d.,\u0020\u00a0']*)(.*)$/s.exec(text) ?? [];
  const packed = number.replace(/[\u0020\u00a0']/g, "");
  const last = /[.,](?=[^.,]*$)/.exec(packed)?.[0] ?? "";
  const marks = packed.replace(/[^.,]/g, "");
  const isThousands = marks.length > 1 ? [...marks].every((mark) => mark === last) : eitherMark.test(packed) && isOtherMark(last, readAs);
  if (number === "" || last === "") return text;
  const digits = isThousands ? packed.replace(/[.,]/g, "") : `${packed.slice(0, packed.lastIndexOf(last)).replace(/[.,]/g, "")}.${packed.slice(packed.lastIndexOf(last) + 1)}`;
  return isNumberText(digits) ? `${digits}${rest === "" ? "" : ` ${rest.trim()}`}`.trim() : text;
}

/** Tells whether a mark is the one that does not part decimals. */
function isOtherMark(mark: string, readAs: string): boolean {
  return readAs === "decimal comma" ? mark === "." : readAs === "decimal point" ? mark === "," : false;
}
