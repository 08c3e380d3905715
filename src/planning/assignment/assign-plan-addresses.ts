import type { WorkbookSnapshot } from "../../sheet";
import { assignAddresses, containsAddress, formatAddress, formatPrefix, parseAddress, parseBlocks, parsePrefix, RangeList, type Address, type Prefix } from "../addressing";
import { appendRows, noChanges, type CellWrite, type Changes } from "../plan/changes";
import { clusterUse, groupBy, hostPortLabel, hostPortUse, PlanModel, portLabel, portUse, type ExpectedPort, type HostPortFacts, type Network, type UsedAddress } from "../plan/model";
import { requireTables, type PlanRow } from "../plan/read";
import type { TableRow } from "../plan/schema";
import { noAnswer, Problem, splitNames } from "../text";

/** Something that is to be given an address of a network: what for, and what is written once there is one. */
interface Want {
  readonly network: Network;
  readonly use: string;
  readonly label: string;
  readonly write: (address: string) => void;
}

/**
 * Plans an address for every port of every array, for every cluster without a shared address, and for every host port that names its network;
 * what stands stays. A port that belongs in a network of another kind than IP gets its row alone.
 *
 * The p-th port of a controller takes the networks of its site in turn, data networks first, each address family apart; a row that names
 * its network gets one of that, and its MTU where that says one. The lowest free address comes first: what a network keeps back, and whatever
 * the plan uses anywhere in its routing table (gateways, time and name servers, receivers of alerts, ports, clusters, hosts), is passed over.
 * Arrays come in the order of their rows, the clusters after them, hosts last.
 *
 * Refuses an address, prefix or range that cannot be read, and a table that is missing; no answer where a network is full.
 */
export function assignPlanAddresses(workbook: WorkbookSnapshot): Changes {
  const model = new PlanModel(workbook);
  requireTables(model.plan, ["arrays", "networks", "ports"]);
  refuseUnreadable(model);

  const sheet = new AddressWriter(model);
  const wants = [
    ...model.rows("arrays").flatMap((array) => wantsOfPorts(model, array, sheet)),
    ...model.rows("clusters").flatMap((cluster) => wantsOfCluster(model, cluster, sheet)),
    ...model.hostPorts.all().flatMap((port) => wantsOfHostPort(port, sheet)),
  ];
  const used = groupBy(model.addresses.all(), ({ routing }) => routing);
  for (const [network, list] of groupBy(wants, (want) => want.network)) fillNetwork(network, list, used.get(network.routing) ?? [], model.addresses.keptIn(network));
  return sheet.changes();
}

/** What is written into the plan: cells of rows that stand, and rows that are added. */
class AddressWriter {
  private readonly writes: CellWrite[] = [];
  private readonly added: (Record<"array" | "controller" | "port" | "network", string> & { address: string | null; mtu: number | null })[] = [];

  constructor(private readonly model: PlanModel) {}

  cell(table: "ports" | "clusters" | "hostPorts", row: number, column: string, value: string | number): void {
    const write = this.model.write({ table, row, column }, value);
    if (write !== null) this.writes.push(write);
  }

  /** Adds a row at once, so that rows stand in the order of arrays and ports, whatever network they are in; its address is filled in later. */
  row(array: string, { controller, port, network }: ExpectedPort): (address: string) => void {
    const row = { array, controller, port, network: network.row.network, address: null as string | null, mtu: network.isIp ? network.row.mtu : null };
    this.added.push(row);
    return (address) => {
      row.address = address;
    };
  }

  changes(): Changes {
    const rows: readonly TableRow<"ports">[] = this.added;
    const table = this.model.table("ports");
    const appended = table === null ? noChanges : appendRows(this.model.workbook, table, "ports", rows);
    return { writes: [...this.writes, ...appended.writes], growths: appended.growths };
  }
}

function wantsOfPorts(model: PlanModel, array: PlanRow<"arrays">, sheet: AddressWriter): Want[] {
  return model.ports.expected(array).flatMap((port): Want[] => {
    const { row, network } = port;
    if (row !== null && row.address !== "") return [];
    const write = row === null ? sheet.row(array.array, port) : (address: string) => {
      sheet.cell("ports", row.row, "address", address);
      if (row.network === "") sheet.cell("ports", row.row, "network", network.row.network);
      if (row.mtu === null && network.row.mtu !== null) sheet.cell("ports", row.row, "mtu", network.row.mtu);
    };
    return !network.isIp ? [] : [{ network, use: portUse(array.array, array.portSharing, port), label: `${array.array} port ${portLabel(port)}`, write }];
  });
}

