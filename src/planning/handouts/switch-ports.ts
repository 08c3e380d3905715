import { groupBy, keptPortsOf, portsOfSwitch, type PlanModel, type SwitchCable } from "../plan/model";
import type { PlanRow } from "../plan/read";
import { foldName } from "../text";

/** A port of a switch as its owner sets it up. */
export interface SwitchPortLine {
  readonly port: string;
  /** Numbers of the VLANs of its networks; "" where they are untagged. */
  readonly vlan: string;
  /** Largest packet that what is plugged in sends, in bytes; null where that is not known. */
  readonly mtu: number | null;
  readonly description: string;
}

/**
 * Lists what goes into the ports of a switch, in the order of its ports; those of which the plan names no port, and links, come last.
 *
 * Rows of one cable make one line: its VLANs side by side, the largest of its MTUs.
 */
export function portLinesOf(model: PlanModel, row: PlanRow<"switches">): SwitchPortLine[] {
  const order = new Map((portsOfSwitch(row) ?? []).map((port, at) => [foldName(port), at]));
  const rank = ({ port }: SwitchPortLine): number => (port === "" ? Infinity : (order.get(foldName(port)) ?? order.size));
  const lines = cablesOfSwitch(model, row).map(lineOf).sort((a, b) => compare(rank(a), rank(b)) || a.port.localeCompare(b.port, "en", { numeric: true }));
  return [...lines, ...keptLines(row), ...linkLines(model, row)];
}

/** Lists what is plugged into a switch, cable by cable: the rows of one cable together. */
export function cablesOfSwitch(model: PlanModel, row: PlanRow<"switches">): readonly (readonly SwitchCable[])[] {
  const rows = model.wiring.all().filter(({ to }) => to === row);
  return [...groupBy(rows, ({ cable, row: { switchPort } }) => `${cable}\n${foldName(switchPort)}`).values()];
}

/** Lists the links of a switch to switches and to hosts that are cabled by Links alone, each with the name of its other end. */
export function linksOfSwitch(model: PlanModel, { switch: name }: PlanRow<"switches">): readonly LinkEnd[] {
  return linksOf(model, name).filter(({ end }) => end !== "" && (model.find("switches", end) !== null || model.hostPorts.isByLinksAlone(end)));
}

/** A link, and the name of its other end. */
export interface LinkEnd {
  readonly row: PlanRow<"links">;
  readonly end: string;
}

/** Lists the links of a switch or a host. */
export function linksOf(model: PlanModel, name: string): readonly LinkEnd[] {
  return [...model.rowsWith("links", "from", name).map((row) => ({ row, end: row.to })), ...model.rowsWith("links", "to", name).map((row) => ({ row, end: row.from }))];
}

function compare(a: number, b: number): number {
  return a === b ? 0 : a < b ? -1 : 1;
}

function lineOf(cables: readonly SwitchCable[]): SwitchPortLine {
  const [first] = cables;
  const networks = [...new Set(cables.flatMap(({ network }) => network ?? []))];
  const vlans = [...new Set(networks.flatMap(({ row }) => row.vlan ?? []))];
  const mtus = cables.flatMap(({ row, network }) => row.mtu ?? (network?.isIp === true ? network.mtu : []));
  return {
    port: first!.row.switchPort,
    vlan: vlans.join(", "),
    mtu: mtus.length === 0 ? null : Math.max(...mtus),
    description: [first!.label, ...networks.map(({ row }) => row.network), socketText(first!)].filter((text) => text !== "").join(", "),
  };
}

/** Says what the other end is like, by its model: speed and connector, as far as it tells. */
function socketText({ duty }: SwitchCable): string {
  return duty === null ? "" : [duty.gbits === null ? "" : `${duty.gbits} Gbit/s`, duty.connector].filter((text) => text !== "").join(" ");
}

function keptLines(row: PlanRow<"switches">): SwitchPortLine[] {
  return (keptPortsOf(row)?.size ?? 0) === 0 ? [] : [{ port: row.keptPorts, vlan: "", mtu: null, description: "kept: the plan leaves it alone" }];
}

function linkLines(model: PlanModel, row: PlanRow<"switches">): SwitchPortLine[] {
  return linksOfSwitch(model, row).map(({ end }) => ({ port: "", vlan: "", mtu: null, description: `link to ${end}, whose port the plan does not say` }));
}
