import { purpose } from "../../src/functions/addresses";
import { formatAddress, formatPrefix, lastAddress, parsePrefix, specialPurposeOf, specialPurposes } from "../../src/planning/addressing";

/** A flag as the registry prints it. */
function printed(flag: boolean | null): string {
  return flag === true ? "T" : flag === false ? "F" : "–";
}

function expectRow(blocks: string, name: string, document: string, date: string, flags: string): void {
  for (const block of blocks.split(", ")) {
    const found = specialPurposeOf(parsePrefix(block));
    expect(found).not.toBeNull();
    expect([found!.prefix, found!.name].join(" ")).toBe([parsePrefix(block), name].join(" "));
    for (const number of document.match(/RFC\d+/g)!) expect(found!.source).toContain(number.replace("RFC", "RFC "));
    expect(found!.date).toBe(date.replace(" – ", " to "));
    const row = [found!.isSource, found!.isDestination, found!.isForwardable, found!.isGloballyReachable, found!.isReservedByProtocol];
    expect(row.map(printed).join(" ")).toBe(flags.replace("N/A", "–"));
  }
}

// Columns: block, name, document, month, and Source, Destination, Forwardable, Globally Reachable, Reserved-by-Protocol.
describe("IANA IPv4 Special-Purpose Address Registry as of 2026-07-18 (RFC 6890, RFC 8190)", () => {
  test.each([
    ["0.0.0.0/8", "This network", "[RFC791], Section 3.2", "1981-09", "T F F F T"],
    ["0.0.0.0/32", "This host on this network", "[RFC1122], Section 3.2.1.3", "1981-09", "T F F F T"],
    ["10.0.0.0/8", "Private-Use", "[RFC1918]", "1996-02", "T T T F F"],
    ["100.64.0.0/10", "Shared Address Space", "[RFC6598]", "2012-04", "T T T F F"],
    ["127.0.0.0/8", "Loopback", "[RFC1122], Section 3.2.1.3", "1981-09", "F F F F T"],
    ["169.254.0.0/16", "Link Local", "[RFC3927]", "2005-05", "T T F F T"],
    ["172.16.0.0/12", "Private-Use", "[RFC1918]", "1996-02", "T T T F F"],
    ["192.0.0.0/24", "IETF Protocol Assignments", "[RFC6890], Section 2.1", "2010-01", "F F F F F"],
    ["192.0.0.0/29", "IPv4 Service Continuity Prefix", "[RFC7335]", "2011-06", "T T T F F"],
    ["192.0.0.8/32", "IPv4 dummy address", "[RFC7600]", "2015-03", "T F F F F"],
    ["192.0.0.9/32", "Port Control Protocol Anycast", "[RFC7723]", "2015-10", "T T T T F"],
    ["192.0.0.10/32", "Traversal Using Relays around NAT Anycast", "[RFC8155]", "2017-02", "T T T T F"],
    ["192.0.0.170/32, 192.0.0.171/32", "NAT64/DNS64 Discovery", "[RFC8880][RFC7050], Section 2.2", "2013-02", "F F F F T"],
    ["192.0.2.0/24", "Documentation (TEST-NET-1)", "[RFC5737]", "2010-01", "F F F F F"],
    ["192.31.196.0/24", "AS112-v4", "[RFC7535]", "2014-12", "T T T T F"],
    ["192.52.193.0/24", "AMT", "[RFC7450]", "2014-12", "T T T T F"],
    ["192.88.99.0/24", "Deprecated (6to4 Relay Anycast)", "[RFC7526]", "2001-06 – 2015-03", "– – – – –"],
    ["192.88.99.2/32", "6a44-relay anycast address", "[RFC6751]", "2012-10", "T T T F F"],
    ["192.168.0.0/16", "Private-Use", "[RFC1918]", "1996-02", "T T T F F"],
    ["192.175.48.0/24", "Direct Delegation AS112 Service", "[RFC7534]", "1996-01", "T T T T F"],
    ["198.18.0.0/15", "Benchmarking", "[RFC2544]", "1999-03", "T T T F F"],
    ["198.51.100.0/24", "Documentation (TEST-NET-2)", "[RFC5737]", "2010-01", "F F F F F"],
    ["203.0.113.0/24", "Documentation (TEST-NET-3)", "[RFC5737]", "2010-01", "F F F F F"],
    ["240.0.0.0/4", "Reserved", "[RFC1112], Section 4", "1989-08", "F F F F T"],
    ["255.255.255.255/32", "Limited Broadcast", "[RFC8190][RFC919], Section 7", "1984-10", "F T F F T"],
  ])("%s is %s (%s, %s): %s", expectRow);

  test("has no further row", () => {
    expect(specialPurposes.filter(({ prefix, name }) => prefix.family === 4 && name !== "Multicast")).toHaveLength(26);
  });
});

