import { readAddress, type Address } from "../../addressing";
import { foldName, splitNames } from "../../text";
import type { PlanRow } from "../read";
import { groupBy } from "./group-by";
import type { Network, Networks } from "./networks";
import { once, oncePer } from "./once";
import type { PlanRows } from "./plan-rows";

/** A row of the Host ports table, with what could be read of it. */
export interface HostPortFacts {
  readonly row: PlanRow<"hostPorts">;
  readonly host: PlanRow<"hosts"> | null;
  readonly network: Network | null;
  /** Null where the cell is blank or no address. */
  readonly address: Address | null;
  /** Switch that it is cabled to; null where none is named or it has no row. */
  readonly to: PlanRow<"switches"> | null;
}

/** An end of a path at a host: what one of its ports is in, and under which address. */
export interface HostEnd {
  readonly network: Network | null;
  readonly address: Address | null;
}

/** An initiator name, and the cell that says it. */
export interface Initiator {
  readonly table: "hosts" | "hostPorts";
  readonly row: PlanRow<"hosts"> | PlanRow<"hostPorts">;
}

/**
 * The ports of the hosts of a plan.
 *
 * Where a host has rows in the Host ports table they are what counts; the addresses of its row in Hosts are the shorthand of one without.
 */
export class HostPorts {
  /** Lists every row of the Host ports table. */
  readonly all = once((): readonly HostPortFacts[] => this.rows.rows("hostPorts").map((row) => this.readPort(row)));

  /** Lists the addresses in the row of a host that can be read, whether or not it has rows in Host ports. */
  readonly shorthandOf = oncePer(({ address }: PlanRow<"hosts">): readonly Address[] => splitNames(address).flatMap((text) => readAddress(text) ?? []));

  /** Lists the ends of the paths of a host: its ports, or the addresses of its row where it has none. */
  readonly endsOf = oncePer((host: PlanRow<"hosts">): readonly HostEnd[] => {
    const ports = this.of(host);
    if (ports.length === 0) return this.shorthandOf(host).map((address) => ({ network: this.networks.holding(host.site, address), address }));
    return ports.map(({ network, address }) => ({ network: network ?? (address === null ? null : this.networks.holding(host.site, address)), address }));
  });

  private readonly byHost = once(() => groupBy(this.all(), ({ host }) => host));

  constructor(
    private readonly rows: PlanRows,
    private readonly networks: Networks,
  ) {}

  /** Lists the port rows of a host. */
  of(host: PlanRow<"hosts">): readonly HostPortFacts[] {
    return this.byHost().get(host) ?? [];
  }

  /** Lists the addresses of a host that can be read. */
  addressesOf(host: PlanRow<"hosts">): readonly Address[] {
    return this.endsOf(host).flatMap(({ address }) => address ?? []);
  }

  /**
   * Lists the switches of a host, one for each of its cables; null where none of its ports is cabled.
   *
   * A port in a network that says it is for something other than data carries no path to an array, and is left out.
   */
  switchesOf(host: PlanRow<"hosts">): readonly PlanRow<"switches">[] | null {
    const cables = new Map<string, PlanRow<"switches">>();
    const cabled = this.of(host).filter(({ to }) => to !== null);
    for (const { row, network, to } of cabled) if (to !== null && !isForOther(network)) cables.set(hostSocket(row), to);
    return cabled.length === 0 ? null : [...cables.values()];
  }

  /** Tells whether a name is that of a host whose cables are its Links: no port of it is cabled. */
  isByLinksAlone(name: string): boolean {
    const host = this.rows.find("hosts", name);
    return host !== null && this.switchesOf(host) === null;
  }

  /** Lists every initiator name of the plan, of hosts and of their cards. */
  initiators(): readonly Initiator[] {
    const named = ({ row }: Initiator): boolean => row.initiatorName !== "";
    return [
      ...this.rows.rows("hosts").map((row): Initiator => ({ table: "hosts", row })),
      ...this.rows.rows("hostPorts").map((row): Initiator => ({ table: "hostPorts", row })),
    ].filter(named);
  }

  /** Lists the initiator names of a host, each once: those of its cards, then that of its row. */
  initiatorNamesOf(host: PlanRow<"hosts">): readonly string[] {
    const names = new Map<string, string>();
    for (const { initiatorName } of [...this.of(host).map(({ row }) => row), host]) {
      const key = foldName(initiatorName);
      if (key !== "" && !names.has(key)) names.set(key, initiatorName);
    }
    return [...names.values()];
  }

  private readPort(row: PlanRow<"hostPorts">): HostPortFacts {
    return {
      row,
      host: this.rows.find("hosts", row.host),
      network: this.networks.named(row.network),
      address: readAddress(row.address),
      to: this.rows.find("switches", row.switch),
    };
  }
}

/** Tells whether a network says that it is for something other than data. */
export function isForOther(network: Network | null): boolean {
  return network !== null && network.roles.size > 0 && !network.roles.has("data");
}

/** Writes the host and the port of a row as people read them, such as scan-1 port c1. */
export function hostPortLabel({ host, card }: PlanRow<"hostPorts">): string {
  return card === "" ? host : `${host} port ${card}`;
}

/** Names where the cable of a row is plugged in at its host: rows of one card share it, a row that names none has its own. */
export function hostSocket({ card, row }: PlanRow<"hostPorts">): string {
  return card === "" ? `row ${row}` : foldName(card);
}

/** Names the use of the address of a row: each row has one of its own. */
export function hostPortUse({ row }: PlanRow<"hostPorts">): string {
  return `host port\n${row}`;
}
