import { formatAddress, readAddress } from "../../addressing";
import { foldName, noAnswer } from "../../text";

/** A port of a host or of an array, on the network that it is cabled to. */
export interface NetworkPort {
  readonly device: string;
  readonly network: string;
  /** Ports of a device that have one address in a network are one, as when it moves between controllers. Null: a port of its own. */
  readonly address: string | null;
}

/** In how many ways a host reaches an array. */
export interface PathCount {
  readonly host: string;
  readonly array: string;
  /** Pairs of a host port and an array port in one network. */
  readonly paths: number;
  /** Networks in which both have a port. */
  readonly networks: number;
  /** Paths that are left after the loss of whichever one network. */
  readonly leastLeft: number;
}

/** Most rows of an answer. */
const mostRows = 100_000;

/**
 * Counts the paths from every host to every array: a session from each host port to each array port in the same network.
 *
 * Names match without case; hosts and arrays stand in order of appearance, pairs without a path too. Networks that reach each other by routing are not
 * one: name them alike if that is meant. Refuses more than 100,000 pairs.
 */
export function countPaths(hostPorts: readonly NetworkPort[], arrayPorts: readonly NetworkPort[]): PathCount[] {
  const hosts = portsByDevice(hostPorts);
  const arrays = portsByDevice(arrayPorts);
  const rows = hosts.length * arrays.length;
  if (rows > mostRows) throw noAnswer("hostPorts", rows, `hostPorts and arrayPorts make ${rows} pairs; ${mostRows} are the most. Give the ports of one site.`);
  return hosts.flatMap((host) =>
    arrays.map((array): PathCount => {
      const products = [...host.ports].map(([network, count]) => count * (array.ports.get(network) ?? 0)).filter((product) => product > 0);
      const paths = products.reduce((sum, product) => sum + product, 0);
      return { host: host.name, array: array.name, paths, networks: products.length, leastLeft: paths - Math.max(0, ...products) };
    }),
  );
}

interface DevicePorts {
  readonly name: string;
  /** Ports by network. */
  readonly ports: ReadonlyMap<string, number>;
}

function portsByDevice(ports: readonly NetworkPort[]): DevicePorts[] {
  const devices = new Map<string, { name: string; ports: Map<string, number>; addresses: Set<string> }>();
  for (const { device, network, address } of ports) {
    const found = devices.get(foldName(device)) ?? { name: device, ports: new Map<string, number>(), addresses: new Set<string>() };
    devices.set(foldName(device), found);
    const key = foldName(network);
    if (address !== null) {
      const place = `${key}\n${canonical(address)}`;
      if (found.addresses.has(place)) continue;
      found.addresses.add(place);
    }
    found.ports.set(key, (found.ports.get(key) ?? 0) + 1);
  }
  return [...devices.values()];
}

/** One address has one spelling; what is none, such as the name of a port on another kind of network, is compared without case. */
function canonical(text: string): string {
  const address = readAddress(text.trim());
  return address === null ? foldName(text) : formatAddress(address);
}
