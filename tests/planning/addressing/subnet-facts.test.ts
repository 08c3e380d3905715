import { parseInterface, subnetFacts } from "../../../src/planning/addressing";

/** The facts of one subnet, each as "value: note". */
function facts(text: string): Record<string, string> {
  return Object.fromEntries(subnetFacts(parseInterface(text)).map(({ fact, value, note }) => [fact, `${value}: ${note}`]));
}

const value = (text: string, wanted: string): unknown => subnetFacts(parseInterface(text)).find(({ fact }) => fact === wanted)?.value;

test("a /25 of TEST-NET-1 as RFC 1878 table 1-2, RFC 2317 section 4 and RFC 5737 have it", () => {
  expect(facts("192.0.2.9/25")).toEqual({
    Prefix: "192.0.2.0/25: RFC 4632 section 3.1",
    Address: "192.0.2.9: as given",
    Length: "25: 7 bits number the hosts",
    Netmask: "255.255.255.128: RFC 950",
    Wildcard: "0.0.0.127: the mask inverted",
    Network: "192.0.2.0: names the network, no host (RFC 950)",
    Broadcast: "192.0.2.127: all hosts of the network (RFC 919, RFC 950)",
    "First host": "192.0.2.1: without network and broadcast address (RFC 950)",
    "Last host": "192.0.2.126: without network and broadcast address (RFC 950)",
    Addresses: "128: 2^7",
    Hosts: "126: without network and broadcast address (RFC 950)",
    "Reverse zone": "0/25.2.0.192.in-addr.arpa: classless delegation; a dash may stand for the slash (RFC 2317)",
    Purpose: "Documentation (TEST-NET-1): 192.0.2.0/24, RFC 5737",
  });
});

describe("what the two longest lengths give up", () => {
  test("RFC 3021 section 2.1: both addresses of a /31 are hosts, and none is a broadcast address", () => {
    expect(facts("192.0.2.6/31")).toMatchObject({
      Network: "192.0.2.6: a host too (RFC 3021)",
      Broadcast: "none: a /31 has none (RFC 3021)",
      "First host": "192.0.2.6: both ends of a point-to-point link (RFC 3021)",
      "Last host": "192.0.2.7: both ends of a point-to-point link (RFC 3021)",
      Addresses: "2: 2^1",
    });
  });

  test("a /30 has two hosts between its network and its broadcast address (RFC 950)", () => {
    expect(facts("192.0.2.4/30")).toMatchObject({
      Network: "192.0.2.4: names the network, no host (RFC 950)",
      Broadcast: "192.0.2.7: all hosts of the network (RFC 919, RFC 950)",
      Hosts: "2: without network and broadcast address (RFC 950)",
    });
  });

  test("a /32 is one host", () => {
    expect(facts("192.0.2.6/32")).toMatchObject({ Network: "192.0.2.6: the host itself", Broadcast: "none: a /32 is one host", Hosts: "1: one host" });
  });

  test("RFC 6164 section 6: both addresses of a /127 are hosts", () => {
    expect(facts("2001:db8::6/127")).toMatchObject({
      Network: "2001:db8::6: a host too (RFC 6164)",
      "Last address": "2001:db8::7: IPv6 has no broadcast address (RFC 4291 section 2)",
      Hosts: "2: both ends of a point-to-point link (RFC 6164)",
    });
  });

  test("a /128 is one host, and a /126 gives up its subnet-router anycast address (RFC 4291 section 2.6.1)", () => {
    expect(facts("2001:db8::6/128")).toMatchObject({ Network: "2001:db8::6: the host itself", Hosts: "1: one host" });
    expect(facts("2001:db8::6/126")).toMatchObject({
      Network: "2001:db8::4: subnet-router anycast, no host (RFC 4291 section 2.6.1)",
      Hosts: "3: without the subnet-router anycast address (RFC 4291)",
    });
  });
});

describe("IPv6 subnets", () => {
  test("RFC 2526 section 2: the 128 highest identifiers of a /64 have the universal bit off", () => {
    expect(facts("2001:db8::9/64")).toMatchObject({
      Prefix: "2001:db8::/64: RFC 4291 section 2.3, written as RFC 5952",
      "Reserved anycast": "2001:db8::fdff:ffff:ffff:ff80-2001:db8::fdff:ffff:ffff:ffff: not given to hosts (RFC 2526)",
      Assignable: `${2n ** 64n - 1n - 128n}: hosts without reserved anycast (RFC 2526)`,
      "Reverse zone": "0.0.0.0.0.0.0.0.8.b.d.0.1.0.0.2.ip6.arpa: RFC 3596",
    });
    expect(facts("2001:db8::9/64")).not.toHaveProperty("Interface identifiers");
  });

  test("RFC 2526 section 2: of other lengths all bits of the highest identifiers are set, and 7 bits have no room for them", () => {
    expect(facts("2001:db8::9/120")).toMatchObject({
      "Reserved anycast": "2001:db8::80-2001:db8::ff: not given to hosts (RFC 2526)",
      Assignable: "127: hosts without reserved anycast (RFC 2526)",
      "Interface identifiers": "8 bits: hosts on a link want 64, a /64 (RFC 4291 section 2.5.1)",
    });
    expect(facts("2001:db8::9/121")).not.toHaveProperty("Reserved anycast");
  });

  test("RFC 3596 section 2.5: a zone ends at a hexadecimal digit, so a /62 has four", () => {
    expect(facts("2001:db8::/62")).toMatchObject({
      "Reverse zones": "0.0.0.0.0.0.0.0.8.b.d.0.1.0.0.2.ip6.arpa to 3.0.0.0.0.0.0.0.8.b.d.0.1.0.0.2.ip6.arpa: 4 zones (RFC 3596)",
    });
  });

  test("an address in no registry is global (RFC 6890 section 2.2)", () => {
    expect(facts("2001:200::/32")).toMatchObject({ Purpose: "global: in no special-purpose registry (RFC 6890)" });
  });
});

test("a count of up to 15 digits is a number, the digits that every number of a sheet keeps (IEEE 754 binary64); a longer one is text", () => {
  expect(value("2001:db8::/79", "Addresses")).toBe(562_949_953_421_312);
  expect(value("2001:db8::/78", "Addresses")).toBe("1125899906842624");
  expect(value("2001:db8::/79", "Hosts")).toBe(562_949_953_421_311);
  expect(value("::/0", "Addresses")).toBe("340282366920938463463374607431768211456");
});
