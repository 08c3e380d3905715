import { isIP } from "node:net";
import { readIPv6, writeIPv6, type Groups } from "../../../src/planning/addressing/ipv6-text";

const everySign = Array.from({ length: 128 }, (_, code) => String.fromCharCode(code));
const read = (text: string): Groups | null => readIPv6(text, 0, text.length);

describe("no sign of ASCII is read that Node's own reader does not read", () => {
  test.each(["1{}:2:3:4:5:6:7:8", "1{}2:3:4:5:6:7:8:9", "1:2:3:4:5:6:7:{}", "{}::1", "::{}", "1:{}::8", "::1{}2.3.4", "{}:1", "::ffff:1.2.3.4{}"])("%s", (pattern) => {
    for (const sign of everySign.filter((one) => one !== "%")) {
      const text = pattern.replace("{}", () => sign);
      expect([text, read(text) !== null]).toEqual([text, isIP(text) === 6]);
    }
  });
});

describe("a digit of a group is read in either case", () => {
  test.each(Array.from("0123456789abcdefABCDEF"))("%s", (digit) => {
    expect(read(`::${digit}`)).toEqual([0, 0, 0, 0, 0, 0, 0, parseInt(digit, 16)]);
  });
});

describe("the forms of RFC 4291 section 2.2", () => {
  test.each<[string, Groups | null]>([
    ["1:2:3:4:5:6:7:8", [1, 2, 3, 4, 5, 6, 7, 8]],
    ["::", [0, 0, 0, 0, 0, 0, 0, 0]],
    ["1::", [1, 0, 0, 0, 0, 0, 0, 0]],
    ["::8", [0, 0, 0, 0, 0, 0, 0, 8]],
    ["1:2::7:8", [1, 2, 0, 0, 0, 0, 7, 8]],
    ["1:2:3:4:5:6:7::", [1, 2, 3, 4, 5, 6, 7, 0]],
    ["::2:3:4:5:6:7:8", [0, 2, 3, 4, 5, 6, 7, 8]],
    ["::1.2.3.4", [0, 0, 0, 0, 0, 0, 0x0102, 0x0304]],
    ["1:2:3:4:5:6:1.2.3.4", [1, 2, 3, 4, 5, 6, 0x0102, 0x0304]],
    ["1::6:1.2.3.4", [1, 0, 0, 0, 0, 6, 0x0102, 0x0304]],
    ["ffff:FFFF::0001", [0xffff, 0xffff, 0, 0, 0, 0, 0, 1]],
    ["1:2:3:4:5:6:7:1.2.3.4", null],
    ["1:2:3:4:5:1.2.3.4", null],
    ["1:2:3:4:5:6:7:8:9", null],
    ["1:2:3:4:5:6:7:8::", null],
    ["1:2:3:4:5:6:7:8::9", null],
    ["::1:2:3:4:5:6:7:8:9", null],
    ["::0.0.0.0", [0, 0, 0, 0, 0, 0, 0, 0]],
    ["1:2:3:4::5:6:7:8", null],
    ["1::2::3", null],
    [":::", null],
    [":1::2", null],
    ["1:", null],
    [":1", null],
    [":", null],
    ["", null],
    ["1", null],
    ["::00001", null],
    ["::1.2.3.4:5", null],
    ["::1.2.3", null],
    ["1.2.3.4", null],
    ["1.2.3.4::", null],
  ])("%j", (text, groups) => {
    expect(read(text)).toEqual(groups);
    expect(isIP(text) === 6).toBe(groups !== null);
  });

  test("what stands before and after the part that is read does not matter", () => {
    expect(readIPv6("[::1]", 1, 4)).toEqual([0, 0, 0, 0, 0, 0, 0, 1]);
    expect(readIPv6("::1", 0, 2)).toEqual([0, 0, 0, 0, 0, 0, 0, 0]);
    expect(readIPv6("::1:2", 0, 4)).toBeNull();
    expect(readIPv6("x::", 1, 2)).toBeNull();
    expect(readIPv6("::1.2.3.4", 0, 3)).toEqual([0, 0, 0, 0, 0, 0, 0, 1]);
  });
});

describe("the canonical text of RFC 5952 section 4 and 5", () => {
  test.each<[number, number, number, number, string]>([
    [0, 0, 0, 0, "::"],
    [0, 0, 0, 1, "::1"],
    [0x2001_0db8, 0, 0, 1, "2001:db8::1"],
    [0x2001_0db8, 0, 1, 1, "2001:db8::1:0:1"],
    [0x0001_0000, 0x0002_0000, 0x0003_0000, 0x0004_0000, "1:0:2:0:3:0:4:0"],
    [0x0001_0000, 0x0000_0002, 0x0000_0000, 0x0003_0004, "1::2:0:0:3:4"],
    [0x0001_0002, 0x0003_0004, 0x0005_0006, 0x0000_0000, "1:2:3:4:5:6::"],
    [0x0000_0000, 0x0003_0004, 0x0005_0006, 0x0007_0008, "::3:4:5:6:7:8"],
    [0x0000_0002, 0x0003_0004, 0x0005_0006, 0x0007_0008, "0:2:3:4:5:6:7:8"],
    [0xabcd_0fed, 0x00ba_000f, 0x1000_0100, 0x0010_0001, "abcd:fed:ba:f:1000:100:10:1"],
    [0, 0, 0xffff, 0xc000_0201, "::ffff:192.0.2.1"],
    [0, 0, 0xffff, 0xffff_ffff, "::ffff:255.255.255.255"],
    [0, 0, 0xfffe, 0xc000_0201, "::fffe:c000:201"],
    [0, 1, 0xffff, 0xc000_0201, "::1:0:ffff:c000:201"],
    [0, 0, 0x0001_ffff, 0xc000_0201, "::1:ffff:c000:201"],
  ])("%i %i %i %i is %s", (word0, word1, word2, word3, text) => {
    expect(writeIPv6(word0, word1, word2, word3)).toBe(text);
  });
});
