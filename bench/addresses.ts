// Addresses: facts, containment, sets and plans from text to text, beside the general libraries and a C program, with their answers compared first.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { containsCidr, excludeCidr, mergeCidr, parseCidr } from "cidr-tools";
import { Address4, Address6 } from "ip-address";
import ipaddr from "ipaddr.js";
import { Netmask } from "netmask";
import { assign, clashes, contains, firstHost, gaps, lastHost, merge, network, nextFree, portPlan } from "../src/functions/addresses";
import { installCustomFunctions } from "../src/functions/support/custom-functions";
import {
  addressAt,
  containsText,
  coverAsText,
  formatAddress,
  formatPrefix,
  mergeRanges,
  networkOf,
  parseAddress,
  parsePrefix,
  parseRanges,
  rangesOfPrefixes,
  readSubnet,
  subtractRanges,
  type Family,
} from "../src/planning/addressing";
import { medians, printBench, sink, type BenchLine } from "./support";

const count = 100_000;

export default function benchAddresses(): void {
  installCustomFunctions();
  printBench(`Three facts of ${count} prefixes: network, first and last host, text in and text out`, [...factLines(4), ...factLines(6)]);
  printBench(`Containment of ${count} pairs, text in`, [...containmentLines(4), ...containmentLines(6)]);
  printBench(`MERGE and GAPS of ${count} random prefixes, text in and text out`, [...mergeLines(4), ...gapLines(4), ...mergeLines(6), ...gapLines(6)]);
  printBench("MERGE: growth from 10,000 to a million prefixes", growthLines());
  printBench("ASSIGN and PORTPLAN of 65,000 addresses with 30,000 kept", planLines());
  printBench("Other", otherLines());
}

/** Random numbers that are the same on every run (Numerical Recipes' linear congruential generator). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => (state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0);
}

/** Random interfaces: any address with a length that a subnet may have. */
function randomInterfaces(family: Family): string[] {
  const next = numbers(family);
  return Array.from({ length: count }, () => {
    const low = BigInt(next());
    const value = family === 4 ? low : (0x2001_0db8n << 96n) | (BigInt(next()) << 64n) | (BigInt(next()) << 32n) | low;
    return `${formatAddress(addressAt(family, value))}/${family === 4 ? 8 + (next() % 23) : 32 + (next() % 95)}`;
  });
}

/** Random prefixes inside 10.0.0.0/8 or a /40, so that they overlap, touch and leave gaps. */
function randomPrefixes(family: Family, many = count): string[] {
  const next = numbers(family + 20);
  const base = family === 4 ? 0x0a00_0000n : 0x2001_0db8n << 96n;
  const bits = family === 4 ? 32 : 128;
  return Array.from({ length: many }, () => formatPrefix(networkOf(addressAt(family, base + (BigInt(next() & 0xff_ffff) << (family === 4 ? 0n : 64n))), (family === 4 ? bits : 64) - (next() % 9))));
}

interface Contender {
  readonly name: string;
  readonly run: () => unknown;
}

/** Measures ours and its peers interleaved, checks that all give one answer, and holds ours against the fastest. */
function against(what: string, ours: () => unknown, peers: readonly Contender[], atLeast: number, target: string, runs = 5): BenchLine[] {
  const wanted = canonical(ours());
  for (const { name, run } of peers) if (canonical(run()) !== wanted) throw new Error(`${what}: ${name} gives another answer`);
  const [own, ...others] = medians([ours, ...peers.map(({ run }) => run)], runs) as [number, ...number[]];
  const fastest = Math.min(...others);
  const ratio = fastest / own;
  return [
    { what, measured: `${own.toFixed(1)} ms, ${ratio.toFixed(2)} times the rate of the fastest${memory(ours)}`, target, holds: ratio >= atLeast },
    ...peers.map(({ name }, place) => ({ what: `  ${name}`, measured: `${others[place]!.toFixed(1)} ms` })),
  ];
}

function canonical(answer: unknown): string {
  return JSON.stringify(Array.isArray(answer) && answer.every((one) => typeof one === "string") ? [...answer].sort() : answer);
}

