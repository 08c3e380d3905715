import { assign, contains, firstHost, hostCount, lastHost, nextFree, purpose, subnet } from "../../src/functions/addresses";
import { cellAnswer } from "../support/cell-answer";

function fact(prefix: string, name: string): readonly unknown[] {
  return subnet(prefix).find(([fact]) => fact === name)!;
}

describe("RFC 4291 section 2.6.1: interface identifier zero is the subnet-router anycast address", () => {
  test("it is no host of a /64", () => {
    expect(firstHost("2001:db8:0:1::/64")).toBe("2001:db8:0:1::1");
    expect(fact("2001:db8:0:1::/64", "Network")).toEqual(["Network", "2001:db8:0:1::", expect.stringContaining("RFC 4291")]);
    expect(cellAnswer(() => assign("2001:db8:0:1::/64", [["a"]], [["a", "2001:db8:0:1::"]]))).toMatch(/anycast/);
  });

  test("every other address of a /64 is one", () => {
    expect(lastHost("2001:db8:0:1::/64")).toBe("2001:db8:0:1:ffff:ffff:ffff:ffff");
    expect(fact("2001:db8:0:1::/64", "Hosts")[1]).toBe("18446744073709551615");
    expect(hostCount("2001:db8:0:1::/64")).toBe(2 ** 64);
  });
});

describe("RFC 6164: /127 on links between routers", () => {
  test("section 5.1 and 6: both addresses are hosts, subnet-router anycast is off", () => {
    expect([firstHost("2001:db8::6/127"), lastHost("2001:db8::6/127"), hostCount("2001:db8::6/127")]).toEqual(["2001:db8::6", "2001:db8::7", 2]);
    expect(fact("2001:db8::6/127", "Hosts")[2]).toContain("RFC 6164");
  });

  test("section 5.2: a /64 with two routers and its anycast address has 2^64 - 3 addresses left", () => {
    expect(BigInt(String(fact("2001:db8::/64", "Addresses")[1])) - 3n).toBe(18446744073709551613n);
  });
});

describe("RFC 2526 section 2: reserved subnet anycast identifiers", () => {
  test("a /64 reserves fdff:ffff:ffff:ff80 to fdff:ffff:ffff:ffff", () => {
    expect(fact("2001:db8::/64", "Reserved anycast")[1]).toBe("2001:db8::fdff:ffff:ffff:ff80-2001:db8::fdff:ffff:ffff:ffff");
    expect(nextFree("2001:db8::/64", [["2001:db8::-2001:db8::fdff:ffff:ffff:ff7e"]], 2)).toEqual([
      ["2001:db8::fdff:ffff:ffff:ff7f"],
      ["2001:db8:0:0:fe00::"],
    ]);
  });

  test("the home agents' identifier 0x7e of a /64, fdff:ffff:ffff:fffe, is never given away", () => {
    expect(cellAnswer(() => assign("2001:db8::/64", [["a"]], [["a", "2001:db8::fdff:ffff:ffff:fffe"]]))).toMatch(/reserved/);
  });

  test("other subnets reserve their 128 highest identifiers", () => {
    expect(fact("2001:db8::/112", "Reserved anycast")[1]).toBe("2001:db8::ff80-2001:db8::ffff");
    expect(cellAnswer(() => nextFree("2001:db8::/112", [["2001:db8::-2001:db8::ff7f"]]))).toMatch(/^#N\/A prefix .* no free address left/);
  });
});

describe("RFC 4193: unique local addresses", () => {
  test("section 3.1: fc00::/7 holds fd00::/8", () => {
    expect(contains("fc00::/7", "fd00::/8")).toBe(true);
    expect(purpose("fd00::1")).toBe("Unique-Local");
  });

  test("section 3.1: a 40-bit global id and a 16-bit subnet id leave 64 bits", () => {
    expect(fact("fd00:1:2::/48", "Addresses")[1]).toBe("1208925819614629174706176");
  });

  test.each([
    [11, 137_438_953_472],
    [10, 274_877_906_944],
    [9, 549_755_813_888],
    [8, 1_099_511_627_776],
    [7, 2_199_023_255_552],
    [6, 4_398_046_511_104],
  ])("section 3.1.1: a /%i holds %i prefixes of /48", (length, count) => {
    const addresses = BigInt(String(fact(`::/${length}`, "Addresses")[1]));
    expect(addresses / 2n ** 80n).toBe(BigInt(count));
  });
});

describe("RFC 7421 section 3.1", () => {
  test("2000::/3 holds 2^45 = 35,184,372,088,832 prefixes of /48", () => {
    expect(BigInt(String(fact("2000::/3", "Addresses")[1])) / 2n ** 80n).toBe(35_184_372_088_832n);
  });
});
