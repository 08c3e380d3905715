import { formatMask, formatWildcard, maskText, parseMask } from "../../../src/planning/addressing";
import { problemOf } from "../../support/sentence";

test("a mask has its ones first (RFC 950 section 2.1): one a length, from 0.0.0.0 to 255.255.255.255", () => {
  for (let length = 0; length <= 32; length++) {
    const bits = "1".repeat(length).padEnd(32, "0");
    const mask = bits.replace(/.{8}/g, (octet) => `${parseInt(octet, 2)}.`).slice(0, -1);
    expect([formatMask(length), parseMask(mask), parseMask(` ${mask} `)]).toEqual([mask, length, length]);
    expect(formatWildcard(length)).toBe(mask.split(".").map((octet) => 255 - Number(octet)).join("."));
  }
});

test("beside an address a console asks for the mask in IPv4 and for the length in IPv6", () => {
  expect([maskText(4, 24), maskText(6, 64)]).toEqual(["255.255.255.0", "/64"]);
});

describe("what is no mask is refused with what to write instead", () => {
  test.each([
    ["24", 'mask "24" is a length, not a dotted mask. Write 255.255.255.0.'],
    ["/0", 'mask "/0" is a length, not a dotted mask. Write 0.0.0.0.'],
    ["/32", 'mask "/32" is a length, not a dotted mask. Write 255.255.255.255.'],
    ["33", 'mask "33" is not a dotted mask. Write one such as 255.255.255.0.'],
    ["255.255.255", 'mask "255.255.255" is not a dotted mask. Write one such as 255.255.255.0.'],
    ["0.0.0.255", 'mask "0.0.0.255" is a wildcard, not a mask. Write 255.255.255.0.'],
    ["0.0.0.1", 'mask "0.0.0.1" is a wildcard, not a mask. Write 255.255.255.254.'],
    ["127.255.255.255", 'mask "127.255.255.255" is a wildcard, not a mask. Write 128.0.0.0.'],
    ["255.0.255.0", 'mask "255.0.255.0" has holes. The ones of a mask come first, as in 255.0.0.0.'],
    ["192.0.2.1", 'mask "192.0.2.1" has holes. The ones of a mask come first, as in 192.0.0.0.'],
  ])("%s", (text, sentence) => expect(problemOf(() => parseMask(text)).sentence).toBe(sentence));

  test("what is clearly meant is proposed", () => {
    expect(problemOf(() => parseMask("/26")).proposals).toEqual(["255.255.255.192"]);
    expect(problemOf(() => parseMask("0.0.0.63")).proposals).toEqual(["255.255.255.192"]);
  });
});
