import type { WorkbookSnapshot } from "../../sheet";
import type { CellWrite, Changes } from "../plan/changes";
import { groupBy, keptPortsOf, oncePer, PlanModel, portsOfSwitch, type SwitchCable } from "../plan/model";
import { requireTables, type PlanRow } from "../plan/read";
import { foldName } from "../text";

/** One cable: from a port of a controller or of a host, whose rows (one an address) it serves all, to a switch. */
interface Cable {
  /** What must not hang on one switch: a controller, or the host. */
  readonly controller: string;
  readonly port: string;
  readonly table: SwitchCable["table"];
  readonly rows: readonly SwitchCable["row"][];
  /** Whether it is in a data network, and the sides of its data networks. */
  readonly isData: boolean;
  readonly sides: ReadonlySet<string>;
  /** Switches of the site that carry all its networks, in the order of their rows; those of its side alone, where there are any. */
  readonly candidates: readonly PlanRow<"switches">[];
  /** Switch that a row names already; it stays. */
  readonly planned: string;
  chosen: PlanRow<"switches"> | null;
}

/**
 * Proposes a switch, and a port of it, for every port of an array or a host that is not cabled; what stands stays. Host ports also get the MTU of
 * their network.
 *
 * A port goes only to a switch of its site that carries its networks, of its network's side where sides are named; data networks of two sides
 * never share a switch if they need not. Each controller, and each host, reaches two switches where its ports allow it, its data ports first, and where two
 * switches carry a network the same port of two controllers goes to different ones. Cables with the least choice are laid first; of equally
 * good switches the one with the fewest cables is taken. The port of a switch is the first free one of those that it has and that are not
 * kept; where the switch does not say which it has, ports are numbered from 1 if all that are named there are numbers, else left to a person.
 */
export function proposeCabling(workbook: WorkbookSnapshot): Changes {
  const model = new PlanModel(workbook);
  requireTables(model.plan, ["arrays", "ports", "switches"]);
  const load = new Map<PlanRow<"switches">, number>();
  const ports = new SwitchPorts(model);
  const writes: CellWrite[] = [];
  for (const { site, ends } of devicesOf(model)) {
    const cables = cablesOf(model, site, ends);
    chooseSwitches(cables, load, ports);
    for (const cable of cables) writes.push(...writesOf(model, cable, ports));
  }
  return { writes: [...writes, ...mtusOf(model)], growths: [] };
}

/** Lists what is cabled as one: the ports of each array, then those of each host. */
function devicesOf(model: PlanModel): { readonly site: string; readonly ends: readonly SwitchCable[] }[] {
  const ends = groupBy(model.wiring.all(), ({ device }) => device);
  return [...model.rows("arrays"), ...model.rows("hosts")].map((row) => ({ site: row.site, ends: ends.get(row) ?? [] }));
}

/** Fills the MTU of host ports that have none; those of arrays get theirs with their address. */
function mtusOf(model: PlanModel): CellWrite[] {
  return model.hostPorts.all().flatMap(({ row, network }) => {
    const mtu = row.mtu === null && network?.isIp === true ? network.row.mtu : null;
    return (mtu === null ? null : model.write({ table: "hostPorts", row: row.row, column: "mtu" }, mtu)) ?? [];
  });
}

function cablesOf(model: PlanModel, site: string, ends: readonly SwitchCable[]): Cable[] {
  const switches = model.rowsWith("switches", "site", site);
  return [...groupBy(ends, ({ cable }) => cable).values()].map((ports): Cable => {
    const rows = ports.map(({ row }) => row);
    const { table, group, port } = ports[0]!;
    const planned = rows.find((row) => row.switch !== "")?.switch ?? "";
    const networks = rows.map(({ network }) => network).filter((network) => network !== "").map(foldName);
    const carries = (one: PlanRow<"switches">): boolean => networks.length > 0 && networks.every((network) => model.networks.carriedBy(one).has(network));
    const sides = new Set<string>(ports.map(({ side }) => side).filter((side) => side !== ""));
    const carrying = switches.filter(carries);
    const ofSide = carrying.filter(({ side }) => sides.has(side));
    const candidates = ofSide.length > 0 ? ofSide : carrying;
    return { controller: group, port, table, rows, isData: ports.some(({ network }) => network?.roles.has("data")), sides, candidates, planned, chosen: model.find("switches", planned) };
  });
}

function chooseSwitches(cables: readonly Cable[], load: Map<PlanRow<"switches">, number>, ports: SwitchPorts): void {
  for (const { chosen } of cables) if (chosen !== null) load.set(chosen, (load.get(chosen) ?? 0) + 1);
  const open = cables.filter(({ planned, candidates }) => planned === "" && candidates.length > 0);
  for (const cable of [...open].sort((a, b) => a.candidates.length - b.candidates.length)) {
    const costs = cable.candidates.map((to) => [
      Number(open.filter(({ chosen }) => chosen === to).length >= ports.left(to)), otherSides(cables, cable, to), meetings(cables, cable, to),
      cable.isData ? cablesTo(cables.filter(({ isData }) => isData), cable, to) : 0, cablesTo(cables, cable, to), load.get(to) ?? 0,
    ]);
    cable.chosen = cable.candidates[leastOf(costs)]!;
    load.set(cable.chosen, (load.get(cable.chosen) ?? 0) + 1);
  }
  for (const cable of open) moveIfAlone(cables, cable, load);
}

