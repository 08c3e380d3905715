import type { NetworkPort } from "../../planning/resilience";
import { invalid, quote } from "../../planning/text";
import { atMost } from "./at-most";
import { name } from "./names";
import { orNone } from "./numbers";
import type { Reader } from "./reader";
import { isBlank } from "../../sheet";
import { column, table } from "./table";

/** Refuses a fourth column without a header: the second is then hardly the network, as in a port plan whose header was dropped. */
const tooWide: Reader<null> = {
  read: (cell, place) => {
    if (isBlank(cell)) return null;
    throw invalid(place, cell, `${place} is ${quote(cell)}. Give device, network and address only, or a header row on top.`);
  },
};

const mostPorts = 100_000;
const passes = ["Controller", "Port", "Ports", "Mask", "Gateway", "MTU", "VLAN", "Switch", "Switch port", "Site", "Initiator name"];

/** Reads ports: device, network and, where it has one, address, a row a port; `devices` are what may head the first column. */
function networkPorts(devices: readonly string[]): Reader<readonly NetworkPort[]> {
  const rows = table(
    {
      device: column("device", [...devices, "Device", "Devices", "Name"], name),
      network: column("network", ["Network", "Networks"], name),
      address: column("address", ["Address", "Addresses"], orNone(name), { optional: true }),
      fourth: column("column 4", [], tooWide, { optional: true }),
    },
    { give: "Give a range with a device and its network in each row, a row a port.", passes },
  );
  return atMost(mostPorts, rows);
}

/** Reads the ports of hosts. */
export const hostPorts = networkPorts(["Host", "Hosts", "Hostname", "Host name", "Server", "Servers"]);

/** Reads the ports of arrays, or what PORTPLAN answered. */
export const arrayPorts = networkPorts(["Array", "Arrays"]);
