import { broadcastAddress, countHosts, firstHost, formatAddress, hostAt, lastHost, parsePrefix, pingSize } from "../../../src/planning/addressing";
import { problemOf } from "../../support/sentence";

const at = (prefix: string, position: bigint): string => formatAddress(hostAt(parsePrefix(prefix), position));

describe("hosts are counted from the first and, below 0, from the last", () => {
  test.each([
    ["RFC 1878 table 1-2", "192.0.2.64/26", "192.0.2.65", "192.0.2.126", 62n],
    ["RFC 3021 section 2.1, both addresses of a /31", "192.0.2.6/31", "192.0.2.6", "192.0.2.7", 2n],
    ["a /32 is one host", "192.0.2.6/32", "192.0.2.6", "192.0.2.6", 1n],
    ["RFC 4291 section 2.6.1, all but the subnet-router anycast address", "2001:db8::/64", "2001:db8::1", "2001:db8::ffff:ffff:ffff:ffff", 2n ** 64n - 1n],
    ["RFC 6164 section 6, both addresses of a /127", "2001:db8::6/127", "2001:db8::6", "2001:db8::7", 2n],
    ["a /128 is one host", "2001:db8::6/128", "2001:db8::6", "2001:db8::6", 1n],
  ])("%s: %s has hosts from %s to %s", (_, text, first, last, count) => {
    const prefix = parsePrefix(text);
    expect([formatAddress(firstHost(prefix)), formatAddress(lastHost(prefix)), countHosts(prefix)]).toEqual([first, last, count]);
    expect([at(text, 1n), at(text, -1n), at(text, count), at(text, -count)]).toEqual([first, last, last, first]);
    for (const position of [count + 1n, -count - 1n]) {
      const problem = problemOf(() => at(text, position));
      expect([problem.kind, problem.argument, problem.received]).toEqual(["no-answer", "position", position]);
      expect(problem.sentence).toBe(`position ${position} is past the ${count === 1n ? "1 host" : `${count} hosts`} of ${text}. Write a smaller one.`);
    }
  });

  test("there is none at 0", () => {
    const problem = problemOf(() => at("192.0.2.64/26", 0n));
    expect([problem.received, problem.sentence]).toEqual([0, "position is 0. Count from 1, the first host, or from -1, the last."]);
  });
});

describe("the broadcast address of a prefix is its last address (RFC 919 section 7)", () => {
  test.each([
    ["192.0.2.64/26", "192.0.2.127"],
    ["192.0.2.4/30", "192.0.2.7"],
    ["0.0.0.0/0", "255.255.255.255"],
  ])("%s: %s", (text, last) => expect(formatAddress(broadcastAddress(parsePrefix(text)))).toBe(last));

  test.each([
    ["192.0.2.6/31", 'prefix "192.0.2.6/31" has no broadcast address: both addresses of a /31 are hosts (RFC 3021). Give a /30 or larger.'],
    ["192.0.2.6/32", 'prefix "192.0.2.6/32" has no broadcast address: a /32 is one host. Give a /30 or larger.'],
    ["2001:db8::/64", 'prefix "2001:db8::/64" is IPv6, which has no broadcast address. Give an IPv4 prefix.'],
  ])("%s has none", (text, sentence) => expect(problemOf(() => broadcastAddress(parsePrefix(text))).sentence).toBe(sentence));
});

test("an echo request fills a packet with its header of 8 bytes (RFC 792, RFC 4443) behind one of 20 (RFC 791) or 40 (RFC 8200)", () => {
  // 1500 bytes: RFC 894 and RFC 2464; 1280 is the least an IPv6 link has (RFC 8200 section 5).
  expect([pingSize(1500, 4), pingSize(1500, 6), pingSize(1280, 6), pingSize(68, 4)]).toEqual([1472, 1452, 1232, 40]);
});
