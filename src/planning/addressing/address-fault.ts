import ipaddr from "ipaddr.js";
import { invalid, quote, type Problem } from "../text";

/**
 * Says why `text` is not an address, and what to write instead.
 *
 * Only called once reading has failed, so it may be slow. Forms that other programs take (octal or short IPv4, a zone) are read with
 * ipaddr.js, to show what such a program would make of them.
 */
export function explainAddress(text: string, argument: string): Problem {
  return invalid(argument, text, `${argument} ${reason(text)}`);
}

function reason(text: string): string {
  const got = quote(text);
  if (text === "") return "is blank. Write an address, such as 10.20.0.9 or 2001:db8::9.";
  if (/\s/.test(text)) return `${got} has a blank in it. Write one address, such as 10.20.0.9.`;
  if (/^\[.*\]/.test(text)) return `${got} has brackets. Write the address alone, such as 2001:db8::9.`;
  if (text.includes("%")) return `${got} names a zone. Write the address alone: ${quoteless(text.slice(0, text.indexOf("%")))}.`;
  if (text.includes("/")) return `${got} has a length. Write the address alone, such as 10.20.0.9.`;
  if (text.includes(":")) return ipv6Reason(text, got);
  return ipv4Reason(text, got);
}

function ipv4Reason(text: string, got: string): string {
  const octets = text.split(".");
  if (octets.length > 1 && octets.every((octet) => /^\d+$/.test(octet))) {
    if (octets.length !== 4) return `${got} has ${octets.length} octets. An IPv4 address has four, such as 10.20.0.9.`;
    const high = octets.find((octet) => Number(octet) > 255);
    if (high !== undefined) return `${got} has an octet ${quoteless(high)}. Octets go from 0 to 255.`;
    const decimal = octets.map(Number).join(".");
    return `${got} has leading zeros, which some programs read as ${asOthersRead(text)}. Write ${decimal}.`;
  }
  return `${got} is not an address. Write IPv4 such as 10.20.0.9, or IPv6 such as 2001:db8::9.`;
}

/** Shows how programs that know octal read an IPv4 text: 010.0.0.1 is 8.0.0.1 to them. */
function asOthersRead(text: string): string {
  return ipaddr.IPv4.isValid(text) ? ipaddr.IPv4.parse(text).toString() : "octal";
}

function ipv6Reason(text: string, got: string): string {
  const advice = "Write IPv6 such as 2001:db8::9.";
  if (text.split("::").length > 2 || text.includes(":::")) return `${got} has "::" more than once. ${advice}`;
  const groups = text.split(":").filter((group) => group !== "");
  const bad = groups.find((group) => !/^[0-9a-f]{1,4}$/i.test(group) && !group.includes("."));
  if (bad !== undefined) return `${got} has a group ${quote(bad)}. A group is 1 to 4 of the digits 0-9 and a-f. ${advice}`;
  const dotted = groups.find((group) => group.includes("."));
  if (dotted !== undefined) return `${got} is not an IPv6 address with a dotted tail. Write one such as ::ffff:192.0.2.1.`;
  const count = groups.length;
  if (text.includes("::") && count > 7) return `${got} has "::" beside eight groups. Leave it out.`;
  if (count !== 8) return `${got} has ${count} groups. An IPv6 address has eight, or "::" for a run of zeros.`;
  return `${got} begins or ends with a colon. ${advice}`;
}

function quoteless(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
