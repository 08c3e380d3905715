import { foldName } from "../../text";
import type { PlanRow } from "../read";
import { groupBy } from "./group-by";
import { hostPortLabel, hostSocket, type HostPortFacts, type HostPorts } from "./host-ports";
import type { Network } from "./networks";
import { once } from "./once";
import { portLabel, type PortFacts } from "./port-facts";
import type { Ports } from "./ports";

/** A row that says to which switch a port of an array or of a host is cabled. */
export interface SwitchCable {
  readonly table: "ports" | "hostPorts";
  readonly row: PlanRow<"ports"> | PlanRow<"hostPorts">;
  /** Array or host that has the port; null where it has no row. */
  readonly device: PlanRow<"arrays"> | PlanRow<"hosts"> | null;
  /** Part of the device that is lost as one, without case: a controller; a host has none. */
  readonly group: string;
  /** Name of the port, without case. */
  readonly port: string;
  /** What the port is called, for a sentence, such as `rr-array-1 port A/0`. */
  readonly label: string;
  /** Name of the device that the row gives, without case. */
  readonly owner: string;
  /** Where the cable is plugged in there; rows of one device with the same text share one cable. */
  readonly socket: string;
  /** Rows with the same text share one cable. */
  readonly cable: string;
  /** Side of the port, by its row, its model or its network; blank where neither says, or the network is not for data. */
  readonly side: "A" | "B" | "";
  readonly network: Network | null;
  /** Row of its model that says what the port is for; null where there is none, as of every host. */
  readonly duty: PlanRow<"modelPorts"> | null;
  /** Null where no switch is named or it has no row. */
  readonly to: PlanRow<"switches"> | null;
}

/** What goes into the ports of switches: cables of arrays and of hosts alike. */
export class Wiring {
  /** Lists the rows of all ports of arrays, then those of hosts. */
  readonly all = once((): readonly SwitchCable[] => [...this.ofArrays(), ...this.ofHosts()]);

  /** Groups the rows that share a cable with others, such as the addresses of both families of a port; most rows have theirs alone. */
  readonly shared = once((): readonly (readonly SwitchCable[])[] =>
    [this.ofArrays(), this.ofHosts()]
      .flatMap((rows) => [...groupBy<SwitchCable, string>(rows, ({ owner }) => owner).values()])
      .flatMap((own) => [...groupBy(own, ({ socket }) => socket).values()].filter((rows) => rows.length > 1)),
  );

  private readonly ofArrays = once(() => this.ports.all().map((port) => new ArrayCable(port)));
  private readonly ofHosts = once(() => this.hostPorts.all().map((port) => new HostCable(port)));

  constructor(
    private readonly ports: Ports,
    private readonly hostPorts: HostPorts,
  ) {}
}

// There are many cables, and few of them are ever spoken of: their texts are made when they are asked for.

class ArrayCable implements SwitchCable {
  readonly table = "ports";
  readonly row: PlanRow<"ports">;
  readonly device: PlanRow<"arrays"> | null;
  readonly owner: string;
  readonly socket: string;
  readonly side: "A" | "B" | "";
  readonly network: Network | null;
  readonly duty: PlanRow<"modelPorts"> | null;
  readonly to: PlanRow<"switches"> | null;

  constructor({ row, array, network, to, socket, duty }: PortFacts) {
    [this.row, this.device, this.owner, this.socket] = [row, array, foldName(row.array), socket];
    [this.side, this.network, this.duty, this.to] = [sideOf(duty?.side ?? "", network), network, duty, to];
  }

  get group(): string {
    return foldName(this.row.controller);
  }

  get port(): string {
    return foldName(this.row.port);
  }

  get label(): string {
    return `${this.row.array} port ${portLabel(this.row)}`;
  }

  get cable(): string {
    return `port\n${this.owner}\n${this.socket}`;
  }
}

class HostCable implements SwitchCable {
  readonly table = "hostPorts";
  readonly row: PlanRow<"hostPorts">;
  readonly device: PlanRow<"hosts"> | null;
  readonly owner: string;
  readonly group = "";
  readonly port: string;
  readonly socket: string;
  readonly side: "A" | "B" | "";
  readonly network: Network | null;
  readonly duty = null;
  readonly to: PlanRow<"switches"> | null;

  constructor({ row, host, network, to }: HostPortFacts) {
    [this.row, this.device, this.owner, this.port, this.socket] = [row, host, foldName(row.host), foldName(row.card), hostSocket(row)];
    [this.side, this.network, this.to] = [sideOf(row.side, network), network, to];
  }

  get label(): string {
    return hostPortLabel(this.row);
  }

  get cable(): string {
    return `host port\n${this.owner}\n${this.socket}`;
  }
}

function sideOf(own: "A" | "B" | "", network: Network | null): "A" | "B" | "" {
  if (own !== "") return own;
  return network?.roles.has("data") ? network.row.side : "";
}