/** Counts the cables of the array in data networks of another side that go to the same switch. */
function otherSides(cables: readonly Cable[], { sides }: Cable, to: PlanRow<"switches">): number {
  return cables.filter((other) => other.chosen === to && sides.size > 0 && [...other.sides].some((side) => !sides.has(side))).length;
}

/** Counts the other controllers whose port of the same name goes to the same switch. */
function meetings(cables: readonly Cable[], { controller, port }: Cable, to: PlanRow<"switches">): number {
  return cables.filter((other) => other.controller !== controller && other.port === port && other.chosen === to).length;
}

/** Counts the other cables of the controller that go to the same switch. */
function cablesTo(cables: readonly Cable[], cable: Cable, to: PlanRow<"switches">): number {
  return cables.filter((other) => other !== cable && other.controller === cable.controller && other.chosen === to).length;
}

/** Lays a cable anew where its controller would otherwise reach one switch only, even if the same port of another goes there too. */
function moveIfAlone(cables: readonly Cable[], cable: Cable, load: Map<PlanRow<"switches">, number>): void {
  const own = cables.filter(({ controller, chosen }) => controller === cable.controller && chosen !== null);
  if (own.length < 2 || new Set(own.map(({ chosen }) => chosen)).size > 1) return;
  const others = cable.candidates.filter((to) => to !== cable.chosen && otherSides(cables, cable, to) === 0);
  if (others.length === 0) return;
  load.set(cable.chosen!, load.get(cable.chosen!)! - 1);
  cable.chosen = others[leastOf(others.map((to) => [meetings(cables, cable, to), load.get(to) ?? 0]))]!;
  load.set(cable.chosen, (load.get(cable.chosen) ?? 0) + 1);
}

/** Finds the place of the least list, compared item by item; the first of equals. */
function leastOf(lists: readonly (readonly number[])[]): number {
  let least = 0;
  lists.forEach((list, at) => {
    const difference = list.map((cost, item) => cost - lists[least]![item]!).find((one) => one !== 0) ?? 0;
    if (difference < 0) least = at;
  });
  return least;
}

function writesOf(model: PlanModel, { table, rows, chosen, planned }: Cable, ports: SwitchPorts): CellWrite[] {
  if (chosen === null && planned === "") return [];
  const to = chosen?.switch ?? planned;
  const open = rows.filter((row) => row.switch === "" || row.switchPort === "");
  if (open.length === 0) return [];
  const switchPort = rows.find((row) => row.switchPort !== "")?.switchPort ?? ports.take(to, chosen);
  return open.flatMap((row) => {
    const cell = { table, row: row.row };
    const writes = [
      row.switch === "" ? model.write({ ...cell, column: "switch" }, to) : null,
      row.switchPort === "" && switchPort !== null ? model.write({ ...cell, column: "switchPort" }, switchPort) : null,
    ];
    return writes.filter((write) => write !== null);
  });
}

/** The ports of each switch that are taken, and the next free ones. */
class SwitchPorts {
  private readonly taken = new Map<string, Set<string>>();

  /** What a switch has to give, in order; null where its row does not say. */
  private readonly offered = oncePer((row: PlanRow<"switches">): readonly string[] | null => {
    const kept = keptPortsOf(row);
    return kept === null ? null : (portsOfSwitch(row)?.filter((port) => !kept.has(foldName(port))) ?? null);
  });

  constructor(model: PlanModel) {
    for (const { row } of model.wiring.all()) if (row.switch !== "" && row.switchPort !== "") this.takenOf(row.switch).add(foldName(row.switchPort));
  }

  /** Counts the free ports of a switch that says which it has; infinitely many of another. */
  left(row: PlanRow<"switches">): number {
    const taken = this.takenOf(row.switch);
    return this.offered(row)?.filter((port) => !taken.has(foldName(port))).length ?? Infinity;
  }

  /** Takes the first free port of a switch; null where it has none, or does not say and its ports are not named by numbers alone. */
  take(to: string, row: PlanRow<"switches"> | null): string | null {
    const taken = this.takenOf(to);
    const offered = row === null ? null : this.offered(row);
    const free = offered === null ? this.nextNumber(taken, row) : (offered.find((port) => !taken.has(foldName(port))) ?? null);
    if (free !== null) taken.add(foldName(free));
    return free;
  }

  private nextNumber(taken: ReadonlySet<string>, row: PlanRow<"switches"> | null): string | null {
    if ([...taken].some((name) => !/^\d+$/.test(name))) return null;
    const kept = row === null ? null : keptPortsOf(row);
    let number = 1;
    while (taken.has(String(number)) || kept?.has(String(number))) number += 1;
    return String(number);
  }

  private takenOf(to: string): Set<string> {
    const key = foldName(to);
    const taken = this.taken.get(key) ?? new Set<string>();
    this.taken.set(key, taken);
    return taken;
  }
}
