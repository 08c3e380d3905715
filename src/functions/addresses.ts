// Addresses: subnet facts, sets of prefixes, and plans that never move what is kept.
import * as addressing from "../planning/addressing";
import {
  address,
  block,
  listedRanges,
  maskLength,
  prefix,
  prefixLength as readPrefixLength,
  prefixRows,
  ranges,
  subnet as readSubnet,
  subnetText,
  text as readText,
  textOrNone,
} from "./support/addresses";
import { addressCells, keptPairs, keptPorts, nameCells, needs, portArrays, portNetworks } from "./support/address-tables";
import { column, number, table, text, textTable, truth } from "./support/answers";
import { choice } from "./support/choice";
import { count, numberBy } from "./support/numbers";
import { optional, parameter } from "./support/parameter";
import * as given from "./support/parameters";
import { proportion } from "./support/quantities";
import { filled, mostRows, rowLimit, rowsLeftOut } from "./support/spill";
import { worksheetFunction } from "./support/worksheet-function";
import { yearMonth } from "./support/year-month";

const inSubnet = "Subnet, or an address in it with the length, such as {example}.";
const prefixFrom = (what: string, example: string) => parameter("prefix", `Prefix to ${what}, such as {example}.`, prefix(example));

export const network = worksheetFunction({
  id: "NETWORK",
  description: "Finds the network that an address lies in.",
  parameters: [parameter("prefix", "Address and length, such as {example}.", subnetText("10.20.0.9/24 or 10.20.0.9 255.255.255.0"))],
  answers: text("The address of the network."),
  examples: ['=BAY.NETWORK("10.20.0.9/24")'],
  mistakes: ['=BAY.NETWORK("10.20.0.9/33")'],
  compute: (subnet) => subnet.network,
});

export const firstHost = worksheetFunction({
  id: "FIRSTHOST",
  description: "Finds the first address of a subnet that a host can hold.",
  parameters: [parameter("prefix", inSubnet, subnetText("10.20.0.0/24"))],
  answers: text("The address."),
  examples: ['=BAY.FIRSTHOST("10.20.0.0/24")', '=BAY.FIRSTHOST("2001:db8::/64")'],
  mistakes: ['=BAY.FIRSTHOST("010.20.0.0/24")'],
  compute: (subnet) => subnet.firstHost,
});

export const lastHost = worksheetFunction({
  id: "LASTHOST",
  description: "Finds the last address of a subnet that a host can hold.",
  parameters: [parameter("prefix", inSubnet, subnetText("10.20.0.0/24"))],
  answers: text("The address."),
  examples: ['=BAY.LASTHOST("10.20.0.0/24")'],
  mistakes: ['=BAY.LASTHOST("10.20.0/24")'],
  compute: (subnet) => subnet.lastHost,
});

export const hostCount = worksheetFunction({
  id: "HOSTCOUNT",
  description: "Counts the addresses of a subnet that hosts can hold. SUBNET shows every digit of a large count.",
  parameters: [parameter("prefix", inSubnet, readSubnet("192.0.2.0/26"))],
  answers: number("The count."),
  examples: ['=BAY.HOSTCOUNT("192.0.2.0/26")'],
  mistakes: ['=BAY.HOSTCOUNT("192.0.2.256/26")'],
  compute: (subnet) => Number(addressing.countHosts(subnet.network)),
});

export const broadcast = worksheetFunction({
  id: "BROADCAST",
  description: "Finds the broadcast address of an IPv4 subnet.",
  parameters: [parameter("prefix", inSubnet, readSubnet("192.0.2.0/26"))],
  answers: text("The address."),
  examples: ['=BAY.BROADCAST("192.0.2.0/26")'],
  mistakes: ['=BAY.BROADCAST("2001:db8::/64")'],
  compute: (subnet) => addressing.formatAddress(addressing.broadcastAddress(subnet.network, "prefix")),
});

export const netmask = worksheetFunction({
  id: "NETMASK",
  description: "Writes the dotted mask of an IPv4 subnet or prefix length.",
  parameters: [parameter("prefix", "Subnet such as 192.0.2.0/26, or a length such as 26.", maskLength("dotted mask"))],
  answers: text("The mask, such as 255.255.255.192."),
  examples: ['=BAY.NETMASK("192.0.2.0/26")', "=BAY.NETMASK(22)"],
  mistakes: ["=BAY.NETMASK(33)"],
  compute: addressing.formatMask,
});

