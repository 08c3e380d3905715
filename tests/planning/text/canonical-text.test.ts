import { createHash } from "node:crypto";
import { canonicalText, digestOf } from "../../../src/planning/text";

describe("what a cell holds is one text in every spreadsheet program", () => {
  test.each([
    ["nothing at all", undefined, ""],
    ["a blank", null, ""],
    ["an error", { error: "#N/A" }, "#N/A"],
    ["a yes", true, "TRUE"],
    ["a no", false, "FALSE"],
    ["a letter and its accent, typed as two", "cafe\u0301", "caf\u00e9"],
    ["lines that end as on other systems", "one\r\ntwo\rthree\nfour", "one\ntwo\nthree\nfour"],
    // Unicode 16.0 section 3.9 has no encoding form for it: a program that stores it in UTF-8 writes U+FFFD.
    ["half a pair of surrogates beside a whole one", "a\ud800 \ud83d\udca1 \udfffb", "a\ufffd \ud83d\udca1 \ufffdb"],
    ["blanks around a text", "  R 1 \t", "R 1"],
    ["a sum that the sheet shows as 0.3", 0.1 + 0.2, "0.3"],
    ["a third", 1 / 3, "0.333333333333333"],
    ["a number of sixteen digits", 1234567890123456, "1234567890123460"],
    ["a day number where no date is expected", 45292, "45292"],
  ])("%s", (_, cell, text) => {
    expect(canonicalText(cell)).toBe(text);
  });

  test("a text with no date in it stays a text where a date is expected", () => {
    expect(canonicalText(" next week ", true)).toBe("next week");
  });
});

// Day 1 is 1900-01-01, and day 60 a 29 February 1900 that never was: the calendar is true from day 61 on. The last is 9999-12-31.
describe("a day number of ISO/IEC 29500-1 section 18.17.4.1 is an ISO date", () => {
  test.each([
    [61, "1900-03-01"],
    [25569, "1970-01-01"],
    [25569.75, "1970-01-01"],
    [45292, "2024-01-01"],
    [45351, "2024-02-29"],
    [2958465, "9999-12-31"],
    [2958465.5, "9999-12-31"],
    [60, "60"],
    [2958466, "2958466"],
    [-1, "-1"],
  ])("%d is %s", (day, text) => {
    expect(canonicalText(day, true)).toBe(text);
  });
});

describe("the digest of texts is SHA-256 (FIPS 180-4) in base32 (RFC 4648) over each text behind its length", () => {
  test.each([
    [[], ""],
    [["abc"], "3:abc"],
    [["a", "bc"], "1:a\n2:bc"],
    [["", "a\nb", "é"], "0:\n3:a\nb\n1:é"],
  ])("%j", (texts, joined) => {
    const whole = base32OfSha256(joined);
    expect(digestOf(texts, 52)).toBe(whole);
    expect(digestOf(texts, 20)).toBe(whole.slice(0, 20));
  });

  test("a letter that moves to the next text changes it", () => {
    expect(digestOf(["ab", "c"], 20)).not.toBe(digestOf(["a", "bc"], 20));
  });
});

/** Five bits a letter, read off the digest as one long binary number. */
function base32OfSha256(text: string): string {
  const bits = [...createHash("sha256").update(text).digest()].map((byte) => byte.toString(2).padStart(8, "0")).join("");
  return bits.match(/.{1,5}/g)!.map((five) => "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567".charAt(parseInt(five.padEnd(5, "0"), 2))).join("");
}
