import { formatAddress } from "../addressing";
import { cablesOfSwitch, linksOf, linksOfSwitch } from "../handouts";
import { groupBy, keptPortsOf, portLabel, portsOfSwitch, switchEnd, type Network, type PlanModel, type SwitchCable } from "../plan/model";
import type { PlanRow } from "../plan/read";
import { foldName } from "../text";

/** One line of a device on the cabling drawing. */
export interface PortLine {
  /** What the port is called; "" where the line goes on with the port of the line above, or stands for no port. */
  readonly port: string;
  /** Side A or B; the role of its network where it has none and is not for data. */
  readonly side: string;
  readonly network: string;
  readonly address: string;
  /** The other end of its cable, or why there is none. */
  readonly far: string;
  /** Device at the other end; "" for none. */
  readonly farDevice: string;
  /** Both lines of one cable have the same text here; null where no cable begins. */
  readonly cable: string | null;
  /** Lines of one kind are drawn with one stroke: a side, a role or a network. */
  readonly kind: string;
  readonly lack: "cable" | "switch" | "switch port" | "address" | null;
}

/** A device with its ports, as it stands on the cabling drawing. */
export interface DeviceBox {
  readonly column: "arrays" | "switches" | "hosts";
  readonly name: string;
  /** Where it is, and what else is known of it as a whole. */
  readonly note: string;
  /** Rack it is in; "" where the plan does not say. */
  readonly rack: string;
  readonly lines: readonly PortLine[];
}

const blank: PortLine = { port: "", side: "", network: "", address: "", far: "", farDevice: "", cable: null, kind: "", lack: null };
const noCable = "no cable";

/** Lists the arrays, switches and hosts of a site with every port that the plan tells of, each once. */
export function cablingBoxes(model: PlanModel, site: string): readonly DeviceBox[] {
  const ends = groupBy(model.wiring.all(), ({ device }) => device);
  return [
    ...model.rowsWith("arrays", "site", site).map((row): DeviceBox => ({
      column: "arrays", name: row.array, note: placeOf(row.rack, row.model), rack: row.rack, lines: arrayLines(model, row, ends.get(row) ?? []),
    })),
    ...model.rowsWith("switches", "site", site).map((row): DeviceBox => ({
      column: "switches", name: row.switch, note: placeOf(row.rack, row.side === "" ? "" : `side ${row.side}`), rack: row.rack, lines: switchLines(model, row),
    })),
    ...model.rowsWith("hosts", "site", site).map((row): DeviceBox => ({ column: "hosts", name: row.host, note: "", rack: "", lines: hostLines(model, row, ends.get(row) ?? []) })),
  ];
}

function placeOf(rack: string, more: string): string {
  return [rack === "" ? "no rack in the plan" : `rack ${rack}`, more].filter((part) => part !== "").join(", ");
}

/** Lists the ports of an array in the order of its controllers, then those of which only the Ports table tells. */
function arrayLines(model: PlanModel, array: PlanRow<"arrays">, ends: readonly SwitchCable[]): PortLine[] {
  const bySocket = groupBy(ends, ({ group, port }) => `${group}\n${port}`);
  const sockets = model.ports.socketsOf(array) ?? [];
  const silent = new Set(model.ports.missing(array).map(({ controller, port }) => `${foldName(controller)}\n${foldName(port)}`));
  const expected = sockets.flatMap((name) => {
    const rows = bySocket.get(name.socket) ?? [];
    bySocket.delete(name.socket);
    if (rows.length > 0) return endLines(portLabel(name), rows);
    return [{ ...blank, port: portLabel(name), address: silent.has(name.socket) ? "not in Ports" : "", far: noCable, lack: "cable" as const }];
  });
  const others = [...bySocket.values()].flatMap((rows) => endLines(portLabel(rows[0]!.row as PlanRow<"ports">), rows));
  return [...expected, ...others];
}

/** Lists the ports of a host; where it has none the addresses of its row, and its links. */
function hostLines(model: PlanModel, host: PlanRow<"hosts">, ends: readonly SwitchCable[]): PortLine[] {
  const byCable = groupBy(ends, ({ cable }) => cable);
  const ports = [...byCable.values()].flatMap((rows) => endLines((rows[0]!.row as PlanRow<"hostPorts">).card || "?", rows));
  const known = ends.length > 0 ? [] : model.hostPorts.endsOf(host);
  const addresses = known.map(({ network, address }): PortLine => ({ ...blank, ...networkWords(network, ""), address: address === null ? "" : formatAddress(address) }));
  const links = model.hostPorts.switchesOf(host) !== null ? [] : linksOf(model, host.host);
  const linked = links.map(({ row, end }) => linkLine(row, end, `${end}, port not said`));
  const none: PortLine[] = ports.length + linked.length > 0 ? [] : [{ ...blank, port: "?", far: noCable, lack: "cable" }];
  return [...ports, ...addresses, ...linked, ...none];
}