export const wildcard = worksheetFunction({
  id: "WILDCARD",
  description: "Writes the wildcard (inverted mask) of an IPv4 subnet.",
  parameters: [parameter("prefix", "Subnet such as 192.0.2.0/26, or a length such as 26.", maskLength("wildcard"))],
  answers: text("The wildcard, such as 0.0.0.63."),
  examples: ['=BAY.WILDCARD("192.0.2.0/26")'],
  mistakes: ['=BAY.WILDCARD("2001:db8::/64")'],
  compute: addressing.formatWildcard,
});

export const prefixLength = worksheetFunction({
  id: "PREFIXLENGTH",
  description: "Finds the prefix length of a dotted mask. A mask with holes is refused.",
  parameters: [parameter("mask", "Dotted mask, such as {example}.", readText("255.255.252.0"))],
  answers: number("The length, such as 22."),
  examples: ['=BAY.PREFIXLENGTH("255.255.252.0")'],
  mistakes: ['=BAY.PREFIXLENGTH("255.255.0.255")'],
  compute: (mask) => addressing.parseMask(mask, "mask"),
});

export const subnet = worksheetFunction({
  id: "SUBNET",
  description: "Lists every fact about a subnet, with exact counts and the RFC behind each.",
  parameters: [parameter("prefix", inSubnet, readSubnet("192.0.2.0/26 or 2001:db8::/64"))],
  answers: table(["Fact", "Value", "Note"], "A table: Fact, Value, Note."),
  examples: ['=BAY.SUBNET("192.0.2.0/26")', '=BAY.SUBNET("2001:db8:0:1::/64")'],
  mistakes: ['=BAY.SUBNET("fe80::1%eth0/64")'],
  compute: (one) => addressing.subnetFacts(one).map(({ fact, value, note }) => [fact, value, note]),
});

export const host = worksheetFunction({
  id: "HOST",
  description: "Finds the host address at a position in a subnet.",
  parameters: [
    parameter("prefix", inSubnet, readSubnet("10.20.0.0/24")),
    parameter("position", "1 for the first host, 2 for the next; -1 for the last, -2 for the one before.", count({ min: -1e15, example: 1 })),
  ],
  answers: text("The address."),
  examples: ['=BAY.HOST("10.20.0.0/24",10)', '=BAY.HOST("10.20.0.0/24",-1)'],
  mistakes: ['=BAY.HOST("10.20.0.0/24",300)'],
  compute: (subnet, position) => addressing.formatAddress(addressing.hostAt(subnet.network, BigInt(position), "position")),
});

export const contains = worksheetFunction({
  id: "CONTAINS",
  description: "Tells whether a prefix contains an address, a range or another prefix.",
  parameters: [
    parameter("prefix", "Prefix that may contain it, such as {example}.", readText("10.20.0.0/16")),
    parameter("inner", "Address or prefix that may lie in it, such as {example}.", readText("10.20.3.0/24")),
  ],
  answers: truth("TRUE or FALSE."),
  examples: ['=BAY.CONTAINS("10.20.0.0/16","10.20.3.0/24")'],
  mistakes: ['=BAY.CONTAINS("10.20.0.0/16","2001:db8::1")'],
  compute: (outer, inner) => addressing.containsText(outer, inner),
});

export const overlaps = worksheetFunction({
  id: "OVERLAPS",
  description: "Tells whether two prefixes have an address in common.",
  parameters: [parameter("a", "One prefix, such as {example}.", prefix("10.20.0.0/16")), parameter("b", "The other, such as {example}.", block("10.20.3.0/24"))],
  answers: truth("TRUE or FALSE."),
  examples: ['=BAY.OVERLAPS("10.20.0.0/16","10.20.3.0/24")'],
  mistakes: ['=BAY.OVERLAPS("10.20.0.0/16","")'],
  compute: (one, other) => addressing.meetsBlock(one, other(one.family)),
});

const usualPairs = 10_000;
const clashColumns = ["First", "Second", "First row", "Second row"];

export const clashes = worksheetFunction({
  id: "CLASHES",
  description: "Lists the pairs of prefixes that overlap, and the rows they stand in.",
  parameters: [
    parameter("prefixes", 'Range of prefixes of one family, such as {"10.20.0.0/16";"10.20.3.0/24"}.', prefixRows),
    optional("most", `Most pairs to list, ${usualPairs} when left out; the last row says how many more there are.`, rowLimit),
  ],
  answers: table(clashColumns, "A table: First, Second, First row, Second row."),
  examples: ['=BAY.CLASHES({"10.20.0.0/16";"10.30.0.0/16";"10.20.3.0/24"})'],
  mistakes: ['=BAY.CLASHES({"10.20.0.0/16";"10.20.3.7/24"})'],
  compute: ({ ranges: listed, rows, texts }, most) => {
    const { pairs, total } = addressing.findClashes(listed, most ?? usualPairs);
    return [
      ...pairs.map(({ first, second }) => [texts[first]!, texts[second]!, rows[first]!, rows[second]!]),
      ...rowsLeftOut(total - pairs.length, clashColumns.length),
    ];
  },
});