describe("IANA IPv6 Special-Purpose Address Registry as of 2026-07-18 (RFC 6890, RFC 8190)", () => {
  test.each([
    ["::1/128", "Loopback Address", "[RFC4291]", "2006-02", "F F F F T"],
    ["::/128", "Unspecified Address", "[RFC4291]", "2006-02", "T F F F T"],
    ["::ffff:0:0/96", "IPv4-mapped Address", "[RFC4291]", "2006-02", "F F F F T"],
    ["64:ff9b::/96", "IPv4-IPv6 Translat.", "[RFC6052]", "2010-10", "T T T T F"],
    ["64:ff9b:1::/48", "IPv4-IPv6 Translat.", "[RFC8215]", "2017-06", "T T T F F"],
    ["100::/64", "Discard-Only Address Block", "[RFC6666]", "2012-06", "T T T F F"],
    ["100:0:0:1::/64", "Dummy IPv6 Prefix", "[RFC9780]", "2025-04", "T F F F F"],
    ["2001::/23", "IETF Protocol Assignments", "[RFC2928]", "2000-09", "F F F F F"],
    ["2001::/32", "TEREDO", "[RFC4380][RFC8190]", "2006-01", "T T T N/A F"],
    ["2001:1::1/128", "Port Control Protocol Anycast", "[RFC7723]", "2015-10", "T T T T F"],
    ["2001:1::2/128", "Traversal Using Relays around NAT Anycast", "[RFC8155]", "2017-02", "T T T T F"],
    ["2001:1::3/128", "DNS-SD Service Registration Protocol Anycast", "[RFC9665]", "2024-04", "T T T T F"],
    ["2001:2::/48", "Benchmarking", "[RFC5180][RFC Errata 1752]", "2008-04", "T T T F F"],
    ["2001:3::/32", "AMT", "[RFC7450]", "2014-12", "T T T T F"],
    ["2001:4:112::/48", "AS112-v6", "[RFC7535]", "2014-12", "T T T T F"],
    ["2001:10::/28", "Deprecated (previously ORCHID)", "[RFC4843]", "2007-03 – 2014-03", "– – – – –"],
    ["2001:20::/28", "ORCHIDv2", "[RFC7343]", "2014-07", "T T T T F"],
    ["2001:30::/28", "Drone Remote ID Protocol Entity Tags (DETs) Prefix", "[RFC9374]", "2022-12", "T T T T F"],
    ["2001:db8::/32", "Documentation", "[RFC3849]", "2004-07", "F F F F F"],
    ["2002::/16", "6to4", "[RFC3056]", "2001-02", "T T T N/A F"],
    ["2620:4f:8000::/48", "Direct Delegation AS112 Service", "[RFC7534]", "2011-05", "T T T T F"],
    ["3fff::/20", "Documentation", "[RFC9637]", "2024-07", "F F F F F"],
    ["5f00::/16", "Segment Routing (SRv6) SIDs", "[RFC9602]", "2024-04", "T T T F F"],
    ["fc00::/7", "Unique-Local", "[RFC4193][RFC8190]", "2005-10", "T T T F F"],
    ["fe80::/10", "Link-Local Unicast", "[RFC4291]", "2006-02", "T T F F T"],
  ])("%s is %s (%s, %s): %s", expectRow);

  test("has no further row", () => {
    expect(specialPurposes.filter(({ prefix, source }) => prefix.family === 6 && !["RFC 3879"].includes(source) && String(prefix) !== "ff00::/8")).toHaveLength(25);
  });
});

describe("RFC 6890 section 2.2.1: what cannot be a destination is neither forwardable nor globally reachable", () => {
  test.each(specialPurposes.filter(({ isDestination }) => isDestination === false).map((block) => [`${formatPrefix(block.prefix)} ${block.name}`, block] as const))("%s", (_, block) => {
    expect(block.isForwardable).toBe(false);
    expect(block.isGloballyReachable).toBe(false);
  });
});

describe("the most specific block counts", () => {
  test.each([
    ["0.0.0.0", "This host on this network"],
    ["0.0.0.1", "This network"],
    ["10.255.255.255", "Private-Use"],
    ["11.0.0.0", "global"],
    ["100.64.0.0", "Shared Address Space"],
    ["100.127.255.255", "Shared Address Space"],
    ["100.128.0.0", "global"],
    ["172.32.0.0", "global"],
    ["192.0.0.8", "IPv4 dummy address"],
    ["192.0.0.11", "IETF Protocol Assignments"],
    ["192.88.99.1", "Deprecated (6to4 Relay Anycast)"],
    ["192.88.99.2", "6a44-relay anycast address"],
    ["255.255.255.254", "Reserved"],
    ["255.255.255.255", "Limited Broadcast"],
    ["2001:2::1", "Benchmarking"],
    ["2001:1::4", "IETF Protocol Assignments"],
    ["2001::1", "TEREDO"],
    ["2001:200::", "global"],
    ["100:0:0:1::5", "Dummy IPv6 Prefix"],
    ["100:0:0:2::", "global"],
    ["fd12:3456:789a:1::1", "Unique-Local"],
    ["febf::1", "Link-Local Unicast"],
  ])("%s: %s", (address, name) => expect(purpose(address)).toBe(name));
});

describe("blocks outside the registries: multicast (RFC 5771, RFC 4291 section 2.7) and deprecated site-local (RFC 3879)", () => {
  test.each([
    ["224.0.0.1", "Multicast"],
    ["239.255.255.255", "Multicast"],
    ["ff02::1", "Multicast"],
    ["fec0::1", "Deprecated (Site-Local Unicast)"],
    ["feff::1", "Deprecated (Site-Local Unicast)"],
  ])("%s: %s", (address, name) => expect(purpose(address)).toBe(name));
});

describe("block ends: RFC 6598 and RFC 2544 appendix C", () => {
  test.each([
    ["100.64.0.0/10", "100.127.255.255"],
    ["198.18.0.0/15", "198.19.255.255"],
  ])("%s ends at %s", (prefix, last) => expect(formatAddress(lastAddress(parsePrefix(prefix)))).toBe(last));
});