/** Says how much the heap grows while `work` runs once, at its end, before anything is collected. */
function memory(work: () => unknown): string {
  (globalThis as { gc?: () => void }).gc?.();
  const before = process.memoryUsage();
  sink(work());
  const after = process.memoryUsage();
  const grown = after.heapUsed + after.arrayBuffers - before.heapUsed - before.arrayBuffers;
  return `, ${(Math.max(0, grown) / 2 ** 20).toFixed(0)} MiB`;
}

function factLines(family: Family): BenchLine[] {
  const texts = randomInterfaces(family);
  const ours = (): string[][] => texts.map((text) => factsOf(readSubnet(text)));
  const cells = (): string[][] => texts.map((text) => [network(text), firstHost(text), lastHost(text)]);
  if (canonical(cells()) !== canonical(ours())) throw new Error("the cells give other facts than the subnet");
  const peers: Contender[] = [
    {
      // It has no writer of its own for the two values, so it gives the network from its text and steps on ipaddr.js.
      name: "cidr-tools, written with ipaddr.js",
      run: () =>
        texts.map((text) => {
          const { start, end } = parseCidr(text);
          return [writeValue(start, family), writeValue(start + 1n, family), writeValue(family === 4 ? end - 1n : end, family)];
        }),
    },
    { name: "ipaddr.js", run: () => texts.map((text) => ipaddrFacts(text, family)) },
    {
      name: "ip-address",
      run: () =>
        texts.map((text) => {
          const one = family === 4 ? new Address4(text) : new Address6(text);
          const last = family === 4 ? one.endAddressExclusive() : one.endAddress();
          return [one.startAddress().correctForm(), one.startAddressExclusive().correctForm(), last.correctForm()];
        }),
    },
  ];
  // The IPv6 text of netmask is not canonical, so it can only be compared in IPv4.
  if (family === 4) peers.push({ name: "netmask", run: () => texts.map((text) => netmaskFacts(new Netmask(text))) });
  const lines = against(`IPv${family}, one read and three facts`, ours, peers, 3, "at least 3 times");
  const [own] = medians([cells], 5) as [number];
  return [...lines, { what: "  three cells: NETWORK, FIRSTHOST, LASTHOST", measured: `${own.toFixed(1)} ms` }];
}

function factsOf(subnet: { network: string; firstHost: string; lastHost: string }): string[] {
  return [subnet.network, subnet.firstHost, subnet.lastHost];
}

function netmaskFacts({ base, first, last }: Netmask): string[] {
  return [base, first, last];
}

function writeValue(value: bigint, family: Family): string {
  if (family === 4) return new ipaddr.IPv4([Number(value >> 24n), Number((value >> 16n) & 255n), Number((value >> 8n) & 255n), Number(value & 255n)]).toString();
  return new ipaddr.IPv6(Array.from({ length: 8 }, (_, group) => Number((value >> BigInt(112 - 16 * group)) & 0xffffn))).toRFC5952String();
}

function ipaddrFacts(text: string, family: Family): string[] {
  if (family === 4) {
    const first = ipaddr.IPv4.networkAddressFromCIDR(text);
    const last = ipaddr.IPv4.broadcastAddressFromCIDR(text);
    return [first.toString(), stepped(first.octets, 1), stepped(last.octets, -1)];
  }
  const first = ipaddr.IPv6.networkAddressFromCIDR(text);
  const own = first.toRFC5952String();
  first.parts[7]! += 1;
  return [own, first.toRFC5952String(), ipaddr.IPv6.broadcastAddressFromCIDR(text).toRFC5952String()];
}

function stepped(octets: readonly number[], step: number): string {
  return new ipaddr.IPv4([...octets.slice(0, 3), octets[3]! + step]).toString();
}

