import ipaddr from "ipaddr.js";
import { invalid, quote, type Problem } from "../text";
import { readIPv4 } from "./ipv4-text";
import { readIPv6 } from "./ipv6-text";

/** What is wrong with a text, what to write in general, and what this text was clearly meant to be, if anything. */
interface Fault {
  readonly what: string;
  readonly advice: string;
  readonly meant?: string;
}

/** What is asked for, and how it is written in either family. */
interface Wanted {
  readonly noun: "address" | "prefix";
  readonly ipv4: string;
  readonly ipv6: string;
}

const anAddress: Wanted = { noun: "address", ipv4: "10.20.0.9", ipv6: "2001:db8::9" };
const aPrefix: Wanted = { noun: "prefix", ipv4: "10.20.0.0/24", ipv6: "2001:db8::/64" };

/**
 * Says why `text` is not an address, and what to write instead.
 *
 * Only called once reading has failed, so it may be slow. Forms that other programs take (octal or short IPv4, a zone) are read with
 * ipaddr.js, to show what such a program would make of them.
 */
export function explainAddress(text: string, argument: string): Problem {
  if (text === "") return invalid(argument, text, `${argument} is blank. Write an address, such as 10.20.0.9 or 2001:db8::9.`);
  return explain(text, text, "", argument, anAddress);
}

/** Says the same of a prefix whose address cannot be read; its length or mask begins at `at`, with the slash or blank, −1 for none. */
export function explainPrefix(text: string, at: number, argument: string): Problem {
  const isBlank = text[at] === " " && !/^[\d.]+$/.test(text.slice(at).trim());
  const address = at < 0 || isBlank ? text : text.slice(0, at).trim();
  if (address !== "") return explain(text, address, text.slice(address.length), argument, aPrefix);
  return invalid(argument, text, `${argument} ${quote(text)} has no address before its length. Write one such as ${aPrefix.ipv4}.`);
}

function explain(text: string, address: string, behind: string, argument: string, wanted: Wanted): Problem {
  const { what, advice, meant } = faultOf(address, wanted);
  const start = `${argument} ${quote(text)} ${what}`;
  const lacksLength = wanted === aPrefix && behind === "";
  if (meant === undefined || lacksLength || !isAddress(meant)) return invalid(argument, text, `${start}${what.endsWith("?") ? "" : "."} ${advice}`);
  const whole = meant + behind;
  return invalid(argument, text, `${start}. Write ${whole}.`, whole);
}

function isAddress(text: string): boolean {
  return readIPv4(text, 0, text.length) >= 0 || readIPv6(text, 0, text.length) !== null;
}

function faultOf(text: string, wanted: Wanted): Fault {
  const alone = `Write the ${wanted.noun} alone, such as ${text.includes(":") ? wanted.ipv6 : wanted.ipv4}.`;
  const mended = mendedOf(text);
  if (mended !== null) return { ...mended, advice: alone };
  if (/\s/.test(text) && /\d[.:]/.test(text)) return { what: "has a blank in it", advice: `Write one ${wanted.noun}, such as ${wanted.ipv4}.` };
  if (text.includes(":") && !/\s/.test(text)) return ipv6Fault(text, wanted);
  const octets = text.split(".");
  if (octets.length > 1 && octets.every((octet) => /^\d+$/.test(octet))) return ipv4Fault(text, octets, wanted);
  return { what: `is not ${wanted.noun === "address" ? "an" : "a"} ${wanted.noun}`, advice: `Write IPv4 such as ${wanted.ipv4}, or IPv6 such as ${wanted.ipv6}.` };
}

/** Takes off what stands around an address, and sets dots for commas. */
function mendedOf(text: string): Omit<Fault, "advice"> | null {
  if (/^\[.*\]/.test(text)) return { what: "has brackets", meant: /^\[(.*)\]$/.exec(text)?.[1] };
  if (text.includes("%") && text.includes(":")) return { what: "names a zone", meant: text.slice(0, text.indexOf("%")) };
  if (text.includes("/")) return { what: "has a length", meant: text.slice(0, text.indexOf("/")).trim() };
  if (/^\d+(\.\d+){3}:\d+$/.test(text)) return { what: "has a port", meant: text.slice(0, text.indexOf(":")) };
  if (/^\d+(,\d+){3}$/.test(text)) return { what: "has commas", meant: text.replaceAll(",", ".") };
  return null;
}

function ipv4Fault(text: string, octets: readonly string[], { noun, ipv4 }: Wanted): Fault {
  if (octets.length !== 4) return { what: `has ${octets.length} octets`, advice: `An IPv4 ${noun} has four, such as ${ipv4}.` };
  const high = octets.find((octet) => Number(octet) > 255);
  if (high !== undefined) return { what: `has an octet ${high.length > 40 ? `${high.slice(0, 39)}…` : high}`, advice: "Octets go from 0 to 255." };
  const decimal = octets.map(Number).join(".");
  const octal = ipaddr.IPv4.isValid(text) ? ipaddr.IPv4.parse(text).toString() : decimal;
  if (octal === decimal) return { what: "has leading zeros", advice: `Write a ${noun} such as ${ipv4}.`, meant: decimal };
  return { what: `has leading zeros: is it ${decimal} or, as some programs read it, ${octal}?`, advice: "Write it without them." };
}

function ipv6Fault(text: string, { ipv6 }: Wanted): Fault {
  const advice = `Write IPv6 such as ${ipv6}.`;
  if (text.split("::").length > 2 || text.includes(":::")) return { what: 'has "::" more than once', advice };
  const groups = text.split(":").filter((group) => group !== "");
  const bad = groups.find((group) => !/^[0-9a-f]{1,4}$/i.test(group) && !group.includes("."));
  if (bad !== undefined) return { what: `has a group ${quote(bad)}. A group is 1 to 4 of the digits 0-9 and a-f`, advice };
  if (groups.some((group) => group.includes("."))) return { what: "is not an IPv6 address with a dotted tail", advice: "Write one such as ::ffff:192.0.2.1." };
  const count = groups.length;
  if (text.includes("::") && count > 7) return { what: 'has "::" beside eight groups', advice: "Leave it out." };
  if (count !== 8) return { what: `has ${count} groups`, advice: 'An IPv6 address has eight, or "::" for a run of zeros.' };
  return { what: "begins or ends with a colon", advice };
}
