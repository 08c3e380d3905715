import { invalid, quote } from "../text";

/** Longest name in bytes of UTF-8 (RFC 7143 section 4.2.7.1). */
const mostBytes = 223;

/**
 * Makes an iSCSI qualified name: `iqn.`, year and month, the domain reversed, and after a colon whatever its owner likes.
 *
 * The month is one in which the naming authority owned the domain on its first day (RFC 7143 section 4.2.7.2; RFC 3721 section 1.1).
 * Letters become lower case and text is normalised, as a stored name must be (RFC 3722). Refuses blanks, ASCII other than letters,
 * digits, dash, dot and colon, and names over 223 bytes.
 */
export function iscsiName(yearMonth: string, domain: string, name: string | null): string {
  const authority = `iqn.${parseYearMonth(yearMonth)}.${reverseDomain(domain)}`;
  const whole = name === null ? authority : `${authority}:${parseOwnPart(name)}`;
  const length = countUtf8Bytes(whole);
  if (length > mostBytes) throw invalid("name", name, `name makes an iSCSI name of ${length} bytes; ${mostBytes} are allowed. Write a shorter one.`);
  return whole;
}

function parseYearMonth(text: string): string {
  if (/^\d{4}-(0[1-9]|1[0-2])$/.test(text)) return text;
  const [, year = "", month = ""] = /^(\d{4})[-/. ]?(\d{1,2})$/.exec(text) ?? /^(?=.*(\d{4})$)(\d{1,2})[-/. ]\d{4}$/.exec(text) ?? [];
  const start = `yearMonth ${quote(text)} is not a year and month`;
  if (Number(month) < 1 || Number(month) > 12) throw invalid("yearMonth", text, `${start}. Write it as text, such as 2024-05.`);
  const meant = `${year}-${month.padStart(2, "0")}`;
  throw invalid("yearMonth", text, `${start}. Write ${meant}.`, meant);
}

/** Turns storage.example.com into com.example.storage. Labels as in RFC 1123 section 2.1: letters, digits and inner dashes, up to 63. */
function reverseDomain(text: string): string {
  const domain = text.toLowerCase();
  const labels = domain.split(".");
  const fits = labels.length >= 2 && labels.every((label) => /^[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?$/.test(label)) && /[a-z]/.test(labels.at(-1)!);
  if (!fits) throw invalid("domain", text, `domain ${quote(text)} is not a domain name of yours. Write one such as example.com.`);
  return labels.reverse().join(".");
}

/** What no iSCSI name may hold: ASCII signs but - . : (RFC 3722 section 6.2), blanks, controls, private use, the ideographic full stop. */
// eslint-disable-next-line no-control-regex -- the control characters are what is forbidden
const forbidden = /[\u0000-\u002c\u002f\u003b-\u0060\u007b-\u007f\u3002]|\p{C}|\p{Z}/u;

function parseOwnPart(text: string): string {
  const name = text.normalize("NFKC").toLowerCase().normalize("NFKC");
  const bad = forbidden.exec(name);
  if (bad === null) return name;
  const sign = /\s/.test(bad[0]) ? "a blank" : quote(bad[0]);
  throw invalid("name", text, `name ${quote(text)} holds ${sign}. An iSCSI name takes letters, digits, "-", "." and ":" only.`);
}

/** Counts the bytes of a text in UTF-8: one, two, three or four a character, by its code point (RFC 3629 section 3). */
function countUtf8Bytes(text: string): number {
  let bytes = 0;
  for (const character of text) {
    const code = character.codePointAt(0)!;
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }
  return bytes;
}

/**
 * Says what keeps a text from being the name of an iSCSI node; null where it is one.
 *
 * `iqn.` with year, month and reversed domain, `eui.` with 16 and `naa.` with 16 or 32 hexadecimal digits (RFC 7143 section 4.2.7). Case does
 * not matter, as names are compared in lower case.
 */
export function iscsiNameFault(text: string): string | null {
  const name = text.normalize("NFKC").toLowerCase();
  const start = `${quote(text.length > 60 ? `${text.slice(0, 60)}...` : text)} is no iSCSI name`;
  if (countUtf8Bytes(name) > mostBytes) return `${start}: it has more than ${mostBytes} bytes. Write a shorter one.`;
  if (forbidden.test(name)) return `${start}: it takes letters, digits, "-", "." and ":" only.`;
  if (/^(?:eui\.[0-9a-f]{16}|naa\.(?:[0-9a-f]{16}|[0-9a-f]{32}))$/.test(name)) return null;
  const [, authority = ""] = /^iqn\.\d{4}-(?:0[1-9]|1[0-2])\.([^:]+)(?::.+)?$/.exec(name) ?? [];
  const isDomain = /^[a-z0-9-]+(?:\.[a-z0-9-]+)+$/.test(authority);
  return isDomain ? null : `${start}. Write one such as iqn.2024-05.example.storage:host-1, as the host shows it.`;
}