function containmentLines(family: Family): BenchLine[] {
  const outer = randomPrefixes(family);
  const inner = outer.map((_, place) => (place % 2 === 0 ? outer[place]! : outer[(place * 7919) % count]!));
  const counted = (holds: (outer: string, inner: string) => boolean) => (): number => {
    let sum = 0;
    for (let place = 0; place < count; place++) if (holds(outer[place]!, inner[place]!)) sum++;
    return sum;
  };
  const peers: Contender[] = [
    { name: "cidr-tools", run: counted((a, b) => containsCidr(a, b)) },
    { name: "ip-address", run: counted((a, b) => (family === 4 ? new Address4(b).isInSubnet(new Address4(a)) : new Address6(b).isInSubnet(new Address6(a)))) },
    {
      name: "ipaddr.js",
      run: counted((a, b) => {
        const [address, length] = ipaddr.parseCIDR(a);
        const [first, longer] = ipaddr.parseCIDR(b);
        return length <= longer && first.match([address, length] as [ipaddr.IPv4, number]);
      }),
    },
  ];
  if (family === 4) peers.push({ name: "netmask", run: counted((a, b) => new Netmask(a).contains(b)) });
  const lines = against(`IPv${family}`, counted(containsText), peers, 0.95, "within 5 % of the fastest", 9);
  const [own] = medians([counted(contains)]) as [number];
  return [...lines, { what: "  as CONTAINS cells", measured: `${own.toFixed(1)} ms` }];
}

function mergeLines(family: Family): BenchLine[] {
  const texts = randomPrefixes(family);
  const ours = (): string[] => coverAsText(mergeRanges(parseRanges(texts, family)));
  const rows = texts.map((text) => [text]);
  if (canonical(merge(rows).flat()) !== canonical(ours())) throw new Error("MERGE gives another answer");
  const lines = against(`MERGE, IPv${family}`, ours, [{ name: "cidr-tools", run: () => mergeCidr(texts) }], 2, "at least 2 times");
  const [cell] = medians([() => merge(rows)], 5) as [number];
  return [...lines, ...(family === 4 ? besideProgram("MERGE, IPv4", ours, [texts]) : []), { what: "  as one MERGE cell", measured: `${cell.toFixed(1)} ms` }];
}

function gapLines(family: Family): BenchLine[] {
  const texts = randomPrefixes(family);
  const whole = family === 4 ? "10.0.0.0/8" : "2001:db8::/38";
  const ours = (): string[] => coverAsText(subtractRanges(rangesOfPrefixes(family, [parsePrefix(whole)]), parseRanges(texts, family)));
  const rows = texts.map((text) => [text]);
  if (canonical(gaps(whole, rows).flat()) !== canonical(ours())) throw new Error("GAPS gives another answer");
  const lines = against(`GAPS, IPv${family}`, ours, [{ name: "cidr-tools", run: () => excludeCidr([whole], texts) }], 2, "at least 2 times");
  const [cell] = medians([() => gaps(whole, rows)], 5) as [number];
  return [...lines, ...(family === 4 ? besideProgram("GAPS, IPv4", ours, [[whole], texts]) : []), { what: "  as one GAPS cell", measured: `${cell.toFixed(1)} ms` }];
}

