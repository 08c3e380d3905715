// Addresses: subnet facts, sets of prefixes, and plans that never move what is kept.
import * as plan from "../planning/addressing";
import { answer } from "./support/answer";
import { readAddressRows, readGrowthOrNone, readKeptPairs, readKeptPorts, readNames, readNeeds, readPortArrays, readPortNetworks } from "./support/address-rows";
import { readChoice } from "./support/choice";
import { readCount, readNumber } from "./support/numbers";
import { readAddress, readBlock, readInterface, readLength, readMaskLength, readPrefix, readPrefixRows, readRanges, readSubnetText, readText, readTextOrNone } from "./support/prefixes";
import { column, filledColumn, mostRows, readMostRows, rowsLeftOut } from "./support/spill";
import { readYearMonth } from "./support/year-month";

/**
 * Finds the network that an address lies in.
 * @customfunction NETWORK
 * @param prefix Address and length, such as 10.20.0.9/24 or 10.20.0.9 255.255.255.0.
 * @returns The address of the network.
 */
export function network(prefix: unknown): string {
  return answer("NETWORK", () => readSubnetText(prefix, "prefix").network);
}

/**
 * Finds the first address of a subnet that a host can hold.
 * @customfunction FIRSTHOST
 * @param prefix Subnet, or an address in it with the length, such as 10.20.0.0/24.
 * @returns The address.
 */
export function firstHost(prefix: unknown): string {
  return answer("FIRSTHOST", () => readSubnetText(prefix, "prefix").firstHost);
}

/**
 * Finds the last address of a subnet that a host can hold.
 * @customfunction LASTHOST
 * @param prefix Subnet, or an address in it with the length, such as 10.20.0.0/24.
 * @returns The address.
 */
export function lastHost(prefix: unknown): string {
  return answer("LASTHOST", () => readSubnetText(prefix, "prefix").lastHost);
}

/**
 * Counts the addresses of a subnet that hosts can hold. SUBNET shows every digit of a large count.
 * @customfunction HOSTCOUNT
 * @param prefix Subnet, or an address in it with the length, such as 192.0.2.0/26.
 * @returns The count.
 */
export function hostCount(prefix: unknown): number {
  return answer("HOSTCOUNT", () => Number(plan.countHosts(readInterface(prefix, "prefix").network)));
}

/**
 * Finds the broadcast address of an IPv4 subnet.
 * @customfunction BROADCAST
 * @param prefix Subnet, or an address in it with the length, such as 192.0.2.0/26.
 * @returns The address.
 */
export function broadcast(prefix: unknown): string {
  return answer("BROADCAST", () => plan.formatAddress(plan.broadcastAddress(readInterface(prefix, "prefix").network, "prefix")));
}

/**
 * Writes the dotted mask of an IPv4 subnet or prefix length.
 * @customfunction NETMASK
 * @param prefix Subnet such as 192.0.2.0/26, or a length such as 26.
 * @returns The mask, such as 255.255.255.192.
 */
export function netmask(prefix: unknown): string {
  return answer("NETMASK", () => plan.formatMask(readMaskLength(prefix, "prefix", "dotted mask")));
}

/**
 * Writes the wildcard (inverted mask) of an IPv4 subnet.
 * @customfunction WILDCARD
 * @param prefix Subnet such as 192.0.2.0/26, or a length such as 26.
 * @returns The wildcard, such as 0.0.0.63.
 */
export function wildcard(prefix: unknown): string {
  return answer("WILDCARD", () => plan.formatWildcard(readMaskLength(prefix, "prefix", "wildcard")));
}

/**
 * Finds the prefix length of a dotted mask. A mask with holes is refused.
 * @customfunction PREFIXLENGTH
 * @param mask Dotted mask, such as 255.255.252.0.
 * @returns The length, such as 22.
 */
export function prefixLength(mask: unknown): number {
  return answer("PREFIXLENGTH", () => plan.parseMask(readText(mask, "mask", "255.255.255.0"), "mask"));
}

/**
 * Lists every fact about a subnet, with exact counts and the RFC behind each.
 * @customfunction SUBNET
 * @param prefix Subnet, or an address in it with the length, such as 192.0.2.0/26 or 2001:db8::/64.
 * @returns A table: Fact, Value, Note.
 */
export function subnet(prefix: unknown): unknown[][] {
  return answer("SUBNET", () => [
    ["Fact", "Value", "Note"],
    ...plan.subnetFacts(readInterface(prefix, "prefix")).map(({ fact, value, note }) => [fact, value, note]),
  ]);
}

