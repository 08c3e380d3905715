import { containsAddress, containsText, formatAddress, formatPrefix, meetsBlock, parseAddress, parseBlock, parseBlocks, parsePrefix, parseRanges } from "../../../src/planning/addressing";
import { problemOf } from "../../support/sentence";

function ends(text: string): string {
  const { first, last } = parseBlock(text);
  return `${formatAddress(first)} to ${formatAddress(last)}`;
}

describe("a block is an address, a range or a prefix", () => {
  test.each([
    ["10.20.0.9", "10.20.0.9 to 10.20.0.9"],
    ["10.20.0.1-10.20.0.9", "10.20.0.1 to 10.20.0.9"],
    [" 10.20.0.1 – 10.20.0.9 ", "10.20.0.1 to 10.20.0.9"],
    ["10.20.0.9-10.20.0.9", "10.20.0.9 to 10.20.0.9"],
    ["10.20.0.0/24", "10.20.0.0 to 10.20.0.255"],
    ["10.20.0.0 255.255.255.0", "10.20.0.0 to 10.20.0.255"],
    ["2001:db8::1-2001:db8::ffff", "2001:db8::1 to 2001:db8::ffff"],
    ["2001:db8::/64", "2001:db8:: to 2001:db8::ffff:ffff:ffff:ffff"],
  ])("%j is %s", (text, expected) => expect(ends(text)).toBe(expected));

  test("several stand with commas, semicolons or line ends between", () => {
    const blocks = parseBlocks("10.20.0.1-10.20.0.9, 10.20.0.64/26;\n10.20.0.200");
    expect(blocks.map(({ first, last }) => `${formatAddress(first)} ${formatAddress(last)}`)).toEqual(["10.20.0.1 10.20.0.9", "10.20.0.64 10.20.0.127", "10.20.0.200 10.20.0.200"]);
  });

  test("none of several is lost, however many stand in one text", () => {
    const texts = Array.from({ length: 40 }, (_, place) => `10.20.0.${5 * place}`);
    const { count, first } = parseRanges([texts.join(", ")], 4);
    expect(Array.from(first.slice(0, count), (value) => value - 0x0a14_0000)).toEqual(texts.map((_, place) => 5 * place));
  });
});

describe("what is no block is refused with what to write instead", () => {
  test.each([
    ["/24", 'taken "/24" has no address before its length. Write one such as 10.20.0.0/24.'],
    ["-10.20.0.9", 'taken "-10.20.0.9" lacks an end. Write two addresses with a dash between, such as 10.20.0.1-10.20.0.9.'],
    ["10.20.0.1 -", 'taken "10.20.0.1 -" lacks an end. Write two addresses with a dash between, such as 10.20.0.1-10.20.0.9.'],
    ["10.20.0.5-9", 'taken "10.20.0.5-9" has no whole address after its dash. Write 10.20.0.5-10.20.0.9.'],
    ["10.20.0.5-120", 'taken "10.20.0.5-120" has no whole address after its dash. Write 10.20.0.5-10.20.0.120.'],
    ["10.20.0.2-10.20.0.1", 'taken "10.20.0.2-10.20.0.1" runs backwards. Write 10.20.0.1-10.20.0.2.'],
    ["10.20.0.1-10.20.0", 'taken "10.20.0" has 3 octets. An IPv4 address has four, such as 10.20.0.9.'],
    ["10.20-10.20.0.1", 'taken "10.20" has 2 octets. An IPv4 address has four, such as 10.20.0.9.'],
    ["pool-a", 'taken "pool-a" is not an address. Write IPv4 such as 10.20.0.9, or IPv6 such as 2001:db8::9.'],
    ["10.20.0.9/24", 'taken "10.20.0.9/24" has bits set after the /24: is it all of 10.20.0.0/24, or 10.20.0.9 alone? Write the one meant.'],
  ])("%s", (text, sentence) => expect(problemOf(() => parseBlock(text)).sentence).toBe(sentence));

  test("of several the wrong one is named, and mended within the whole", () => {
    const problem = problemOf(() => parseBlocks("10.20.0.64/26, 10.20.0.9-10.20.0.5"));
    expect(problem.sentence).toBe('reserved "10.20.0.9-10.20.0.5" runs backwards. Write 10.20.0.5-10.20.0.9.');
    expect([problem.received, problem.proposals]).toEqual(["10.20.0.64/26, 10.20.0.9-10.20.0.5", ["10.20.0.64/26, 10.20.0.5-10.20.0.9"]]);
  });

  test("a list is of one family", () => {
    expect(problemOf(() => parseRanges(["10.20.0.0/24", "2001:db8::/64"], 4)).sentence).toBe('reserved "2001:db8::/64" is IPv6 among IPv4. Give IPv4 and IPv6 in calls of their own.');
  });
});

/** The slow twin: an address or prefix as the bits that are fixed, the first one first. */
function fixedBits(text: string): string {
  const [address, length] = text.split("/");
  const read = parseAddress(address!);
  const words = read.family === 4 ? [read.word3] : [read.word0, read.word1, read.word2, read.word3];
  const bits = words.map((word) => word.toString(2).padStart(32, "0")).join("");
  return bits.slice(0, length === undefined ? bits.length : Number(length));
}

