import { formatAddress } from "../../addressing";
import { countPaths } from "../../resilience";
import { foldName } from "../../text";
import type { PlanRow } from "../read";
import { groupBy } from "./group-by";
import { isForOther, type HostPorts } from "./host-ports";
import type { Network } from "./networks";
import { oncePer } from "./once";
import type { PlanRows } from "./plan-rows";
import { controllersOf, type PortFacts } from "./port-facts";
import type { Ports } from "./ports";

/** How many paths a host of the site has to an array. */
export interface HostPathCount {
  readonly host: PlanRow<"hosts">;
  /** Pairs of a host address and a port address in one data network, of two ports where it is none of IP; null where the plan does not say enough. */
  readonly paths: number | null;
  /** Data networks in which both stand; none where it is not known. */
  readonly networks: readonly Network[];
}

/** In which networks a host stands, and with how many ports: all that its paths depend on. */
interface HostStand {
  /** Null where it has no port, or one in no network of its site. */
  readonly networks: readonly Network[] | null;
  /** False where a port that may be for data has no address. */
  readonly isKnown: boolean;
  /** How many ports it has in each data network; those with one address are one. */
  readonly data: ReadonlyMap<Network, number>;
}

/** How many paths hosts have to arrays, counted in data networks alone. */
export class HostPaths {
  /** Counts, for every host of the site of an array, its paths to it; see `countPaths`. Arrays of a site that stand alike share one list. */
  readonly to = oncePer((array: PlanRow<"arrays">): readonly HostPathCount[] => {
    const key = this.keyOf(array);
    const known = this.counts.get(key);
    if (known !== undefined) return known;
    const counted = oncePer((stand: HostStand) => this.between(stand, array));
    const counts = this.rows.rowsWith("hosts", "site", array.site).map((host) => ({ host, ...counted(this.standOf(host)) }));
    this.counts.set(key, counts);
    return counts;
  });

  /** Finds the fewest paths that a host of its site has to an array; null where there is no host, or one whose paths are not known. */
  readonly fewestTo = oncePer((array: PlanRow<"arrays">): number | null => {
    const counts = this.to(array).map(({ paths }) => paths);
    return counts.length === 0 || counts.includes(null) ? null : Math.min(...counts.map((paths) => paths ?? 0));
  });

  /**
   * Finds the fewest paths that a host of its site keeps to an array while one of its controllers, whichever, is out; null where that is not known.
   *
   * Addresses that move to the controller that works keep every path.
   */
  readonly fewestOnOneController = oncePer((array: PlanRow<"arrays">): number | null => {
    const controllers = controllersOf(array) ?? [];
    if (this.fewestTo(array) === null || controllers.length < 2) return null;
    if (array.portSharing === "array") return this.fewestTo(array);
    const stands = new Set(this.rows.rowsWith("hosts", "site", array.site).map((host) => this.standOf(host)));
    return Math.min(...controllers.flatMap((out) => [...stands].map((stand) => this.between(stand, array, out).paths ?? 0)));
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

  private readonly counts = new Map<string, readonly HostPathCount[]>();

  /** Says in one text all of an array on which its paths depend: its site, and in each network its addresses and the ports without one. */
  private keyOf(array: PlanRow<"arrays">): string {
    const ports = groupBy(this.ports.of(array), ({ network }) => network);
    const stands = [...ports].map(([network, own]) => {
      const addresses = new Set(own.flatMap(({ address }) => (address === null || network?.isIp === false ? [] : [formatAddress(address)])));
      const without = own.filter(({ address }) => address === null || network?.isIp === false).length;
      return `${network?.row.row ?? "none"}:${addresses.size}:${without}`;
    });
    return `${stands.join(" ")}\n${foldName(array.site)}`;
  }

  private readonly stands = new Map<string, HostStand>();

  /** Gives how a host stands; hosts that stand alike share one. */
  private readonly standOf = oncePer((host: PlanRow<"hosts">): HostStand => {
    const ends = this.hostPorts.endsOf(host);
    const isKnown = ends.every(({ network, address }) => address !== null || isForOther(network) || network?.isIp === false);
    const ports = new Map<Network, Set<string>>();
    for (const [at, { network, address }] of ends.entries()) {
      if (!network?.roles.has("data") || (address === null && network.isIp)) continue;
      const own = ports.get(network) ?? new Set<string>();
      ports.set(network, own.add(address === null || !network.isIp ? `port ${at}` : formatAddress(address)));
    }
    const networks = this.networksOf(host);
    const data = new Map([...ports].map(([network, own]) => [network, own.size]));
    const counts = [...data].map(([{ row }, count]) => `${row.row}:${count}`);
    const key = `${isKnown} ${networks?.map(({ row }) => row.row).join(" ") ?? "unknown"}\n${counts.join(" ")}`;
    const known = this.stands.get(key) ?? { networks, isKnown, data };
    this.stands.set(key, known);
    return known;
  });

  /** Counts the paths between hosts that stand alike and an array, without those of a controller that is out. */
  private between({ networks: own, isKnown: isHostKnown, data }: HostStand, array: PlanRow<"arrays">, out?: string): Omit<HostPathCount, "host"> {
    const ports = this.ports.of(array).filter(({ row }) => out === undefined || foldName(row.controller) !== foldName(out));
    // A network without a role may be for data or not, and a port without an address may be in use or not: then no figure is given.
    const isKnown = own !== null && isHostKnown && ports.length > 0 && ports.every(({ network, address }) => {
      return network !== null && (!own.includes(network) || (network.roles.size > 0 && (address !== null || !network.isIp)));
    });
    if (!isKnown) return { paths: null, networks: [] };
    const arrayPorts = ports.map(({ row, network }) => ({ device: "array", network: row.network, address: network?.isIp === true ? row.address : null }));
    const hostPorts = [...data].flatMap(([{ row }, count]) => Array.from({ length: count }, () => ({ device: "host", network: row.network, address: null })));
    const networks = [...new Set(own)].filter((network) => network.roles.has("data") && ports.some((port) => port.network === network));
    return { paths: hostPorts.length === 0 ? 0 : countPaths(hostPorts, arrayPorts)[0]!.paths, networks };
  }
}
