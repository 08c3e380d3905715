import { formatAddress, readAddress, type Address } from "../../addressing";
import { Decimal, exactDecimal, parseSize } from "../../quantity";
import type { Bound, RecordKind } from "../../plan/schema";
import { sheetDayOf } from "../../../sheet";
import { cutSentence, explainComma, invalid, isPlainNumber, quote } from "../../text";
import { parseRecordKind, type NamedRecord } from "./record-kind";

/** What a record is compared with. */
export type Wanted =
  /** Smallest and largest number: bytes of a size, day numbers of a date. */
  | { readonly by: "range"; readonly least: number; readonly most: number }
  /** The two spellings in which an address is recognised: canonical (RFC 5952) and with every digit. */
  | { readonly by: "address"; readonly canonical: string; readonly full: string }
  /** One text, as `comparable` writes it. */
  | { readonly by: "text"; readonly text: string };

/** How a record is typed and compared. */
export interface Expectation extends NamedRecord {
  /** What the row shows; blank where anything will do. */
  readonly shown: string;
  /** Null where anything of the kind will do. */
  readonly wanted: Wanted | null;
}

/** What the step says about its record. */
export interface RecordRule {
  readonly record: string;
  readonly tolerancePercent: number | null;
  readonly tolerance: number | null;
  /** Blank or "=" where it may lie on either side. */
  readonly bound: Bound | "";
}

/** Units in which a size may be seen, with their bytes. */
export const seenUnits = { TB: 1e12, TiB: 2 ** 40, bytes: 1 } as const;

/** A filled Expect that is not blank, and what it is read with. */
interface Asked {
  readonly expect: string;
  readonly rule: RecordRule;
  readonly choices: readonly string[];
  /** Names the step in a sentence. */
  readonly argument: string;
}

/** How the expectation of each kind of record is read. */
const readers: Readonly<Record<RecordKind, (asked: Asked) => Pick<Expectation, "shown" | "wanted">>> = {
  // What a tick expects says in words what is ticked.
  tick: ({ expect }) => ({ shown: expect, wanted: null }),
  text: readText,
  serial: readText,
  number: (asked) => readRange(asked, parseDecimal(asked), 1),
  // The tolerance of a size is in TB.
  size: (asked) => readRange(asked, exactDecimal(1).mul(String(parseSize(asked.expect, asked.argument))), seenUnits.TB),
  address: readAddressText,
  date: readDay,
  choice: readChoice,
};

/**
 * Reads what a step expects, from its filled Expect.
 *
 * A blank expectation lets anything of the kind pass, but nothing where there is to be a limit: one that nobody planned is agreed first.
 * A number, size, address, date or choice that cannot be compared is refused; `argument` names the step in the sentence.
 */
export function parseExpectation(rule: RecordRule, expect: string, argument: string): Expectation {
  const { kind, choices } = parseRecordKind(rule.record, argument);
  if (isOneSided(rule) && !bounded.has(kind)) {
    throw invalid(argument, rule.bound, `${argument} asks for ${rule.bound} of a ${kind}. Write = or nothing under Bound, or record a number, size or date.`);
  }
  const read = expect === "" ? unplanned(rule) : readers[kind]({ expect, rule, choices, argument });
  return { kind, choices, ...read };
}

function unplanned(rule: RecordRule): Pick<Expectation, "shown" | "wanted"> {
  return isOneSided(rule) ? { shown: `${rule.bound} (not planned): agree it first`, wanted: { by: "range", least: noLimit, most: -noLimit } } : { shown: "", wanted: null };
}

/** Tells whether a step is to keep a limit that the plan does not give. */
export function lacksLimit({ wanted }: Pick<Expectation, "wanted">): boolean {
  return wanted?.by === "range" && wanted.least > wanted.most;
}

/** Kinds of records that can lie on one side of what is expected. */
const bounded: ReadonlySet<RecordKind> = new Set<RecordKind>(["number", "size", "date"]);

function isOneSided({ bound }: RecordRule): boolean {
  return bound === "at least" || bound === "at most";
}

