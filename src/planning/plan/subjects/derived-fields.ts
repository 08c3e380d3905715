import { formatAddress, formatMask, pingSize, readAddress, type Family } from "../../addressing";
import { ampsOf, andMore, foldName, formatAmps, formatPercent, formatTerabytes } from "../../text";
import { controllersOf, topUnit, usualMtu, type Network, type PlanModel } from "../model";
import type { PlanRow } from "../read";
import type { DerivedTexts } from "../schema";

/** Derives the fields of an array. */
export function deriveArrayFields(model: PlanModel, array: PlanRow<"arrays">): DerivedTexts<"Array"> {
  const capacity = model.capacity.of(array);
  const addresses = new Set(model.rowsWith("ports", "array", array.array).map(({ address }) => foldName(address)).filter((one) => one !== ""));
  return {
    "Cluster act": model.places.clusterActOf(array),
    "Controller count": String(controllersOf(array)?.length ?? ""),
    "Top unit": array.bottomUnit === null ? "" : String(topUnit(array.bottomUnit, array.units)),
    "Usable": capacity === null ? "" : formatTerabytes(capacity.usable),
    "Usable before reserve": capacity === null ? "" : formatTerabytes(capacity.usable + capacity.reserve),
    "Addresses": addresses.size === 0 ? "" : String(addresses.size),
    "Paths": String(model.hostPaths.fewestTo(array) ?? ""),
    "Host paths": describePaths(model, array),
    "Rebuild hours": model.capacity.rebuildHoursOf(array)?.toPrecision(2) ?? "",
    "Feed load": describeFeedLoads(model, array),
  };
}

/** Says host by host how many paths it has to an array. */
function describePaths(model: PlanModel, array: PlanRow<"arrays">): string {
  const hosts = model.hostPaths.to(array).map(({ host, paths }) => `${host.host} ${paths ?? "not known"}`);
  return hosts.length === 0 ? "no host is planned" : hosts.join(", ");
}

/** Says in one line what the feeds of an array carry at worst; blank where the plan does not tell. */
function describeFeedLoads(model: PlanModel, array: PlanRow<"arrays">): string {
  return model.power
    .loadsOf([array])
    .map(({ worst: { feed, worstAmps, limitAmps, share } }) => `${feed} at worst ${ampsOf(worstAmps)} of ${formatAmps(limitAmps)} (${formatPercent(share)})`)
    .join(", ");
}

/** Derives the fields of a controller. */
export function deriveControllerFields(controller: string, isFirst: boolean): DerivedTexts<"Controller"> {
  return { "Controller": controller, "First controller": isFirst ? "yes" : "no" };
}

/** Derives the fields of a row of the Ports table, of a port of an array. */
export function derivePortFields(model: PlanModel, array: PlanRow<"arrays">, port: PlanRow<"ports">, network: Network | null, isFirst: boolean): DerivedTexts<"Port"> {
  const places = { "First controller": isFirst ? "yes" : "no", "Own address": array.portSharing === "array" && !isFirst ? "no" : "yes" } as const;
  if (network?.isIp === false) return { ...places, "Port MTU": "", "Ping size": "", "Ping too large": "", "Ping targets": "" };
  const mtu = port.mtu ?? network?.mtu ?? usualMtu;
  const family = readAddress(port.address)?.family ?? network?.prefix?.family ?? 4;
  const size = pingSize(mtu, family);
  return {
    ...places,
    "Port MTU": String(mtu),
    "Ping size": String(size),
    "Ping too large": String(size + 1),
    "Ping targets": pingTargets(model, array, network, family),
  };
}

/** How many targets are named: more nobody types. */
const mostTargets = 8;

/** Names what a port can be tried against: every host in its network, else the ports of other arrays there. */
function pingTargets(model: PlanModel, array: PlanRow<"arrays">, network: Network | null, family: Family): string {
  const inNetwork = network === null ? [] : model.addresses.all().filter((used) => used.network === network && used.address.family === family);
  const hosts = inNetwork.flatMap((used) => (used.table === "hosts" || used.table === "hostPorts" ? [`${formatAddress(used.address)} (${used.row.host})`] : []));
  const others = inNetwork.flatMap((used) => (used.table === "ports" && foldName(used.row.array) !== foldName(array.array) ? [`${formatAddress(used.address)} (${used.row.array})`] : []));
  const targets = [...new Set(hosts.length > 0 ? hosts : others)];
  if (targets.length === 0) return `a device at the far end of ${network === null ? "its network" : network.row.network}, which the plan does not know`;
  return andMore(targets.slice(0, mostTargets).join(", "), Math.max(0, targets.length - mostTargets));
}

/** Derives the fields of a network. */
export function deriveNetworkFields(network: Network | null): DerivedTexts<"Network"> {
  const prefix = network?.prefix ?? null;
  if (prefix === null) return { "Prefix length": "", "Netmask": "" };
  return { "Prefix length": String(prefix.length), "Netmask": prefix.family === 4 ? formatMask(prefix.length) : "" };
}

/** Names the first controller of an array; blank where the plan does not say. */
export function firstController(model: PlanModel, array: PlanRow<"arrays">): string {
  if (array.controllers === "") return model.rowsWith("ports", "array", array.array)[0]?.controller ?? "";
  return controllersOf(array)?.[0] ?? "";
}
