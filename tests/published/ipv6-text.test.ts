import { canonical, contains, network, repeats, splitPrefix } from "../../src/functions/addresses";
import { parsePrefix } from "../../src/planning/addressing";
import { cellAnswer } from "../support/cell-answer";

describe("RFC 4291 section 2.2: text forms of one address", () => {
  test.each([
    ["2001:DB8:0:0:8:800:200C:417A", "2001:DB8::8:800:200C:417A"],
    ["FF01:0:0:0:0:0:0:101", "FF01::101"],
    ["0:0:0:0:0:0:0:1", "::1"],
    ["0:0:0:0:0:0:0:0", "::"],
    ["0:0:0:0:0:0:13.1.68.3", "::13.1.68.3"],
    ["0:0:0:0:0:FFFF:129.144.52.38", "::FFFF:129.144.52.38"],
  ])("%s is %s", (full, short) => {
    expect(canonical(full)).toBe(canonical(short));
    expect(repeats([[full], [short]])).toHaveLength(2);
  });

  test("the short forms without a dotted tail are the canonical ones but for case", () => {
    expect(canonical("2001:DB8:0:0:8:800:200C:417A")).toBe("2001:db8::8:800:200c:417a");
    expect(canonical("FF01:0:0:0:0:0:0:101")).toBe("ff01::101");
    expect(canonical("0:0:0:0:0:0:0:1")).toBe("::1");
    expect(canonical("0:0:0:0:0:0:0:0")).toBe("::");
    expect(canonical("0:0:0:0:0:FFFF:129.144.52.38")).toBe("::ffff:129.144.52.38");
  });
});

describe("RFC 4291 section 2.3: text forms of the 60-bit prefix 20010DB80000CD3", () => {
  test.each(["2001:0DB8:0000:CD30:0000:0000:0000:0000/60", "2001:0DB8::CD30:0:0:0:0/60", "2001:0DB8:0:CD30::/60"])("%s is legal", (text) => {
    expect(String(parsePrefix(text))).toBe("2001:db8:0:cd30::/60");
  });

  test("2001:0DB8:0:CD3/60 is no address", () => {
    expect(cellAnswer(() => network("2001:0DB8:0:CD3/60"))).toMatch(/^#VALUE! prefix .* has 4 groups/);
  });

  test.each(["2001:0DB8::CD30/60", "2001:0DB8::CD3/60"])("%s is another prefix", (text) => {
    expect(network(text)).not.toBe(network("2001:0DB8:0:CD30::/60"));
  });

  test("node 2001:0DB8:0:CD30:123:4567:89AB:CDEF/60 lies in 2001:0DB8:0:CD30::/60", () => {
    expect(network("2001:0DB8:0:CD30:123:4567:89AB:CDEF/60")).toBe("2001:db8:0:cd30::");
    expect(contains("2001:0DB8:0:CD30::/60", "2001:0DB8:0:CD30:123:4567:89AB:CDEF")).toBe(true);
  });
});

describe("RFC 5952: the one recommended form", () => {
  test.each([
    ["section 1", "2001:db8:0:0:1:0:0:1", "2001:db8::1:0:0:1"],
    ["section 1", "2001:0db8:0:0:1:0:0:1", "2001:db8::1:0:0:1"],
    ["section 1", "2001:db8::1:0:0:1", "2001:db8::1:0:0:1"],
    ["section 1", "2001:db8::0:1:0:0:1", "2001:db8::1:0:0:1"],
    ["section 1", "2001:0db8::1:0:0:1", "2001:db8::1:0:0:1"],
    ["section 1", "2001:db8:0:0:1::1", "2001:db8::1:0:0:1"],
    ["section 1", "2001:db8:0000:0:1::1", "2001:db8::1:0:0:1"],
    ["section 1", "2001:DB8:0:0:1::1", "2001:db8::1:0:0:1"],
    ["section 4.1, no leading zeros", "2001:0db8::0001", "2001:db8::1"],
    ["section 4.2.1, as short as can be", "2001:db8:0:0:0:0:2:1", "2001:db8::2:1"],
    ["section 4.2.1, as short as can be", "2001:db8::0:1", "2001:db8::1"],
    ["section 4.2.2, one group alone is not shortened", "2001:db8::1:1:1:1:1", "2001:db8:0:1:1:1:1:1"],
    ["section 4.2.3, the longest run", "2001:0:0:1:0:0:0:1", "2001:0:0:1::1"],
    ["section 4.2.3, the first of equal runs", "2001:db8:0:0:1:0:0:1", "2001:db8::1:0:0:1"],
    ["section 4.3, lower case", "2001:db8:aaaa:bbbb:cccc:dddd:eeee:AAAA", "2001:db8:aaaa:bbbb:cccc:dddd:eeee:aaaa"],
    ["section 5, mixed notation of an IPv4-mapped address", "0:0:0:0:0:ffff:192.0.2.1", "::ffff:192.0.2.1"],
    ["section 5, mixed notation of an IPv4-mapped address", "::ffff:c000:201", "::ffff:192.0.2.1"],
  ])("%s: %s is written %s", (_, text, expected) => expect(canonical(text)).toBe(expected));

  test("section 3.3.2: 2001:db8:0:1::1 and 2001:db8::1:0:0:0:1 are one address", () => {
    expect(canonical("2001:db8:0:1::1")).toBe(canonical("2001:db8::1:0:0:0:1"));
  });

  test("section 3.3.3: 2001:db8::1:0:1 and 2001:db8:1::0:1 are two", () => {
    expect(canonical("2001:db8::1:0:1")).not.toBe(canonical("2001:db8:1::0:1"));
  });

  test("section 6: a port belongs to no address", () => {
    expect(cellAnswer(() => canonical("[2001:db8::1]:80"))).toMatch(/^#VALUE! address .* has brackets/);
  });
});

describe("RFC 6052 section 2.4 table 1: 192.0.2.33 embedded under prefixes of six lengths", () => {
  // The /64 row is printed as 2001:db8:122:344:c0:2:2100::, which shortens one zero group alone; RFC 5952 section 4.2.2 forbids that.
  test.each([
    ["2001:db8::/32", "2001:db8:c000:221::"],
    ["2001:db8:100::/40", "2001:db8:1c0:2:21::"],
    ["2001:db8:122::/48", "2001:db8:122:c000:2:2100::"],
    ["2001:db8:122:300::/56", "2001:db8:122:3c0:0:221::"],
    ["2001:db8:122:344::/64", "2001:db8:122:344:c0:2:2100::"],
    ["2001:db8:122:344::/96", "2001:db8:122:344::192.0.2.33"],
    ["64:ff9b::/96", "64:ff9b::192.0.2.33"],
  ])("%s: %s", (prefix, address) => {
    expect(contains(prefix, address)).toBe(true);
    expect(`${network(`${address}/${prefix.split("/")[1]}`)}/${prefix.split("/")[1]}`).toBe(prefix);
  });

  test.each([
    ["2001:db8:122:344::192.0.2.33", "2001:db8:122:344::c000:221"],
    ["64:ff9b::192.0.2.33", "64:ff9b::c000:221"],
    ["2001:db8:122:344:c0:2:2100::", "2001:db8:122:344:c0:2:2100:0"],
  ])("%s is written %s by RFC 5952", (text, expected) => expect(canonical(text)).toBe(expected));
});

describe("RFC 6177: a site gets a /48 or a /56", () => {
  test.each([
    ["2001:db8:1::/48", 65_536],
    ["2001:db8:1:100::/56", 256],
  ])("%s has %i subnets of /64", (prefix, count) => expect(splitPrefix(prefix, 64)).toHaveLength(count));
});
