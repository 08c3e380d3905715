import { foldName } from "../../text";
import type { PlanRow } from "../read";
import { hostCable, hostPortLabel, type HostPorts } from "./host-ports";
import type { Network } from "./networks";
import { once } from "./once";
import { portLabel } from "./port-facts";
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
  readonly all = once((): readonly SwitchCable[] => [
    ...this.ports.all().map(({ row, array, network, to, socket, duty }): SwitchCable => ({
      table: "ports", row, device: array, group: foldName(row.controller), port: foldName(row.port), label: `${row.array} port ${portLabel(row)}`,
      cable: `port\n${foldName(row.array)}\n${socket}`, side: sideOf(duty?.side ?? "", network), network, duty, to,
    })),
    ...this.hostPorts.all().map(({ row, host, network, to }): SwitchCable => ({
      table: "hostPorts", row, device: host, group: "", port: foldName(row.card), label: hostPortLabel(row),
      cable: hostCable(row), side: sideOf(row.side, network), network, duty: null, to,
    })),
  ]);

  /** Groups the rows that share a cable with others, such as the addresses of both families of a port; most rows have theirs alone. */
  readonly shared = once((): readonly (readonly SwitchCable[])[] => {
    const first = new Map<string, SwitchCable>();
    const groups = new Map<string, SwitchCable[]>();
    for (const one of this.all()) {
      const earlier = first.get(one.cable);
      if (earlier === undefined) first.set(one.cable, one);
      else groups.set(one.cable, [...(groups.get(one.cable) ?? [earlier]), one]);
    }
    return [...groups.values()];
  });

  constructor(
    private readonly ports: Ports,
    private readonly hostPorts: HostPorts,
  ) {}
}

function sideOf(own: "A" | "B" | "", network: Network | null): "A" | "B" | "" {
  if (own !== "") return own;
  return network?.roles.has("data") ? network.row.side : "";
}