/** Turns one bit of an address round, counted from 1 for the first. */
function turned(text: string, bit: number): string {
  const bits = Array.from(fixedBits(text));
  bits[bit - 1] = bits[bit - 1] === "0" ? "1" : "0";
  const hexadecimal = BigInt(`0b${bits.join("")}`).toString(16).padStart(bits.length / 4, "0");
  return bits.length === 32 ? hexadecimal.replace(/../g, (octet) => `${parseInt(octet, 16)}.`).slice(0, -1) : hexadecimal.replace(/(.{4})(?=.)/g, "$1:");
}

describe("the bits after the length are the hosts' (RFC 4632 section 3.1, RFC 4291 section 2.3)", () => {
  test.each(["10.20.0.0", "2001:db8:8000:1:8000:1:8000:1"])("an address that differs from a prefix of %s in one bit is in it where that bit comes after the length", (base) => {
    const bits = fixedBits(base).length;
    const wrong: string[] = [];
    for (let length = 0; length <= bits; length++) {
      const prefix = withoutHostBits(base, length);
      for (let bit = 1; bit <= bits; bit++) {
        const other = turned(prefix.split("/")[0]!, bit);
        if (containsText(prefix, other) !== bit > length) wrong.push(`${prefix} ${other}`);
        if (containsAddress(parsePrefix(prefix), parseAddress(other)) !== bit > length) wrong.push(`as values: ${prefix} ${other}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  test.each(["10.20.0.0", "2001:db8:8000:1:8000:1:8000:1"])("a prefix of %s with one more bit set is refused, wherever that bit stands", (base) => {
    const bits = fixedBits(base).length;
    for (let length = 0; length < bits; length++) {
      const prefix = withoutHostBits(base, length);
      for (const bit of [length + 1, Math.min(bits, length + 16), bits]) {
        const wrong = `${turned(prefix.split("/")[0]!, bit)}/${length}`;
        expect(problemOf(() => parsePrefix(wrong)).sentence).toMatch(new RegExp(`^prefix .* has bits set after the /${length}\\. Write ${formatPrefix(parsePrefix(prefix))}\\.$`));
        expect(problemOf(() => parseRanges([wrong], bits === 32 ? 4 : 6)).sentence).toMatch(/^reserved .* has bits set after the .* is it all of /);
        expect(problemOf(() => containsText(wrong, base)).sentence).toMatch(/^prefix .* has bits set after/);
        expect(problemOf(() => containsText(bits === 32 ? "0.0.0.0/0" : "::/0", wrong)).sentence).toMatch(/^inner .* has bits set after/);
      }
    }
  });

  function withoutHostBits(base: string, length: number): string {
    const bits = fixedBits(base);
    let address = base;
    for (let bit = length + 1; bit <= bits.length; bit++) if (bits[bit - 1] === "1") address = turned(address, bit);
    return `${address}/${length}`;
  }

  test("a prefix contains those that fix its bits and more", () => {
    const prefixes = ["0.0.0.0/0", "10.0.0.0/8", "10.20.0.0/16", "10.20.0.0/24", "10.20.1.0/24", "10.20.0.9/32", "10.20.0.9", "128.0.0.0/1", "0.0.0.0/1"];
    const longer = ["::/0", "2001:db8::/32", "2001:db8::/33", "2001:db8:8000::/33", "2001:db8::/64", "2001:db8:0:1::/64", "2001:db8::9/128", "2001:db8::9", "8000::/1"];
    for (const family of [prefixes, longer]) {
      for (const outer of family.filter((text) => text.includes("/"))) {
        for (const inner of family) expect([outer, inner, containsText(outer, inner)]).toEqual([outer, inner, fixedBits(inner).startsWith(fixedBits(outer))]);
      }
    }
  });

  test("a prefix contains a range where it contains both ends", () => {
    expect(containsText("10.20.0.0/24", "10.20.0.0-10.20.0.255")).toBe(true);
    expect(containsText("10.20.0.0/24", "10.20.0.0-10.20.1.0")).toBe(false);
    expect(containsText("10.20.0.0/24", "10.19.255.255-10.20.0.255")).toBe(false);
    expect(problemOf(() => containsText("10.20.0.0/24", "2001:db8::1")).sentence).toMatch(/^inner "2001:db8::1" is IPv6 among IPv4/);
    expect(problemOf(() => containsText("10.20.0.0", "10.20.0.9")).sentence).toMatch(/^prefix "10\.20\.0\.0" has no length/);
  });

  test("a prefix meets a block where they have one address in common", () => {
    const meets = (text: string): boolean => meetsBlock(parsePrefix("10.20.1.0/24"), parseBlock(text));
    expect(["10.20.0.0-10.20.1.0", "10.20.1.255-10.20.3.0", "10.20.1.7", "10.20.0.0/16"].map(meets)).toEqual([true, true, true, true]);
    expect(["10.20.0.0-10.20.0.255", "10.20.2.0-10.20.3.0", "10.20.2.0", "2001:db8::/32"].map(meets)).toEqual([false, false, false, false]);
  });
});