/**
 * Finds the host address at a position in a subnet.
 * @customfunction HOST
 * @param prefix Subnet, or an address in it with the length, such as 10.20.0.0/24.
 * @param position 1 for the first host, 2 for the next; -1 for the last, -2 for the one before.
 * @returns The address.
 */
export function host(prefix: unknown, position: unknown): string {
  return answer("HOST", () => {
    const subnet = readInterface(prefix, "prefix").network;
    const place = readNumber(position, "position", { min: -1e15, whole: true, example: 1 });
    return plan.formatAddress(plan.hostAt(subnet, BigInt(place), "position"));
  });
}

/**
 * Tells whether a prefix contains an address, a range or another prefix.
 * @customfunction CONTAINS
 * @param prefix Prefix that may contain it, such as 10.20.0.0/16.
 * @param inner Address or prefix that may lie in it, such as 10.20.3.0/24.
 * @returns TRUE or FALSE.
 */
export function contains(prefix: unknown, inner: unknown): boolean {
  return answer("CONTAINS", () => plan.containsText(readText(prefix, "prefix", "10.20.0.0/24"), readText(inner, "inner", "10.20.0.9 or 10.20.0.0/24")));
}

/**
 * Tells whether two prefixes have an address in common.
 * @customfunction OVERLAPS
 * @param a One prefix, such as 10.20.0.0/16.
 * @param b The other, such as 10.20.3.0/24.
 * @returns TRUE or FALSE.
 */
export function overlaps(a: unknown, b: unknown): boolean {
  return answer("OVERLAPS", () => {
    const one = readPrefix(a, "a");
    return plan.meetsBlock(one, readBlock(b, "b", one.family));
  });
}

/**
 * Lists the pairs of prefixes that overlap, and the rows they stand in.
 * @customfunction CLASHES
 * @param prefixes Range of prefixes of one family, such as {"10.20.0.0/16";"10.20.3.0/24"}.
 * @param [most] Most pairs to list, 10000 when left out; the last row says how many more there are.
 * @returns A table: First, Second, First row, Second row.
 */
export function clashes(prefixes: unknown[][], most?: unknown): unknown[][] {
  return answer("CLASHES", () => {
    const { ranges, rows, texts } = readPrefixRows(prefixes, "prefixes");
    const listed = readMostRows(most, "most") ?? 10_000;
    const { pairs, total } = plan.findClashes(ranges, listed);
    return [
      ["First", "Second", "First row", "Second row"],
      ...pairs.map(({ first, second }) => [texts[first]!, texts[second]!, rows[first]!, rows[second]!]),
      ...rowsLeftOut(total - pairs.length, 4),
    ];
  });
}

/**
 * Splits a prefix into subnets of one length.
 * @customfunction SPLIT
 * @param prefix Prefix to split, such as 192.0.2.0/24.
 * @param length Length of the subnets, such as 26.
 * @param [most] Most subnets to list, such as 100; needed where there are more than a sheet has rows.
 * @returns A column of subnets.
 */
export function split(prefix: unknown, length: unknown, most?: unknown): string[][] {
  return answer("SPLIT", () => {
    const whole = readPrefix(prefix, "prefix");
    const subnetLength = readLength(length, "length", whole.family);
    return column(plan.splitPrefix(whole, subnetLength, readMostRows(most, "most"), mostRows).map(plan.formatPrefix));
  });
}

/**
 * Cuts a subnet for each need out of a prefix: the first free one that holds it. Kept ones never move.
 * @customfunction CARVE
 * @param prefix Prefix to cut from, such as 10.20.0.0/16.
 * @param needs Range: name, hosts (devices and gateway), and the prefix to keep, if any.
 * @param [growth] Share by which every need will grow, such as 20%.
 * @param [taken] Range of addresses and prefixes not to touch, such as {"10.20.0.0/24";"10.20.9.1"}.
 * @returns A table: Need, Hosts, Prefix, First host, Last host.
 */
export function carve(prefix: unknown, needs: unknown[][], growth?: unknown, taken?: unknown[][]): unknown[][] {
  return answer("CARVE", () => {
    const whole = readPrefix(prefix, "prefix");
    const wanted = readNeeds(needs, "needs", whole.family);
    const carved = plan.carve(whole, wanted, readGrowthOrNone(growth, "growth"), readRanges(taken, "taken", whole.family));
    return [
      ["Need", "Hosts", "Prefix", "First host", "Last host"],
      ...carved.map((one) => [
        one.need.name,
        one.need.hosts,
        plan.formatPrefix(one.prefix),
        plan.formatAddress(one.firstHost),
        plan.formatAddress(one.lastHost),
      ]),
    ];
  });
}

