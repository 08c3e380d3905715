import { formatAddress, formatMask, pingSize, readAddress, type Family } from "../../addressing";
import { ampsOf, andMore, foldName, formatAmps, formatPercent, formatTerabytes } from "../../text";
import { controllersOf, frameFor, switchEnd, topUnit, usualMtu, type ExpectedDrive, type HostEnd, type JobPlaces, type Network, type PlanModel, type PlannedFeedLoad } from "../model";
import type { PlanRow } from "../read";
import type { DerivedTexts } from "../schema";

/** Derives the fields of a job. */
export function deriveJobFields(model: PlanModel, { arrays, site }: JobPlaces): DerivedTexts<"Job"> {
  return {
    "With spares": yesOrNo(arrays.some((array) => model.capacity.setsOf(array).some(({ spares }) => (spares ?? 0) > 0))),
    "With hosts": yesOrNo(model.rowsWith("hosts", "site", site.site).length > 0),
  };
}

/** Derives the fields of an array. */
export function deriveArrayFields(model: PlanModel, places: JobPlaces, array: PlanRow<"arrays">): DerivedTexts<"Array"> {
  const capacity = model.capacity.of(array);
  const addresses = new Set(model.rowsWith("ports", "array", array.array).map(({ address }) => foldName(address)).filter((one) => one !== ""));
  return {
    "Cluster act": model.places.clusterActOf(array),
    "Cluster live": yesOrNo(model.places.isLive(array, places.arrays)),
    "Controller count": String(controllersOf(array)?.length ?? ""),
    "Top unit": array.bottomUnit === null ? "" : String(topUnit(array.bottomUnit, array.units, model.find("racks", array.rack))),
    "Usable": capacity === null ? "" : formatTerabytes(capacity.usable),
    "Usable before reserve": capacity === null ? "" : formatTerabytes(capacity.usable + capacity.reserve),
    "Addresses": addresses.size === 0 ? "" : String(addresses.size),
    "Paths": String(model.hostPaths.fewestTo(array) ?? ""),
    "Host paths": describePaths(model, array),
    "Paths on one controller": String(model.hostPaths.fewestOnOneController(array) ?? ""),
    ...firstPortOf(model, array),
    "Rebuild hours": model.capacity.rebuildHoursOf(array)?.toPrecision(2) ?? "",
    "Feeds": describeFeeds(array),
    "Feed load": model.power.loadsOf([array]).map(describeLoad).join(", "),
  };
}

function yesOrNo(answer: boolean): "yes" | "no";
function yesOrNo(answer: boolean | null): string;
function yesOrNo(answer: boolean | null): string {
  return answer === null ? "" : answer ? "yes" : "no";
}

/** Names the port that a first set-up asks for: the first for management of the first controller that has one, else its first of all. */
function firstPortOf(model: PlanModel, array: PlanRow<"arrays">) {
  const ports = model.ports.of(array);
  const port = ports.find(({ network }) => network?.roles.has("management")) ?? ports[0];
  const { "Prefix length": length, "Netmask": netmask } = deriveNetworkFields(port?.network ?? null);
  return {
    "First port": port === undefined ? "" : `${port.row.controller} ${port.row.port}`,
    "First address": port?.row.address ?? "",
    "First prefix length": length,
    "First netmask": netmask,
    "First gateway": port?.network?.row.gateway ?? "",
  };
}

/** Says host by host how many paths it has to an array. */
function describePaths(model: PlanModel, array: PlanRow<"arrays">): string {
  const hosts = model.hostPaths.to(array).map(({ host, paths }) => ({ name: host.host, paths }));
  return hosts.length === 0 ? "no host is planned" : describeCounts(hosts, "from each host");
}

/** Says how many paths each of some ends has, once where all have as many. */
function describeCounts(ends: readonly { readonly name: string; readonly paths: number | null }[], each: string): string {
  const [first] = ends;
  if (ends.length > 1 && first!.paths !== null && ends.every(({ paths }) => paths === first!.paths)) return `${first!.paths} ${each}`;
  return ends.map(({ name, paths }) => `${name}: ${paths ?? "not known"}`).join(", ");
}

/** Names the feeds into which the cords of a device go, supply by supply. */
function describeFeeds({ feedA, feedB }: Pick<PlanRow<"shelves">, "feedA" | "feedB">): string {
  return [feedA, feedB].filter((feed) => feed !== "").join(", ");
}

/** Says in one line what a feed carries at worst. */
function describeLoad({ worst: { feed, worstAmps, limitAmps, share } }: PlannedFeedLoad): string {
  return `${feed} at worst ${ampsOf(worstAmps)} of ${formatAmps(limitAmps)} (${formatPercent(share)})`;
}

