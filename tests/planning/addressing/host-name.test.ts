import fc from "fast-check";
import { hostNameFault } from "../../../src/planning/addressing";

describe("a host name, by RFC 952 and RFC 1123 section 2.1", () => {
  const longest = `${"x".repeat(63)}.${"y".repeat(63)}.${"z".repeat(63)}.${"w".repeat(61)}`;
  test.each(["scan-1", "SCAN-1", "3com", "a", "a.b.c9", "x".repeat(63), longest, "1.example", "xn--bcher-kva.example"])("may be %s", (name) => {
    expect(hostNameFault(name)).toBeNull();
  });

  test.each<[string, string]>([
    ["", "it is blank"],
    ["scan 1", "it holds a blank"],
    ["scan\u00a01", "it holds a blank"],
    ["scan_1", 'it holds "_"'],
    ["Lesesäle", 'it holds "ä"'],
    ["a\u{1f4be}", "it holds"],
    ["-scan", "begins or ends with a dash"],
    ["scan-", "begins or ends with a dash"],
    ["scan..1a", "two in a row"],
    ["scan.", "a dot at an end"],
    [".", "a dot at an end"],
    ["x".repeat(64), "has 64 characters, 63 are the most"],
    ["x".repeat(254), "it has 254 characters, 253 are the most"],
    ["10.0.0.1", "its last part is a number"],
    ["4711", "its last part is a number"],
    ["scan\n1", "it holds a blank"],
    ["scan;1", 'it holds ";"'],
  ])("is not %j", (name, why) => {
    const fault = hostNameFault(name);
    expect(fault).toContain(why);
    expect(fault!.length).toBeLessThanOrEqual(160);
  });

  test("is accepted exactly where every label matches the grammar of RFC 1123, by a slow twin", () => {
    const signs = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789";
    const isLabel = (label: string): boolean => label !== "" && [...label].every((sign, at, all) => signs.includes(sign) || (sign === "-" && at > 0 && at < all.length - 1));
    const isName = (text: string): boolean => text.split(".").every(isLabel) && [...text.split(".").at(-1)!].some((sign) => !"0123456789".includes(sign));
    fc.assert(fc.property(fc.string({ unit: fc.constantFrom("a", "Z", "0", "9", "-", ".", "_", " "), maxLength: 12 }), (text) => {
      expect(hostNameFault(text) === null).toBe(isName(text));
    }), { numRuns: 1000 });
  });
});
