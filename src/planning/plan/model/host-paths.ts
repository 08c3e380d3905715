import { formatAddress } from "../../addressing";
import { countPaths } from "../../resilience";
import type { PlanRow } from "../read";
import { isForOther, type HostPorts } from "./host-ports";
import type { Network } from "./networks";
import { oncePer } from "./once";
import type { PlanRows } from "./plan-rows";
import type { PortFacts } from "./port-facts";
import type { Ports } from "./ports";

/** How many paths a host of the site has to an array. */
export interface HostPathCount {
  readonly host: PlanRow<"hosts">;
  /** Pairs of a host address and a port address in one data network, of two ports where it is none of IP; null where the plan does not say enough. */
  readonly paths: number | null;
  /** Data networks in which both stand; none where it is not known. */
  readonly networks: readonly Network[];
}

/** How many paths hosts have to arrays, counted in data networks alone. */
export class HostPaths {
  /** Counts, for every host of the site of an array, its paths to it; see `countPaths`. */
  readonly to = oncePer((array: PlanRow<"arrays">): readonly HostPathCount[] => this.rows.rowsWith("hosts", "site", array.site).map((host) => this.between(host, array)));

  /** Finds the fewest paths that a host of its site has to an array; null where there is no host, or one whose paths are not known. */
  readonly fewestTo = oncePer((array: PlanRow<"arrays">): number | null => {
    const counts = this.to(array).map(({ paths }) => paths);
    return counts.length === 0 || counts.includes(null) ? null : Math.min(...counts.map((paths) => paths ?? 0));
  });

  /** Lists the networks of the ports of a host; null where it has none, or one in no network of its site. */
  readonly networksOf = oncePer((host: PlanRow<"hosts">): readonly Network[] | null => {
    const networks = this.hostPorts.endsOf(host).map(({ network }) => network);
    return networks.length === 0 || networks.includes(null) ? null : networks.filter((network) => network !== null);
  });

  constructor(
    private readonly rows: PlanRows,
    private readonly ports: Ports,
    private readonly hostPorts: HostPorts,
  ) {}

  /** Lists the rows of the ports of an array in data networks. */
  dataPortsOf(array: PlanRow<"arrays">): readonly PortFacts[] {
    return this.ports.of(array).filter(({ network }) => network?.roles.has("data"));
  }

  private between(host: PlanRow<"hosts">, array: PlanRow<"arrays">): HostPathCount {
    const own = this.networksOf(host);
    const ports = this.ports.of(array);
    // A network without a role may be for data or not, and a port without an address may be in use or not: then no figure is given.
    const ends = this.hostPorts.endsOf(host);
    const isHostKnown = ends.every(({ network, address }) => address !== null || isForOther(network) || network?.isIp === false);
    const isKnown = own !== null && isHostKnown && ports.length > 0 && ports.every(({ network, address }) => {
      return network !== null && (!own.includes(network) || (network.roles.size > 0 && (address !== null || !network.isIp)));
    });
    if (!isKnown) return { host, paths: null, networks: [] };
    const arrayPorts = ports.map(({ row, network }) => ({ device: "array", network: row.network, address: network?.isIp === true ? row.address : null }));
    const data = ends.flatMap(({ network, address }) => {
      if (!network?.roles.has("data") || (address === null && network.isIp)) return [];
      return [{ device: "host", network: network.row.network, address: address === null || !network.isIp ? null : formatAddress(address) }];
    });
    const networks = [...new Set(own)].filter((network) => network.roles.has("data") && ports.some((port) => port.network === network));
    return { host, paths: data.length === 0 ? 0 : countPaths(data, arrayPorts)[0]!.paths, networks };
  }
}