export const splitPrefix = worksheetFunction({
  id: "SPLITPREFIX",
  description: "Splits a prefix into subnets of one length.",
  parameters: [
    prefixFrom("split", "192.0.2.0/24"),
    parameter("length", "Length of the subnets, such as {example}.", readPrefixLength("26")),
    optional("most", "Most subnets to list, such as {example}; needed where there are more than a sheet has rows.", rowLimit),
  ],
  answers: column("A column of subnets."),
  examples: ['=BAY.SPLITPREFIX("192.0.2.0/24",26)'],
  mistakes: ['=BAY.SPLITPREFIX("2001:db8::/32",72)'],
  compute: (whole, length, most) => addressing.splitPrefix(whole, length(whole.family), most, mostRows).map(addressing.formatPrefix),
});

export const carve = worksheetFunction({
  id: "CARVE",
  description: "Cuts a subnet for each need out of a prefix: the first free one that holds it. Kept ones never move.",
  parameters: [
    prefixFrom("cut from", "10.20.0.0/16"),
    parameter("needs", "Range: name, hosts (devices and gateway), and the prefix to keep, if any.", needs),
    optional("growth", "Share by which every need will grow, such as {example}.", proportion({ above: -1, max: 5, default: 0, example: 0.2 }, "20%")),
    optional("taken", 'Range of addresses and prefixes not to touch, such as {"10.20.0.0/24";"10.20.9.1"}.', ranges),
  ],
  answers: table(["Need", "Hosts", "Prefix", "First host", "Last host"], "A table: Need, Hosts, Prefix, First host, Last host."),
  examples: ['=BAY.CARVE("10.20.0.0/16",{"Management",40;"Data 1",120;"Data 2",120},"20%")'],
  mistakes: ['=BAY.CARVE("192.0.2.0/26",{"Data",120})'],
  compute: (whole, wanted, growth, taken) =>
    addressing
      .carve(whole, wanted, growth, taken(whole.family))
      .map((one) => [one.need.name, one.need.hosts, addressing.formatPrefix(one.prefix), addressing.formatAddress(one.firstHost), addressing.formatAddress(one.lastHost)]),
});

export const nextSubnet = worksheetFunction({
  id: "NEXTSUBNET",
  description: "Finds the first free subnet of a length in a prefix.",
  parameters: [
    prefixFrom("look in", "10.20.0.0/16"),
    parameter("length", "Length of the subnet, such as {example}.", readPrefixLength("24")),
    optional("taken", 'Range of addresses and prefixes in use, such as {"10.20.0.0/24";"10.20.1.0/24"}.', ranges),
  ],
  answers: text("The subnet."),
  examples: ['=BAY.NEXTSUBNET("10.20.0.0/16",24,{"10.20.0.0/24";"10.20.1.0/24"})'],
  mistakes: ['=BAY.NEXTSUBNET("10.20.0.0/24",24,"10.20.0.0/25")'],
  compute: (whole, length, taken) => addressing.formatPrefix(addressing.findFreeSubnet(whole, length(whole.family), taken(whole.family))),
});

export const gaps = worksheetFunction({
  id: "GAPS",
  description: "Lists the fewest prefixes that cover what is free in a prefix.",
  parameters: [
    prefixFrom("look in", "10.20.0.0/24"),
    parameter("taken", 'Range of addresses, ranges and prefixes in use, such as {"10.20.0.0/26";"10.20.0.128-10.20.0.140"}.', listedRanges),
  ],
  answers: column("A column of prefixes."),
  examples: ['=BAY.GAPS("10.20.0.0/24",{"10.20.0.0/26";"10.20.0.128/27"})'],
  mistakes: ['=BAY.GAPS("10.20.0.0/24","10.20.0.0/24")'],
  compute: (whole, taken) => {
    const left = addressing.subtractRanges(addressing.rangesOfPrefixes(whole.family, [whole]), taken(whole.family));
    return filled(addressing.coverAsText(left), "prefix", `prefix ${addressing.formatPrefix(whole)} has no gap left: all of it is taken.`);
  },
});