/**
 * Finds the first free subnet of a length in a prefix.
 * @customfunction NEXTSUBNET
 * @param prefix Prefix to look in, such as 10.20.0.0/16.
 * @param length Length of the subnet, such as 24.
 * @param [taken] Range of addresses and prefixes in use, such as {"10.20.0.0/24";"10.20.1.0/24"}.
 * @returns The subnet.
 */
export function nextSubnet(prefix: unknown, length: unknown, taken?: unknown[][]): string {
  return answer("NEXTSUBNET", () => {
    const whole = readPrefix(prefix, "prefix");
    const found = plan.findFreeSubnet(whole, readLength(length, "length", whole.family), readRanges(taken, "taken", whole.family));
    return plan.formatPrefix(found);
  });
}

/**
 * Lists the fewest prefixes that cover what is free in a prefix.
 * @customfunction GAPS
 * @param prefix Prefix to look in, such as 10.20.0.0/24.
 * @param taken Range of addresses, ranges and prefixes in use, such as {"10.20.0.0/26";"10.20.0.128-10.20.0.140"}.
 * @returns A column of prefixes.
 */
export function gaps(prefix: unknown, taken: unknown[][]): string[][] {
  return answer("GAPS", () => {
    const whole = readPrefix(prefix, "prefix");
    const left = plan.subtractRanges(plan.rangesOfPrefixes(whole.family, [whole]), readRanges(taken, "taken", whole.family));
    return filledColumn(plan.coverAsText(left), "prefix", `prefix ${plan.formatPrefix(whole)} has no gap left: all of it is taken.`);
  });
}

/**
 * Lists the fewest prefixes that cover the same addresses.
 * @customfunction MERGE
 * @param prefixes Range of prefixes, addresses or ranges of one family, such as {"10.20.0.0/24";"10.20.1.0/24"}.
 * @returns A column of prefixes.
 */
export function merge(prefixes: unknown[][]): string[][] {
  return answer("MERGE", () => {
    const merged = plan.mergeRanges(readRanges(prefixes, "prefixes", null));
    return filledColumn(plan.coverAsText(merged), "prefixes", "prefixes has nothing to merge: the range is empty.");
  });
}

/**
 * Finds the lowest free host addresses of a prefix.
 * @customfunction NEXTFREE
 * @param prefix Prefix to look in, such as 10.20.0.0/24.
 * @param [taken] Range of addresses, ranges and prefixes in use, such as {"10.20.0.1";"10.20.0.2-10.20.0.9"}.
 * @param [count] How many to find, 1 when left out.
 * @returns A column of addresses.
 */
export function nextFree(prefix: unknown, taken?: unknown[][], count?: unknown): string[][] {
  return answer("NEXTFREE", () => {
    const whole = readPrefix(prefix, "prefix");
    const wanted = readCount(count, "count", { min: 1, max: mostRows, default: 1, example: 1 });
    return column(plan.findFreeAddresses(whole, readRanges(taken, "taken", whole.family), wanted).map(plan.formatAddress));
  });
}

/**
 * Gives every name an address: kept pairs never move, the others get the lowest free one.
 * @customfunction ASSIGN
 * @param prefix Prefix to take addresses from, such as 10.20.0.0/24.
 * @param names Range of names, such as {"ctl-a";"ctl-b"}.
 * @param [kept] Range: name and the address it has already, such as {"ctl-b","10.20.0.20"}.
 * @param [reserved] Range of addresses, ranges and prefixes never to give, such as "10.20.0.1-10.20.0.9".
 * @returns A table: Name, Address.
 */
export function assign(prefix: unknown, names: unknown[][], kept?: unknown[][], reserved?: unknown[][]): string[][] {
  return answer("ASSIGN", () => {
    const whole = readPrefix(prefix, "prefix");
    const named = readNames(names, "names");
    const held = readKeptPairs(kept, "kept", whole.family);
    const addresses = plan.assignAddresses(whole, named, held, readRanges(reserved, "reserved", whole.family));
    return [["Name", "Address"]].concat(named.map(({ name }, place) => [name, plan.formatAddress(addresses[place]!)]));
  });
}

/**
 * Gives every controller port of every array an address; port by port the networks take turns.
 * @customfunction PORTPLAN
 * @param arrays Range: array, controllers (2 or "A,B"), ports (4 or "0,1,2,3").
 * @param networks Range: network, prefix, gateway or none, such as {"data-1","10.20.1.0/24","none"}.
 * @param [kept] Range: array, controller, port, address. A function cannot keep its own spill: see Keep these addresses in the pane.
 * @param [sharing] "controller": an address for every controller port; "array": one a port number, moving with the working one.
 * @returns A table: Array, Controller, Port, Network, Address, Mask, Gateway.
 */