/** Holds ours against `iprange`, a C program for IPv4 sets, its whole process from file to text, where it is installed: the first list without those after it. */
function besideProgram(what: string, ours: () => string[], [first, ...without]: readonly [string[], ...string[][]]): BenchLine[] {
  const folder = mkdtempSync(join(tmpdir(), "bench-"));
  const write = (texts: readonly string[], name: string): string => {
    writeFileSync(join(folder, name), texts.join("\n"));
    return join(folder, name);
  };
  const files = [write(first, "first"), ...without.flatMap((texts, place) => ["--except", write(texts, `without-${place}`)])];
  const program = (): string[] => spawnSync("iprange", files, { encoding: "utf8", maxBuffer: 2 ** 28 }).stdout.trimEnd().split("\n");
  try {
    if (spawnSync("iprange", ["--version"]).error) return [{ what: `  ${what}: iprange is not installed`, measured: "" }];
    // It writes a single address without its length.
    if (canonical(program().map((text) => (text.includes("/") ? text : `${text}/32`))) !== canonical(ours())) throw new Error(`${what}: iprange gives another answer`);
    const [own, other] = medians([ours, program], 9) as [number, number];
    return [{ what: `  iprange, whole process`, measured: `${other.toFixed(1)} ms, ours ${own.toFixed(1)} ms`, target: "no slower", holds: own <= other }];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function growthLines(): BenchLine[] {
  const sizes = [10_000, 100_000, 1_000_000];
  const lists = sizes.map((size) => randomPrefixes(4, size));
  const times = lists.map((texts) => medians([() => mergeRanges(parseRanges(texts, 4))], 5)[0]!);
  return sizes.map((size, place) => {
    const exponent = place === 0 ? null : Math.log10(times[place]! / times[place - 1]!);
    const measured = `${times[place]!.toFixed(1)} ms${exponent === null ? "" : `, exponent ${exponent.toFixed(2)}`}${memory(() => mergeRanges(parseRanges(lists[place]!, 4)))}`;
    return { what: `${size} prefixes`, measured, ...(exponent === null ? {} : { target: "exponent below 1.3 (n log n)", holds: exponent < 1.3 }) };
  });
}

function planLines(): BenchLine[] {
  const names = Array.from({ length: 65_000 }, (_, place) => [`port ${place}`]);
  const kept = Array.from({ length: 30_000 }, (_, place) => [`port ${2 * place + 1}`, formatAddress(addressAt(4, 0x0a00_0008n + BigInt(2 * place)))]);
  const arrays = Array.from({ length: 8125 }, (_, place) => [`array ${place}`, 2, 4]);
  const networks = [
    ["left", "10.0.0.0/16", "none"],
    ["right", "10.1.0.0/16", "none"],
  ];
  const keptPorts = portPlan(arrays, networks)
    .slice(1)
    .filter((_, place) => place % 13 < 6)
    .slice(0, 30_000)
    .map(([array, controller, port, , address]) => [array, controller, port, address]);
  const bare = (): unknown => {
    const read = kept.map(([, address]) => parseAddress(address!));
    return [read, names.map((_, place) => formatAddress(addressAt(4, 0x0a00_0001n + BigInt(place))))];
  };
  const assigning = (): unknown => assign("10.0.0.0/8", names, kept);
  const planning = (): unknown => portPlan(arrays, networks, keptPorts);
  const [own, ports, baseline] = medians([assigning, planning, bare]) as [number, number, number];
  return [
    { what: `only reading 30,000 and writing 65,000 addresses`, measured: `${baseline.toFixed(1)} ms` },
    { what: "ASSIGN", measured: `${own.toFixed(1)} ms, ${(own / baseline).toFixed(2)} times${memory(assigning)}`, target: "under 4 times", holds: own / baseline < 4 },
    { what: `PORTPLAN, ${keptPorts.length} kept`, measured: `${ports.toFixed(1)} ms, ${(ports / baseline).toFixed(2)} times${memory(planning)}`, target: "under 4 times", holds: ports / baseline < 4 },
  ];
}

function otherLines(): BenchLine[] {
  const prefixes = randomInterfaces(4).map((text) => [`${readSubnet(text).network}/${text.split("/")[1]!}`]);
  const equal = Array.from({ length: count }, () => ["10.0.0.0/8"]);
  const million = Array.from({ length: 1_000_000 }, (_, place) => [formatAddress(addressAt(4, 0x0a00_0001n + BigInt(place)))]);
  const works: Contender[] = [
    { name: `CLASHES of ${count} random prefixes`, run: () => clashes(prefixes) },
    { name: `CLASHES of ${count} equal prefixes, five milliard pairs`, run: () => clashes(equal) },
    { name: "NEXTFREE in a /8 with a million taken", run: () => nextFree("10.0.0.0/8", million, 10) },
  ];
  const times = medians(works.map(({ run }) => run), 5);
  return works.map(({ name, run }, place) => ({ what: name, measured: `${times[place]!.toFixed(1)} ms${memory(run)}` }));
}
