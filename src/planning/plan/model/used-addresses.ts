import { containsAddress, isSameAddress, readAddress, type Address } from "../../addressing";
import { splitNames } from "../../text";
import type { PlanRow } from "../read";
import { gather } from "./gather";
import { hostPortLabel, hostPortUse, type HostPorts } from "./host-ports";
import { gatewayAddress, type Network, type Networks } from "./networks";
import { once, oncePer } from "./once";
import type { PlanRows } from "./plan-rows";
import { portLabel, portUse } from "./port-facts";
import type { Ports } from "./ports";

type Holder =
  | { readonly table: "ports"; readonly column: "address"; readonly row: PlanRow<"ports"> }
  | { readonly table: "clusters"; readonly column: "sharedAddress"; readonly row: PlanRow<"clusters"> }
  | { readonly table: "hosts"; readonly column: "address"; readonly row: PlanRow<"hosts"> }
  | { readonly table: "hostPorts"; readonly column: "address"; readonly row: PlanRow<"hostPorts"> };

/** An address in use, and the cell that holds it: of a port, of a cluster or of a host. */
export type UsedAddress = Holder & {
  /** Cells with the same use are one: the address of a port number that controllers share, say. */
  readonly use: string;
  readonly address: Address;
  /** Network that its row names, else the one of its site in which it lies. */
  readonly network: Network | null;
  /** Routing table of that network, or of its site where it is in none. */
  readonly routing: string;
};

/** An address that a site uses though no row of the plan holds it: a server that its arrays are told of. */
export interface ServiceAddress {
  readonly row: PlanRow<"sites">;
  /** What it does, such as "time server". */
  readonly does: string;
  readonly address: Address;
  /** Routing table of the network in which it lies, or of its site where it is in none. */
  readonly routing: string;
}

const services = [["timeServers", "time server"], ["nameServers", "name server"], ["alertsTo", "receiver of alerts"]] as const;

/** The addresses that a plan uses. */
export class UsedAddresses {
  /** Lists every address in use that can be read: ports first, then clusters, then ports of hosts, then hosts. */
  readonly all = once((): readonly UsedAddress[] => [...this.ofPorts(), ...this.ofClusters(), ...this.ofHostPorts(), ...this.ofHosts()]);

  constructor(
    private readonly rows: PlanRows,
    private readonly networks: Networks,
    private readonly ports: Ports,
    private readonly hostPorts: HostPorts,
  ) {}

  /** Lists the addresses among the time servers, name servers and receivers of alerts of all sites; names are passed over. */
  readonly services = once((): readonly ServiceAddress[] =>
    gather(this.rows.rows("sites"), (row) =>
      services.flatMap(([column, does]) =>
        splitNames(row[column]).flatMap((text): ServiceAddress[] => {
          const address = readAddress(text);
          return address === null ? [] : [{ row, does, address, routing: this.routingOf(this.networks.holding(row.site, address), row.site) }];
        }),
      ),
    ),
  );

  /** Lists, for a network, the addresses in it that nobody may be given: every gateway and every server of its routing table. */
  readonly keptIn = oncePer(({ prefix, routing }: Network): readonly Address[] => {
    if (prefix === null) return [];
    const gateways = this.networks.all().flatMap((network) => (network.routing === routing ? (gatewayAddress(network) ?? []) : []));
    const servers = this.services().flatMap((service) => (service.routing === routing ? [service.address] : []));
    return [...gateways, ...servers].filter((address) => address.family === prefix.family && containsAddress(prefix, address));
  });

  private ofPorts(): UsedAddress[] {
    const used: UsedAddress[] = [];
    for (const { row, array, network, address } of this.ports.all()) {
      if (address === null || network?.isIp === false) continue;
      const use = portUse(row.array, array?.portSharing ?? "", row);
      const own = network ?? (array === null ? null : this.networks.holding(array.site, address));
      used.push({ table: "ports", column: "address", row, use, address, network: own, routing: this.routingOf(own, array?.site ?? "") });
    }
    return used;
  }

  private ofClusters(): UsedAddress[] {
    return gather(this.rows.rows("clusters"), (row): UsedAddress[] => {
      const address = readAddress(row.sharedAddress);
      if (address === null) return [];
      const network = this.networks.named(row.network);
      return [{ table: "clusters", column: "sharedAddress", row, use: clusterUse(row), address, network, routing: this.routingOf(network, "") }];
    });
  }

  private ofHostPorts(): UsedAddress[] {
    return gather(this.hostPorts.all(), ({ row, host, network, address }): UsedAddress[] => {
      if (address === null || network?.isIp === false) return [];
      const own = network ?? (host === null ? null : this.networks.holding(host.site, address));
      return [{ table: "hostPorts", column: "address", row, use: hostPortUse(row), address, network: own, routing: this.routingOf(own, host?.site ?? "") }];
    });
  }

  /** Lists what the row of a host says besides its ports: an address that only one of the two tables has is in use all the same. */
  private ofHosts(): UsedAddress[] {
    return gather(this.rows.rows("hosts"), (row) => {
      const told = this.hostPorts.of(row).flatMap(({ address }) => address ?? []);
      return this.hostPorts.shorthandOf(row).flatMap((address, at): UsedAddress[] => {
        if (told.some((other) => isSameAddress(other, address))) return [];
        const network = this.networks.holding(row.site, address);
        return [{ table: "hosts", column: "address", row, use: `host\n${row.row}\n${at}`, address, network, routing: this.routingOf(network, row.site) }];
      });
    });
  }

  private routingOf(network: Network | null, site: string): string {
    return network?.routing ?? this.networks.routingAt(site);
  }
}

/** Names the use of a cluster's shared address. */
export function clusterUse({ row }: PlanRow<"clusters">): string {
  return `cluster\n${row}`;
}

/** Names what uses an address, for a sentence. */
export function userOf(used: UsedAddress): string {
  switch (used.table) {
    case "ports":
      return `${used.row.array} port ${portLabel(used.row)}`;
    case "clusters":
      return `cluster ${used.row.cluster}`;
    case "hosts":
      return `host ${used.row.host}`;
    case "hostPorts":
      return `host ${hostPortLabel(used.row)}`;
  }
}

/** Makes a key under which an address of one routing table is found again, however it is spelt. */
export function addressKey({ family, word0, word1, word2, word3 }: Address, routing: string): string {
  return family === 4 ? `${routing}\n${word3}` : `${routing}\n${word0}:${word1}:${word2}:${word3}`;
}