export function portPlan(arrays: unknown[][], networks: unknown[][], kept?: unknown[][], sharing?: unknown): string[][] {
  return answer("PORTPLAN", () => {
    const held = readKeptPorts(kept, "kept");
    const planned = plan.planPorts(readPortArrays(arrays, "arrays"), readPortNetworks(networks, "networks"), held, readChoice<plan.PortSharing>(sharing, "sharing", ["controller", "array"]));
    const header = ["Array", "Controller", "Port", "Network", "Address", "Mask", "Gateway"];
    return [header].concat(planned.map(plannedRow));
  });
}

/**
 * Writes an address in its one canonical form (RFC 5952).
 * @customfunction CANONICAL
 * @param address Address in any spelling, such as 2001:DB8:0:0:1:0:0:1.
 * @returns The address, such as 2001:db8::1:0:0:1.
 */
export function canonical(address: unknown): string {
  return answer("CANONICAL", () => plan.formatAddress(readAddress(address, "address")));
}

/**
 * Writes the name under which an address is looked up in reverse DNS.
 * @customfunction REVERSENAME
 * @param address Address, such as 192.0.2.10 or 2001:db8::1.
 * @returns The name, such as 10.2.0.192.in-addr.arpa.
 */
export function reverseName(address: unknown): string {
  return answer("REVERSENAME", () => plan.reverseName(readAddress(address, "address")));
}

/**
 * Tells what an address is set aside for, as the special-purpose registries name it.
 * @customfunction PURPOSE
 * @param address Address, such as 10.20.0.1 or fe80::1.
 * @returns The name in the registry, such as Private-Use; else global.
 */
export function purpose(address: unknown): string {
  return answer("PURPOSE", () => plan.specialPurposeOfAddress(readAddress(address, "address"))?.name ?? "global");
}

/**
 * Writes text that sorts addresses in address order, IPv4 before IPv6.
 * @customfunction SORTKEY
 * @param address Address, such as 10.20.0.9.
 * @returns The text to sort by.
 */
export function sortKey(address: unknown): string {
  return answer("SORTKEY", () => plan.sortKey(readAddress(address, "address")));
}

/**
 * Lists the addresses that occur more than once, however they are spelt.
 * @customfunction REPEATS
 * @param addresses Range of addresses of either family, such as {"2001:db8::1";"2001:0DB8::0001"}.
 * @returns A table: Address, Times, Rows.
 */
export function repeats(addresses: unknown[][]): unknown[][] {
  return answer("REPEATS", () => {
    const { addresses: read, rows } = readAddressRows(addresses, "addresses");
    return [
      ["Address", "Times", "Rows"],
      ...plan.findRepeats(read).map(({ address, places }) => [
        plan.formatAddress(address),
        places.length,
        places.map((place) => rows[place]!).join(", "),
      ]),
    ];
  });
}

/**
 * Computes the payload of a ping that just fills the MTU, in bytes; send it with fragmentation forbidden.
 * @customfunction PINGSIZE
 * @param mtu Largest packet the link carries, in bytes, such as 9000.
 * @param [ipVersion] 4 when left out, or 6.
 * @returns The payload in bytes, such as 8972.
 */
export function pingSize(mtu: unknown, ipVersion?: unknown): number {
  return answer("PINGSIZE", () => {
    const family = readChoice(ipVersion, "ipVersion", [4, 6]);
    return plan.pingSize(readCount(mtu, "mtu", { min: plan.leastMtu(family), max: 65_535, example: 9000 }), family);
  });
}

/**
 * Makes an iSCSI qualified name and checks it against RFC 7143.
 * @customfunction ISCSINAME
 * @param yearMonth Month in which the domain was yours, as text, such as 2024-05.
 * @param domain Your domain name, such as storage.example.
 * @param [name] Whatever tells this one from your others, such as array1.
 * @returns The name, such as iqn.2024-05.example.storage:array1.
 */
export function iscsiName(yearMonth: unknown, domain: unknown, name?: unknown): string {
  return answer("ISCSINAME", () =>
    plan.iscsiName(readYearMonth(yearMonth, "yearMonth"), readText(domain, "domain", "example.com"), readTextOrNone(name, "name")),
  );
}

function plannedRow({ array, controller, port, network: { name, prefix, gateway }, address }: plan.PlannedPort): string[] {
  const mask = plan.maskText(prefix.family, prefix.length);
  return [array, controller, port, name, plan.formatAddress(address), mask, gateway === null ? "none" : plan.formatAddress(gateway)];
}