export const merge = worksheetFunction({
  id: "MERGE",
  description: "Lists the fewest prefixes that cover the same addresses.",
  parameters: [parameter("prefixes", 'Range of prefixes, addresses or ranges of one family, such as {"10.20.0.0/24";"10.20.1.0/24"}.', listedRanges)],
  answers: column("A column of prefixes."),
  examples: ['=BAY.MERGE({"10.20.0.0/24";"10.20.1.0/24";"10.20.2.0/23"})'],
  mistakes: ['=BAY.MERGE({"10.20.0.0/24";"10.20.1.0/8"})'],
  compute: (prefixes) => filled(addressing.coverAsText(addressing.mergeRanges(prefixes(null))), "prefixes", "prefixes has nothing to merge: the range is empty."),
});

export const nextFree = worksheetFunction({
  id: "NEXTFREE",
  description: "Finds the lowest free host addresses of a prefix.",
  parameters: [
    prefixFrom("look in", "10.20.0.0/24"),
    optional("taken", 'Range of addresses, ranges and prefixes in use, such as {"10.20.0.1";"10.20.0.2-10.20.0.9"}.', ranges),
    optional("count", "How many to find, {default} when left out.", count({ min: 1, max: mostRows, default: 1, example: 1 })),
  ],
  answers: column("A column of addresses."),
  examples: ['=BAY.NEXTFREE("10.20.0.0/24",{"10.20.0.1";"10.20.0.2-10.20.0.9"},3)'],
  mistakes: ['=BAY.NEXTFREE("10.20.0.0/30",{"10.20.0.1";"10.20.0.2"})'],
  compute: (whole, taken, wanted) => addressing.findFreeAddresses(whole, taken(whole.family), wanted).map(addressing.formatAddress),
});

export const assign = worksheetFunction({
  id: "ASSIGN",
  description: "Gives every name an address: kept pairs never move, the others get the lowest free one.",
  parameters: [
    prefixFrom("take addresses from", "10.20.0.0/24"),
    parameter("names", 'Range of names, such as {"ctl-a";"ctl-b"}.', nameCells),
    optional("kept", 'Range: name and the address it has already, such as {"ctl-b","10.20.0.20"}.', keptPairs),
    optional("reserved", 'Range of addresses, ranges and prefixes never to give, such as "10.20.0.1-10.20.0.9".', ranges),
  ],
  answers: textTable(["Name", "Address"], "A table: Name, Address."),
  examples: ['=BAY.ASSIGN("10.20.0.0/24",{"ctl-a";"ctl-b";"ctl-c"},{"ctl-b","10.20.0.20"},"10.20.0.1-10.20.0.9")'],
  mistakes: ['=BAY.ASSIGN("10.20.0.0/24",{"ctl-a";"ctl-b"},{"ctl-b","10.21.0.20"})'],
  compute: (whole, names, kept, reserved) => {
    const addresses = addressing.assignAddresses(whole, names, kept, reserved(whole.family));
    return names.map(({ value }, place) => [value, addressing.formatAddress(addresses[place]!)]);
  },
});

export const portPlan = worksheetFunction({
  id: "PORTPLAN",
  description: "Gives every controller port of every array an address; port by port the networks take turns.",
  parameters: [
    parameter("arrays", 'Range: array, controllers (2 or "A,B"), ports (4 or "0,1,2,3").', portArrays),
    parameter("networks", 'Range: network, prefix, gateway or none, such as {"data-1","10.20.1.0/24","none"}.', portNetworks),
    optional("kept", "Range: array, controller, port, address. A function cannot keep its own spill: see Keep these addresses in the pane.", keptPorts),
    optional("sharing", '"controller": an address for every controller port; "array": one a port number, moving with the working one.', choice("controller", "array")),
  ],
  answers: textTable(["Array", "Controller", "Port", "Network", "Address", "Mask", "Gateway"], "A table: Array, Controller, Port, Network, Address, Mask, Gateway."),
  examples: ['=BAY.PORTPLAN({"Array 1",2,2},{"data-1","10.20.1.0/24","none";"data-2","10.20.2.0/24","none"})'],
  mistakes: ['=BAY.PORTPLAN({"Array 1",2,2},{"data-1","10.20.1.7/24","none"})'],
  compute: (arrays, networks, kept, sharing) => {
    const ends = new Map<addressing.PortNetwork, [string, string]>(networks.map((network) => [network, maskAndGateway(network)]));
    return addressing.planPorts(arrays, networks, kept, sharing).map(({ array, controller, port, network, address: given }): string[] => {
      const [mask, gateway] = ends.get(network)!;
      return [array, controller, port, network.name, addressing.formatAddress(given), mask, gateway];
    });
  },
});

function maskAndGateway({ prefix: { family, length }, gateway }: addressing.PortNetwork): [string, string] {
  return [addressing.maskText(family, length), gateway === null ? "none" : addressing.formatAddress(gateway)];
}