/** Lists the rows of one port, one an address: its name stands on the first, the other end of its cable wherever it changes. */
function endLines(port: string, rows: readonly SwitchCable[]): PortLine[] {
  let last: string | null = null;
  return rows.map((end, at): PortLine => {
    const { row, side, network, to } = end;
    const key = cableKey(end);
    const isSame = at > 0 && key === last;
    last = key;
    const far = row.switch === "" ? noCable : row.switchPort === "" ? `${row.switch}, port not said` : switchEnd(row.switch, row.switchPort);
    return {
      port: at === 0 ? port : "",
      ...networkWords(network, side),
      network: row.network,
      address: row.address,
      far: isSame ? "" : far,
      farDevice: isSame ? "" : row.switch,
      cable: isSame || row.switch === "" ? null : key,
      lack: isSame ? null : row.switch === "" ? "cable" : to === null ? "switch" : row.switchPort === "" ? "switch port" : row.address === "" ? "address" : null,
    };
  });
}

/** Says which side or role a network has, and of which kind a line in it is. */
function networkWords(network: Network | null, side: string): Pick<PortLine, "side" | "network" | "kind"> {
  const ownSide = side !== "" ? side : network?.roles.has("data") === true ? network.row.side : "";
  const role = network === null || network.roles.has("data") ? "" : ([...network.roles][0] ?? "");
  const ownKind = network === null ? "network not known" : network.row.network;
  return { side: ownSide === "" ? role : ownSide, network: network?.row.network ?? "", kind: ownSide !== "" ? `side ${ownSide}` : role !== "" ? role : ownKind };
}

/** Lists the ports of a switch in their order: cables, runs of kept and of free ports, cables whose port is not one of them, and links. */
function switchLines(model: PlanModel, row: PlanRow<"switches">): PortLine[] {
  const cables = groupBy(cablesOfSwitch(model, row), (cable) => foldName(cable[0]!.row.switchPort));
  const kept = keptPortsOf(row) ?? new Set<string>();
  const ports = portsOfSwitch(row);
  const lines: PortLine[] = [];
  let run: { readonly of: "kept" | "free"; readonly ports: string[] } | null = null;
  const endRun = (): void => {
    if (run !== null) lines.push(runLine(run.of, run.ports));
    run = null;
  };
  for (const [port = ""] of groupBy(ports ?? [], foldName).values()) {
    const here = cables.get(foldName(port));
    cables.delete(foldName(port));
    if (here !== undefined) {
      endRun();
      lines.push(...here.map(cableLine));
      continue;
    }
    const of = kept.has(foldName(port)) ? "kept" : "free";
    if ((run as { readonly of: string } | null)?.of !== of) endRun();
    run ??= { of, ports: [] };
    run.ports.push(port);
  }
  endRun();
  const unsaid = cables.get("") ?? [];
  cables.delete("");
  lines.push(...[...cables.values(), unsaid].flat().map(cableLine));
  if (ports === null) lines.push({ ...blank, far: "The plan does not say which ports it has." });
  return [...lines, ...linksOfSwitch(model, row).map(({ row: link, end }) => linkLine(link, end, `link to ${end}, port not said`))];
}

function runLine(of: "kept" | "free", ports: readonly string[]): PortLine {
  const [first = "", last = ""] = [ports[0], ports.at(-1)];
  return { ...blank, port: ports.length === 1 ? first : `${first} to ${last}`, far: of === "kept" ? "kept: the plan leaves it alone" : `free${ports.length === 1 ? "" : `: ${ports.length} ports`}` };
}

function cableLine(ends: readonly SwitchCable[]): PortLine {
  const [first] = ends;
  const networks = [...new Set(ends.map(({ row }) => row.network).filter((name) => name !== ""))];
  const { row, side, network, device, label } = first!;
  return {
    ...blank,
    ...networkWords(network, side),
    network: networks.join(", "),
    port: row.switchPort === "" ? "?" : row.switchPort,
    far: label,
    farDevice: device === null ? "" : "array" in device ? device.array : "host" in device ? device.host : "",
    cable: cableKey(first!),
    lack: row.switchPort === "" ? "switch port" : null,
  };
}

/** Names a cable: one port of a device and one of a switch. */
function cableKey({ cable, row }: SwitchCable): string {
  return `${cable}\n\n${foldName(row.switch)}\n${foldName(row.switchPort)}`;
}

/** Makes the line of an end of a link, of which the plan never says the port. */
function linkLine({ row }: PlanRow<"links">, end: string, far: string): PortLine {
  return { ...blank, port: "?", far, farDevice: end, cable: `link\n${row}`, kind: "link", lack: "switch port" };
}