function wantsOfCluster(model: PlanModel, cluster: PlanRow<"clusters">, sheet: AddressWriter): Want[] {
  const network = cluster.sharedAddress === "" ? model.networks.named(cluster.network) : null;
  if (!network?.prefix) return [];
  const write = (address: string): void => sheet.cell("clusters", cluster.row, "sharedAddress", address);
  return [{ network, use: clusterUse(cluster), label: `cluster ${cluster.cluster}`, write }];
}

function wantsOfHostPort({ row, network }: HostPortFacts, sheet: AddressWriter): Want[] {
  if (row.address !== "" || !network?.prefix) return [];
  const write = (address: string): void => sheet.cell("hostPorts", row.row, "address", address);
  return [{ network, use: hostPortUse(row), label: hostPortLabel(row), write }];
}

/** Gives each use one address of a network: controllers that share a port number's are one use. */
function fillNetwork(network: Network, wants: readonly Want[], used: readonly UsedAddress[], kept: readonly Address[]): void {
  const { prefix, reserved } = network;
  if (prefix === null) return;
  const taken = new RangeList(prefix.family);
  for (const address of kept) taken.addRange(address, address);
  for (const { first, last } of reserved ?? []) if (first.family === prefix.family) taken.addRange(first, last);
  const addresses = new Map<string, Address>();
  for (const { use, address, network: own } of used) {
    if (address.family !== prefix.family || (own !== network && !containsAddress(prefix, address))) continue;
    taken.addRange(address, address);
    if (own === network && !addresses.has(use)) addresses.set(use, address);
  }
  const names = new Map<string, Want>();
  for (const one of wants) if (!addresses.has(one.use) && !names.has(one.use)) names.set(one.use, one);
  const assigned = assignOrExplain(network, prefix, [...names.values()], taken);
  [...names.keys()].forEach((use, at) => addresses.set(use, assigned[at]!));
  for (const one of wants) one.write(formatAddress(addresses.get(one.use)!));
}

function assignOrExplain({ row }: Network, prefix: Prefix, wants: readonly Want[], taken: RangeList): Address[] {
  try {
    return assignAddresses(prefix, wants.map(({ use }, at) => ({ value: use, row: at + 1 })), [], taken);
  } catch (thrown) {
    if (!(thrown instanceof Problem) || thrown.kind !== "no-answer") throw thrown;
    const last = wants.find(({ use }) => use === thrown.received)?.label ?? "a port";
    throw noAnswer("Networks", row.network, `Network ${row.network} (${formatPrefix(prefix)}) has no address left for ${last}. Give it a larger prefix.`);
  }
}

/** Refuses the first cell that must be read and cannot: an address that is not seen might be given away again. */
function refuseUnreadable(model: PlanModel): void {
  for (const { row, isIp, gateway, reserved } of model.networks.all()) {
    if (!isIp) continue;
    const place = `Networks row ${row.row + 1}`;
    if (row.prefix !== "") parsePrefix(row.prefix, `${place} prefix`);
    if (gateway === null) parseAddress(row.gateway, `${place} gateway`);
    if (reserved === null) parseBlocks(row.reserved, `${place} reserved`);
  }
  for (const { row, network, address } of model.ports.all()) {
    if (row.address !== "" && address === null && network?.isIp !== false) parseAddress(row.address, `Ports row ${row.row + 1} address`);
  }
  for (const row of model.rows("clusters")) if (row.sharedAddress !== "") parseAddress(row.sharedAddress, `Clusters row ${row.row + 1} shared address`);
  for (const { row, network, address } of model.hostPorts.all()) {
    if (row.address !== "" && address === null && network?.isIp !== false) parseAddress(row.address, `Host ports row ${row.row + 1} address`);
  }
  for (const row of model.rows("hosts")) for (const text of splitNames(row.address)) parseAddress(text, `Hosts row ${row.row + 1} address`);
}