export const canonical = worksheetFunction({
  id: "CANONICAL",
  description: "Writes an address in its one canonical form (RFC 5952).",
  parameters: [parameter("address", "Address in any spelling, such as {example}.", address("2001:DB8:0:0:1:0:0:1"))],
  answers: text("The address, such as 2001:db8::1:0:0:1."),
  examples: ['=BAY.CANONICAL("2001:DB8:0:0:1:0:0:1")'],
  mistakes: ['=BAY.CANONICAL("2001:db8:::1")'],
  compute: addressing.formatAddress,
});

export const reverseName = worksheetFunction({
  id: "REVERSENAME",
  description: "Writes the name under which an address is looked up in reverse DNS.",
  parameters: [parameter("address", "Address, such as {example}.", address("192.0.2.10 or 2001:db8::1"))],
  answers: text("The name, such as 10.2.0.192.in-addr.arpa."),
  examples: ['=BAY.REVERSENAME("192.0.2.10")'],
  mistakes: ['=BAY.REVERSENAME("192.0.2")'],
  compute: addressing.reverseName,
});

export const purpose = worksheetFunction({
  id: "PURPOSE",
  description: "Tells what an address is set aside for, as the special-purpose registries name it.",
  parameters: [parameter("address", "Address, such as {example}.", address("10.20.0.1 or fe80::1"))],
  answers: text("The name in the registry, such as Private-Use; else global."),
  examples: ['=BAY.PURPOSE("10.20.0.1")'],
  mistakes: ['=BAY.PURPOSE("10.20.0.01")'],
  compute: (one) => addressing.specialPurposeOfAddress(one)?.name ?? "global",
});

export const sortKey = worksheetFunction({
  id: "SORTKEY",
  description: "Writes text that sorts addresses in address order, IPv4 before IPv6.",
  parameters: [parameter("address", "Address, such as {example}.", address("10.20.0.9"))],
  answers: text("The text to sort by."),
  examples: ['=BAY.SORTKEY("10.20.0.9")'],
  mistakes: ['=BAY.SORTKEY("10.20.0")'],
  compute: addressing.sortKey,
});

export const repeats = worksheetFunction({
  id: "REPEATS",
  description: "Lists the addresses that occur more than once, however they are spelt.",
  parameters: [parameter("addresses", 'Range of addresses of either family, such as {"2001:db8::1";"2001:0DB8::0001"}.', addressCells)],
  answers: table(["Address", "Times", "Rows"], "A table: Address, Times, Rows."),
  examples: ['=BAY.REPEATS({"2001:db8::1";"10.20.0.1";"2001:0DB8::0001"})'],
  mistakes: ['=BAY.REPEATS({"10.20.0.1";"10.20.0"})'],
  compute: (cells) =>
    addressing
      .findRepeats(cells.map(({ value }) => value))
      .map(({ address: one, places }) => [addressing.formatAddress(one), places.length, places.map((place) => cells[place]!.row).join(", ")]),
});

export const pingSize = worksheetFunction({
  id: "PINGSIZE",
  description: "Computes the payload of a ping that just fills the MTU, in bytes; send it with fragmentation forbidden.",
  parameters: [
    parameter(
      "mtu",
      "Largest packet the link carries, in bytes, such as {example}.",
      numberBy(9000, (family: addressing.Family) => ({ min: addressing.leastMtu(family), max: 65_535, whole: true, example: 9000 })),
    ),
    given.ipVersion("{default} when left out, or 6."),
  ],
  answers: number("The payload in bytes, such as 8972."),
  examples: ["=BAY.PINGSIZE(9000)", "=BAY.PINGSIZE(1500,6)"],
  mistakes: ["=BAY.PINGSIZE(20)"],
  compute: (mtu, family) => addressing.pingSize(mtu(family), family),
});

export const iscsiName = worksheetFunction({
  id: "ISCSINAME",
  description: "Makes an iSCSI qualified name and checks it against RFC 7143.",
  parameters: [
    parameter("yearMonth", "Month in which the domain was yours, as text, such as {example}.", yearMonth),
    parameter("domain", "Your domain name, such as {example}.", readText("storage.example")),
    optional("name", "Whatever tells this one from your others, such as array1.", textOrNone),
  ],
  answers: text("The name, such as iqn.2024-05.example.storage:array1."),
  examples: ['=BAY.ISCSINAME("2024-05","storage.example","array1")'],
  mistakes: ['=BAY.ISCSINAME("2024-13","storage.example")'],
  compute: (month, domain, called) => addressing.iscsiName(month, domain, called),
});
