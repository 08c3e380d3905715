import { excludeCidr, mergeCidr } from "cidr-tools";
import * as ipaddr from "ipaddr.js";
import { spawnSync } from "node:child_process";
import {
  addressAt,
  broadcastAddress,
  countAddresses,
  coverAsText,
  firstHost,
  formatAddress,
  formatMask,
  formatPrefix,
  formatWildcard,
  lastAddress,
  lastHost,
  mergeRanges,
  networkOf,
  parseInterface,
  parsePrefix,
  parseRanges,
  rangesOfPrefixes,
  reverseName,
  subtractRanges,
  type Family,
} from "../../../src/planning/addressing";

/** Random numbers that are the same on every run (Numerical Recipes' linear congruential generator). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => (state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0);
}

function randomInterfaces(family: Family, count: number): string[] {
  const next = numbers(family);
  return Array.from({ length: count }, () => {
    const value = Array.from({ length: family === 4 ? 1 : 4 }, () => (next() % 5 === 0 ? 0 : next())).reduce((sum, word) => (sum << 32n) | BigInt(word), 0n);
    return `${formatAddress(addressAt(family, value))}/${next() % (family === 4 ? 33 : 129)}`;
  });
}

/** Prefixes crowded into one region, so that they overlap, touch and leave gaps. */
function crowded(family: Family, count: number): string[] {
  const next = numbers(family + 10);
  const base = family === 4 ? 0x0a00_0000n : 0x2001_0db8n << 96n;
  const bits = family === 4 ? 32 : 128;
  return Array.from({ length: count }, () => formatPrefix(networkOf(addressAt(family, base + BigInt(next() % 2 ** 22)), bits - (next() % 10))));
}

const whole = { 4: "10.0.0.0/10", 6: "2001:db8::/106" } as const;
const interfaces = { 4: randomInterfaces(4, 20_000), 6: randomInterfaces(6, 20_000) };
const sets = { 4: crowded(4, 5000), 6: crowded(6, 5000) };

/** Every fact as one line, in the words of no library. */
function factsOf(text: string): string {
  const { address, length, network } = parseInterface(text);
  const hosts = network.family === 4 ? [formatMask(length), formatWildcard(length)] : [];
  return [formatPrefix(network), formatAddress(lastAddress(network)), countAddresses(network), ...hosts, reverseName(address)].join(" ");
}

function merged(family: Family): string[] {
  return coverAsText(mergeRanges(parseRanges(sets[family], family)));
}

function gaps(family: Family): string[] {
  return coverAsText(subtractRanges(rangesOfPrefixes(family, [parsePrefix(whole[family])]), parseRanges(sets[family], family)));
}

describe.each<Family>([4, 6])("against npm libraries, IPv%i", (family) => {
  test("network and last address of 20,000 random prefixes are those of ipaddr.js", () => {
    const library = family === 4 ? ipaddr.IPv4 : ipaddr.IPv6;
    const write = (address: ipaddr.IPv4 | ipaddr.IPv6): string => (address instanceof ipaddr.IPv6 && !address.isIPv4MappedAddress() ? address.toRFC5952String() : address.toString());
    const differing = interfaces[family].filter((text) => {
      const { network } = parseInterface(text);
      const [address, length] = ipaddr.parseCIDR(text);
      const last = library.broadcastAddressFromCIDR(text);
      const mapped = family === 6 && (ipaddr.IPv6.parse(String(network.first)).isIPv4MappedAddress() || (last as ipaddr.IPv6).isIPv4MappedAddress());
      if (mapped) return false;
      const ours = [formatAddress(network.first), formatAddress(lastAddress(network)), network.length, `ipv${family}`];
      return String(ours) !== String([write(library.networkAddressFromCIDR(text)), write(last), length, address.kind()]);
    });
    expect(differing).toEqual([]);
  });

  test("merge and gaps are those of cidr-tools, as sets", () => {
    expect(new Set(merged(family))).toEqual(new Set(mergeCidr(sets[family])));
    expect(new Set(gaps(family))).toEqual(new Set(excludeCidr([whole[family]], sets[family])));
  });
});

/** Prints the facts of each prefix, the merged set and the gaps; IPv4-mapped addresses in mixed notation, which older releases do not write. */
const script = `
import sys, json, ipaddress
def text(a):
    m = getattr(a, "ipv4_mapped", None)
    return "::ffff:" + str(m) if m is not None else str(a)
job = json.load(sys.stdin)
out = {}
for family, texts in job["interfaces"].items():
    lines = []
    for t in texts:
        i = ipaddress.ip_interface(t); n = i.network
        more = [str(n.netmask), str(n.hostmask)] if n.version == 4 else []
        lines.append(" ".join([text(n.network_address) + "/" + str(n.prefixlen), text(n.broadcast_address), str(n.num_addresses)] + more + [i.ip.reverse_pointer]))
    nets = [ipaddress.ip_network(t) for t in job["sets"][family]]
    merged = list(ipaddress.collapse_addresses(nets))
    whole = ipaddress.ip_network(job["whole"][family])
    gaps, at = [], int(whole.network_address)
    make = type(whole.network_address)
    for n in merged:
        if int(n.network_address) > at:
            gaps += ipaddress.summarize_address_range(make(at), make(int(n.network_address) - 1))
        at = int(n.broadcast_address) + 1
    if at <= int(whole.broadcast_address):
        gaps += ipaddress.summarize_address_range(make(at), whole.broadcast_address)
    out[family] = {"facts": lines, "merged": [str(n) for n in merged], "gaps": [str(n) for n in gaps]}
json.dump(out, sys.stdout)
`;

interface Answer {
  readonly facts: readonly string[];
  readonly merged: readonly string[];
  readonly gaps: readonly string[];
}

const python = spawnSync("python3", ["-c", script], { input: JSON.stringify({ interfaces, sets, whole }), encoding: "utf8", maxBuffer: 2 ** 28 });
const present = python.error === undefined;
if (!present) console.warn("python3 is not here: the differential tests against it did NOT run. The npm libraries did.");

(present ? describe : describe.skip).each<Family>([4, 6])("against Python's ipaddress, IPv%i", (family) => {
  const answers = (): Answer => (JSON.parse(python.stdout) as Record<Family, Answer>)[family];

  test("every fact of 20,000 random prefixes", () => {
    expect(interfaces[family].map(factsOf)).toEqual(answers().facts);
  });

  test("merge and gaps", () => {
    expect(merged(family)).toEqual(answers().merged);
    expect(gaps(family)).toEqual(answers().gaps);
  });

  test("first and last host are the ends without network and broadcast address, but for the two longest lengths", () => {
    for (const text of interfaces[family].slice(0, 2000)) {
      const { network } = parseInterface(text);
      const bits = family === 4 ? 32 : 128;
      const [ends, last] = [network.length >= bits - 1, lastAddress(network)];
      expect(formatAddress(firstHost(network)) === formatAddress(network.first)).toBe(ends);
      expect(formatAddress(lastHost(network)) === formatAddress(last)).toBe(ends || family === 6);
      if (family === 4 && !ends) expect(formatAddress(broadcastAddress(network))).toBe(formatAddress(last));
    }
  });
});
