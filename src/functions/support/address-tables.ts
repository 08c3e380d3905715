import { parseAddress, parseControllerNames, parsePortNames, type Address } from "../../planning/addressing";
import { invalid, quote } from "../../planning/text";
import { address, addressHeaders, prefix } from "./addresses";
import { name } from "./names";
import { count, orNone } from "./numbers";
import type { Reader } from "./reader";
import { readScalar } from "./scalar";
import { cells, column, table } from "./table";

const nameHeaders = ["Name", "Names", "Device", "Array"];

/** Reads a range of names, every cell one. */
export const nameCells = cells(name, { headers: nameHeaders });

/** Reads kept pairs: name, address. A row without an address keeps nothing. */
export const keptPairs = table({ name: column("name", name), address: column("address", address("10.20.0.9")) }, { headers: nameHeaders, without: "address" });

/** Reads needs: name, hosts, and the kept prefix where there is one. */
export const needs = table(
  {
    name: column("name", name),
    hosts: column("hosts", count({ min: 1, max: 2 ** 32, example: 60 })),
    kept: column("kept prefix", orNone(prefix("10.20.0.0/24"))),
  },
  { headers: ["Need", "Needs", "Name", "Network", "Subnet"] },
);

/** Reads arrays: name, controllers (2 or "A,B"), ports (4 or "0,1,2,3"). */
export const portArrays = table(
  { name: column("name", name), controllers: column("controllers", countOrNames(parseControllerNames)), ports: column("ports", countOrNames(parsePortNames)) },
  { headers: ["Array", "Arrays", "Name"] },
);

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
    return given === null || String(given).toLowerCase() === "none" ? null : parseAddress(String(given), place);
  },
};

/** Reads networks: name, prefix, gateway or "none". */
export const portNetworks = table(
  { name: column("name", name), prefix: column("prefix", prefix("10.20.1.0/24")), gateway: column("gateway", gateway) },
  { headers: ["Network", "Networks", "Name"] },
);

/** Reads kept ports: array, controller, port, address. A row without an address keeps nothing. */
export const keptPorts = table(
  { array: column("array", name), controller: column("controller", name), port: column("port", name), address: column("address", address("10.20.1.9")) },
  { headers: ["Array", "Arrays", "Name"], without: "address" },
);

/** Reads a range of addresses of either family, every cell one. */
export const addressCells = cells(address("10.20.0.9"), { headers: addressHeaders });
