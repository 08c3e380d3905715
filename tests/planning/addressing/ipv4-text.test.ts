import { isIP } from "node:net";
import { packedAddress, packedLength, readIPv4, readIPv4Prefix, writeIPv4 } from "../../../src/planning/addressing/ipv4-text";

const everySign = Array.from({ length: 128 }, (_, code) => String.fromCharCode(code));
const read = (text: string): number => readIPv4(text, 0, text.length);
const value = (a: number, b: number, c: number, d: number): number => ((a * 256 + b) * 256 + c) * 256 + d;

describe("octets are kept apart by dots and by nothing else", () => {
  test.each([0, 1, 2])("no other sign of ASCII stands for dot %i, as Node's own reader has it too", (dot) => {
    for (const sign of everySign) {
      const text = ["1", "2", "3", "4"].map((octet, place) => (place === dot + 1 ? `${sign}${octet}` : place === 0 ? octet : `.${octet}`)).join("");
      expect([text, read(text)]).toEqual([text, sign === "." ? value(1, 2, 3, 4) : -1]);
      expect(isIP(text)).toBe(sign === "." ? 4 : 0);
      expect(readIPv4Prefix(text, 32)).toBe(sign === "." ? 32 * 2 ** 32 + value(1, 2, 3, 4) : -1);
    }
  });

  test("no other sign of ASCII stands for the slash before a length", () => {
    for (const sign of everySign) expect([sign, readIPv4Prefix(`10.20.0.9${sign}24`, 32)]).toEqual([sign, sign === "/" ? 24 * 2 ** 32 + value(10, 20, 0, 9) : -1]);
  });

  test("no sign of ASCII but a digit may follow a digit", () => {
    for (const sign of everySign) {
      const text = `1.2.3.4${sign}`;
      expect([text, read(text)]).toEqual([text, isIP(text) === 4 ? value(1, 2, 3, Number(`4${sign}`)) : -1]);
    }
  });
});

describe("an address is four octets from 0 to 255 without leading zeros (RFC 3986 section 3.2.2)", () => {
  test.each([
    ["0.0.0.0", value(0, 0, 0, 0)],
    ["255.255.255.255", value(255, 255, 255, 255)],
    ["10.20.0.9", value(10, 20, 0, 9)],
    ["128.0.0.1", value(128, 0, 0, 1)],
    ["256.0.0.1", -1],
    ["1.256.0.1", -1],
    ["1.0.0.256", -1],
    ["01.2.3.4", -1],
    ["1.2.3.04", -1],
    ["1.00.3.4", -1],
    ["1..2.3", -1],
    [".1.2.3.4", -1],
    ["1.2.3.", -1],
    ["1.2.3", -1],
    ["1.2.3.4.5", -1],
    ["1.2.3.4.", -1],
    ["", -1],
  ])("%j is %d", (text, read32) => {
    expect(read(text)).toBe(read32);
    expect(readIPv4Prefix(text, 0)).toBe(read32);
    expect(readIPv4Prefix(`${text}/0`)).toBe(read32);
  });

  test("what stands before and after the part that is read does not matter", () => {
    expect(readIPv4("::ffff:10.20.0.9/24", 7, 16)).toBe(value(10, 20, 0, 9));
    expect(readIPv4("10.20.0.9", 0, 8)).toBe(-1);
  });
});

describe("a prefix is an address and a length from 0 to 32 (RFC 4632 section 3.1)", () => {
  test("every length is read", () => {
    for (let length = 0; length <= 32; length++) {
      const packed = readIPv4Prefix(`192.0.2.255/${length}`);
      expect(packedLength(packed)).toBe(length);
      expect(packedAddress(packed)).toBe(value(192, 0, 2, 255));
    }
  });

  test.each(["", "33", "40", "99", "100", "240", "024", "00", "-1", "1a", "a1", "a", "2 ", " 2", "+2", "2.", "24/", ":", "2:", "/"])("%j is no length", (length) => {
    expect(readIPv4Prefix(`10.20.0.9/${length}`, 32)).toBe(-1);
  });

  test("an address alone has the length that is asked for, and is no prefix where none is", () => {
    expect(readIPv4Prefix("10.20.0.9", 32)).toBe(32 * 2 ** 32 + value(10, 20, 0, 9));
    expect(readIPv4Prefix("10.20.0.9", 0)).toBe(value(10, 20, 0, 9));
    expect(readIPv4Prefix("10.20.0.9")).toBe(-1);
  });
});

test("a number is written as its four octets, the first and every later time", () => {
  for (const [a, b, c, d] of [[0, 0, 0, 0], [255, 255, 255, 255], [1, 2, 3, 4], [10, 20, 0, 9], [128, 0, 255, 1], [10, 20, 1, 0]] as const) {
    expect(writeIPv4(value(a, b, c, d))).toBe(`${a}.${b}.${c}.${d}`);
    expect(writeIPv4(value(a, b, c, d))).toBe(`${a}.${b}.${c}.${d}`);
  }
});