/** Stands for no limit in a cell: beyond any figure that is ever typed, and a number for every spreadsheet program. */
const noLimit = 1e300;

/** Takes the limit away from the side on which a record may lie as far as it will, and says so in words. */
function onItsSide(rule: RecordRule, shown: string, least: number, most: number): Pick<Expectation, "shown" | "wanted"> {
  const range = { least: rule.bound === "at most" ? -noLimit : least, most: rule.bound === "at least" ? noLimit : most };
  return { shown: isOneSided(rule) ? `${rule.bound} ${shown}` : shown, wanted: { by: "range", ...range } };
}

function readText({ expect }: Asked): Pick<Expectation, "shown" | "wanted"> {
  return { shown: expect, wanted: { by: "text", text: comparable(expect) } };
}

function readChoice(asked: Asked): Pick<Expectation, "shown" | "wanted"> {
  const { expect, choices, argument } = asked;
  if (!choices.some((choice) => comparable(choice) === comparable(expect))) {
    const sentence = `${argument} expects ${quote(expect)}, which is none of its choices. Write ${choices.join(" or ")}.`;
    throw invalid(argument, expect, cutSentence(sentence));
  }
  return readText(asked);
}

function readAddressText({ expect, argument }: Asked): Pick<Expectation, "shown" | "wanted"> {
  const address = readAddress(expect);
  if (address === null) throw invalid(argument, expect, `${argument} expects ${quote(expect)}, which is no address. Mend it in the plan.`);
  const canonical = formatAddress(address);
  return { shown: canonical, wanted: { by: "address", canonical, full: fullText(address) } };
}

function readDay({ expect, rule, argument }: Asked): Pick<Expectation, "shown" | "wanted"> {
  const day = sheetDayOf(expect);
  if (day === null) throw invalid(argument, expect, `${argument} expects ${quote(expect)}, which is no date. Write it as 2026-05-31.`);
  return onItsSide(rule, expect, day, day);
}

function parseDecimal(asked: Asked): Decimal {
  const { expect, argument } = asked;
  if (isPlainNumber(expect)) return new Decimal(expect);
  const comma = explainComma(expect, argument, (proposal) => parseDecimal({ ...asked, expect: String(proposal) }));
  throw comma ?? invalid(argument, expect, `${argument} expects ${quote(expect)}, which is not a number. Write digits, such as 42 or 0.5.`);
}

/** Widens a value by the larger of its two tolerances; `unit` is what one of the plain tolerance counts. */
function readRange({ expect, rule }: Asked, value: Decimal, unit: number): Pick<Expectation, "shown" | "wanted"> {
  const [plain, percent] = [Math.abs(rule.tolerance ?? 0), Math.abs(rule.tolerancePercent ?? 0)];
  const slack = Decimal.max(value.abs().mul(exactDecimal(percent)).div(100), exactDecimal(plain * unit));
  const tolerances = [...(plain === 0 ? [] : [`±${plain}`]), ...(percent === 0 ? [] : [`±${percent}%`])];
  const shown = [expect, ...(tolerances.length === 0 ? [] : [tolerances.join(" or ")])].join(" ");
  return onItsSide(rule, shown, value.minus(slack).toNumber(), value.plus(slack).toNumber());
}

/** Writes a text as the sheet compares it: capitals, no spaces at the ends, one between words. */
function comparable(text: string): string {
  return text.trim().replace(/ +/g, " ").toUpperCase();
}

/** Writes an IPv6 address in full: eight groups of four digits. An IPv4 address has one spelling. */
function fullText(address: Address): string {
  if (address.family === 4) return formatAddress(address);
  const [front = "", back] = formatAddress(address).split("::");
  const groupsOf = (text = ""): string[] => (text === "" ? [] : text.split(":"));
  const [head, tail] = [groupsOf(front), groupsOf(back)];
  const zeros = new Array<string>(8 - head.length - tail.length).fill("0");
  return [...head, ...zeros, ...tail].map((group) => group.padStart(4, "0")).join(":");
}