/** Derives the fields of a controller. */
export function deriveControllerFields({ array }: PlanRow<"arrays">, controller: string, isFirst: boolean, subject: string): DerivedTexts<"Controller"> {
  return { "Controller": controller, "First controller": yesOrNo(isFirst), "Is subject": isSubject(subject, array, [controller, `controller ${controller}`]) };
}

/** Derives the fields of a shelf. */
export function deriveShelfFields(row: PlanRow<"shelves">, subject: string): DerivedTexts<"Shelf"> {
  return { "Is subject": isSubject(subject, row.array, [row.shelf, `shelf ${row.shelf}`]), "Feeds": describeFeeds(row) };
}

/** Derives the fields of a bay that ought to hold a drive. */
export function deriveDriveFields({ array }: PlanRow<"arrays">, { shelf, bay }: Pick<ExpectedDrive, "shelf" | "bay">, subject: string): DerivedTexts<"Drive"> {
  const places = shelf === "" ? [""] : [`${shelf} `, `shelf ${shelf} `];
  return { "Is subject": isSubject(subject, array, places.flatMap((place) => [`${place}${bay}`, `${place}bay ${bay}`])) };
}

/** Tells whether the Subject of a job is one of the names of a part of an array, with or without the array before it; one that is empty leaves it open. */
function isSubject(subject: string, array: string, names: readonly string[]): "yes" | "no" {
  return yesOrNo(subject.trim() === "" || names.flatMap((name) => [name, `${array} ${name}`]).map(foldName).includes(foldName(subject)));
}

/** Derives the fields of a row of the Ports table, of a port of an array. */
export function derivePortFields(model: PlanModel, array: PlanRow<"arrays">, port: PlanRow<"ports">, network: Network | null, isFirst: boolean): DerivedTexts<"Port"> {
  const places = {
    "First controller": isFirst ? "yes" : "no",
    "Switch end": switchEnd(port.switch, port.switchPort),
    "Own address": array.portSharing === "array" && !isFirst ? "no" : "yes",
  } as const;
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

/** Derives the fields of a switch. */
export function deriveSwitchFields(model: PlanModel, row: PlanRow<"switches">): DerivedTexts<"Switch"> {
  const largest = Math.max(usualMtu, ...model.networks.carriedOn(row).map(({ mtu }) => mtu));
  return { "Largest MTU": String(largest), "Least frame": String(frameFor(largest)) };
}

/** Derives the fields of a feed. */
export function deriveFeedFields(model: PlanModel, row: PlanRow<"feeds">): DerivedTexts<"Feed"> {
  const load = model.power.loads().find((one) => one.row === row);
  return { "Planned load": load === undefined ? "what nobody knows, as its volts or its breaker are not in the plan" : describeLoad(load) };
}

/** Derives the fields of a host of a job. */
export function deriveHostFields(model: PlanModel, { arrays }: JobPlaces, host: PlanRow<"hosts">): DerivedTexts<"Host"> {
  const counts = arrays.map((array) => ({ array, paths: model.hostPaths.to(array).find((one) => one.host === host)?.paths ?? null }));
  const isKnown = counts.length > 0 && counts.every(({ paths }) => paths !== null);
  return {
    "Paths to arrays": isKnown ? String(counts.reduce((sum, { paths }) => sum + (paths ?? 0), 0)) : "",
    "Paths by array": describeCounts(counts.map(({ array, paths }) => ({ name: array.array, paths })), "to each array"),
  };
}

/** Derives the fields of a port of a host: what is pinged from it, and with how many bytes. */
export function deriveHostPortFields(model: PlanModel, { arrays }: JobPlaces, { network, address }: HostEnd, mtu: number): DerivedTexts<"Host port"> {
  const family = address?.family ?? network?.prefix?.family ?? 4;
  const size = pingSize(mtu, family);
  const facing = arrays.flatMap((array) => model.ports.of(array)).filter((port) => port.network === network && port.address?.family === family);
  const targets = [...new Set(facing.flatMap((port) => (port.address === null ? [] : [formatAddress(port.address)])))];
  return {
    "Ping size": String(size),
    "Ping too large": String(size + 1),
    "Ping targets": targets.length === 0 ? "no address that the plan knows" : targets.join(", "),
  };
}

/** Derives the fields of a volume. */
export function deriveVolumeFields(model: PlanModel, { volume }: PlanRow<"volumes">): DerivedTexts<"Volume"> {
  const opened = model
    .rowsWith("access", "volume", volume)
    .map(({ to, right, number }) => [to, right === "read" ? "read" : "read and write", ...(number === null ? [] : [`number ${number}`])].join(", "));
  return { "Opened by": opened.length === 0 ? "no host yet" : opened.join("; ") };
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
