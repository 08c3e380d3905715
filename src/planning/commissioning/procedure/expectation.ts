import { formatAddress, readAddress, type Address } from "../../addressing";
import { invalid, quote } from "../../text";
import { Decimal, exactDecimal, parseSize } from "../../quantity";
import type { Scalar } from "../../../sheet";

/** What a record of a step is. */
export type RecordKind = "tick" | "text" | "number" | "size" | "address" | "serial" | "date" | "choice";

/** How a record is typed and compared. */
export interface Expectation {
  readonly kind: RecordKind;
  /** What may be chosen, of a choice. */
  readonly choices: readonly string[];
  /** What the row shows; blank where anything will do. */
  readonly shown: string;
  /**
   * What the sheet compares with: smallest and largest number (bytes of a size, day of a date), canonical and full text of an address,
   * or one text. Null where anything of the kind will do.
   */
  readonly low: Scalar;
  readonly high: Scalar;
}

/** What the step says about its record. */
export interface RecordRule {
  readonly record: string;
  readonly tolerancePercent: number | null;
  readonly tolerance: number | null;
}

const kinds: readonly RecordKind[] = ["tick", "text", "number", "size", "address", "serial", "date", "choice"];

/** Units in which a size may be seen, with their bytes. */
export const seenUnits = { TB: 1e12, TiB: 2 ** 40, bytes: 1 } as const;

/**
 * Reads what a step expects, from its filled Expect.
 *
 * A blank expectation lets anything of the kind pass. A number, size, address, date or choice that cannot be compared is refused;
 * `argument` names the step in the sentence.
 */
export function parseExpectation(rule: RecordRule, expect: string, argument: string): Expectation {
  const { kind, choices } = parseRecord(rule.record, argument);
  const base = { kind, choices, shown: expect, low: null, high: null };
  if (expect === "" || kind === "tick") return base;
  switch (kind) {
    case "number":
      return { ...base, ...bounds(parseDecimal(expect, argument), rule, expect) };
    case "size": {
      const size = exactDecimal(1).mul(String(parseSize(expect, argument)));
      return { ...base, ...bounds(size, { ...rule, tolerance: rule.tolerance === null ? null : rule.tolerance * seenUnits.TB }, expect, rule) };
    }
    case "address": {
      const address = readAddress(expect);
      if (address === null) throw invalid(argument, expect, `${argument} expects ${quote(expect)}, which is no address. Mend it in the plan.`);
      return { ...base, shown: formatAddress(address), low: formatAddress(address), high: fullText(address) };
    }
    case "date": {
      const time = Date.parse(`${expect}T00:00:00Z`);
      if (!/^\d{4}-\d{2}-\d{2}$/.test(expect) || Number.isNaN(time)) throw invalid(argument, expect, `${argument} expects ${quote(expect)}, which is no date. Write it as 2026-05-31.`);
      return { ...base, low: time / 86_400_000 + 25_569, high: time / 86_400_000 + 25_569 };
    }
    case "choice":
      if (!choices.some((choice) => comparable(choice) === comparable(expect))) {
        throw invalid(argument, expect, `${argument} expects ${quote(expect)}, which is none of its choices. Write ${choices.join(" or ")}.`.slice(0, 160));
      }
      return { ...base, low: comparable(expect) };
    default:
      return { ...base, low: comparable(expect) };
  }
}

function parseRecord(record: string, argument: string): { readonly kind: RecordKind; readonly choices: readonly string[] } {
  const [name, list = ""] = record.split(/:(.*)/s) as [string, string?];
  const kind = kinds.find((one) => one === name.trim().toLowerCase()) ?? (record.trim() === "" ? "tick" : undefined);
  const choices = list.split("|").map((choice) => choice.trim()).filter((choice) => choice !== "");
  if (kind === undefined) throw invalid(argument, record, `${argument} records ${quote(record)}. Write tick, text, number, size, address, serial, date or choice:a|b.`);
  if (kind === "choice" && choices.length < 2) throw invalid(argument, record, `${argument} offers ${quote(record)}. Write at least two choices, such as choice:Complete|Incomplete.`);
  const comma = choices.find((choice) => choice.includes(","));
  if (comma !== undefined) throw invalid(argument, comma, `${argument} offers ${quote(comma)}, which holds a comma. Write it without one.`);
  return { kind, choices };
}

function parseDecimal(text: string, argument: string): Decimal {
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(text)) throw invalid(argument, text, `${argument} expects ${quote(text)}, which is not a number. Write digits, such as 42 or 0.5.`);
  return new Decimal(text);
}

function bounds(value: Decimal, { tolerance, tolerancePercent }: RecordRule, expect: string, shown: RecordRule = { record: "", tolerance, tolerancePercent }): Pick<Expectation, "low" | "high" | "shown"> {
  const slack = Decimal.max(value.abs().mul(exactDecimal(Math.abs(tolerancePercent ?? 0))).div(100), exactDecimal(Math.abs(tolerance ?? 0)));
  const parts = [
    ...(shown.tolerance === null || shown.tolerance === 0 ? [] : [`±${Math.abs(shown.tolerance)}`]),
    ...(tolerancePercent === null || tolerancePercent === 0 ? [] : [`±${Math.abs(tolerancePercent)}%`]),
  ];
  return { low: value.minus(slack).toNumber(), high: value.plus(slack).toNumber(), shown: [expect, parts.join(" or ")].filter((part) => part !== "").join(" ") };
}

/** Writes a text as the sheet compares it: capitals, no spaces at the ends, one between words. */
export function comparable(text: string): string {
  return text.trim().replace(/ +/g, " ").toUpperCase();
}

/** Writes an IPv6 address in full: eight groups of four digits. An IPv4 address has one spelling. */
function fullText(address: Address): string {
  if (address.family === 4) return formatAddress(address);
  const [front = "", back] = formatAddress(address).split("::");
  const head = front === "" ? [] : front.split(":");
  const tail = back === undefined || back === "" ? [] : back.split(":");
  const zeros = new Array<string>(8 - head.length - tail.length).fill("0");
  return [...head, ...(back === undefined ? [] : zeros), ...tail].map((group) => group.padStart(4, "0")).join(":");
}
