import { parseAddress, parseControllerNames, parsePortNames, type Address } from "../../planning/addressing";
import { foldName, invalid, quote } from "../../planning/text";
import { address, addressCellsRule, prefix } from "./addresses";
import { atMost } from "./at-most";
import { name } from "./names";
import { count, orNone } from "./numbers";
import type { Reader } from "./reader";
import { readScalar } from "./scalar";
import { cells, column, table } from "./table";

const deviceHeadings = ["Name", "Names", "Device", "Devices", "Array", "Arrays", "Host", "Hostname", "Hostnames", "Host name", "Server"];

/** Columns that stand beside names in people's tables: under a header they are no names. */
const namePasses = [
  "Address", "Addresses", "Id", "Site", "Rack", "Bottom unit", "Units", "Model", "Serial", "Controller", "Port", "Network",
  "Role", "Kind", "Side", "Group", "Cluster", "Pool", "Switch", "Switch port", "MTU", "VLAN",
];

/** Far more than a site has: beyond them the work would keep the sheet waiting. */
const [mostNames, mostAddresses] = [200_000, 500_000];

/** Reads a range of names, every cell one. */
export const nameCells = atMost(mostNames, cells(name, { headings: deviceHeadings, passes: namePasses }));

/** Reads kept pairs: name, address. A row without an address keeps nothing. */
export const keptPairs = table(
  { name: column("name", deviceHeadings, name), address: column("address", ["Address", "Addresses", "Kept"], address("10.20.0.9")) },
  { without: "address" },
);

/** Columns of networks in people's tables that are of no use here. */
const networkPasses = ["Site", "Kind", "Role", "Side", "VLAN", "MTU", "Routing", "Reserved"];

/** Reads needs: name, hosts, and the kept prefix where there is one. */
export const needs = table(
  {
    name: column("name", ["Need", "Needs", "Name", "Network", "Networks", "Subnet", "Subnets"], name),
    hosts: column("hosts", ["Hosts", "Host count", "Devices", "Addresses"], count({ min: 1, max: 2 ** 32, example: 60 })),
    kept: column("kept prefix", ["Prefix", "Kept", "Kept prefix"], orNone(prefix("10.20.0.0/24")), { optional: true }),
  },
  { passes: ["First host", "Last host", "Gateway", ...networkPasses] },
);

/** Reads arrays: name, controllers (2, "A,B" or "A/B"), ports (4, "0,1,2,3" or "0-3"). */
export const portArrays = table({
  name: column("name", ["Array", "Arrays", "Name"], name),
  controllers: column("controllers", ["Controllers"], countOrNames(parseControllerNames)),
  ports: column("ports", ["Ports"], countOrNames(parsePortNames)),
});

function countOrNames(parse: (given: string | number, place: string) => readonly string[]): Reader<readonly string[]> {
  return {
    read: (received, place) => {
      const given = readScalar(received, place);
      if (given === null || typeof given === "boolean") throw invalid(place, given, `${place} is ${quote(given)}. Write a count such as 2, or names with commas between.`);
      return parse(given, place);
    },
  };
}

const gateway: Reader<Address | null> = {
  read: (received, place) => {
    const given = readScalar(received, place);
    return given === null || foldName(String(given)) === "none" ? null : parseAddress(String(given), place);
  },
};

/** Reads networks: name, prefix, gateway or "none". */
export const portNetworks = table(
  {
    name: column("name", ["Network", "Networks", "Name", "Need", "Needs"], name),
    prefix: column("prefix", ["Prefix", "Prefixes", "Subnet"], prefix("10.20.1.0/24")),
    gateway: column("gateway", ["Gateway", "Gateways"], gateway, { optional: true }),
  },
  { passes: ["Hosts", "First host", "Last host", ...networkPasses] },
);

/** Reads kept ports: array, controller, port, address. A row without an address keeps nothing. */
export const keptPorts = table(
  {
    array: column("array", ["Array", "Arrays"], name),
    controller: column("controller", ["Controller", "Controllers"], name),
    port: column("port", ["Port", "Ports"], name),
    address: column("address", ["Address", "Addresses", "Kept"], address("10.20.1.9")),
  },
  { without: "address", passes: ["Network", "Mask", "Gateway", "MTU", "Switch", "Switch port"] },
);

/** Reads a range of addresses of either family, every cell one. */
export const addressCells = atMost(mostAddresses, cells(address("10.20.0.9"), addressCellsRule));
