import { formatMask, parseControllerNames, parsePrefix, pingSize, readAddress, type Prefix } from "../../addressing";
import { breakDown, layoutDrives, type Breakdown, type Layout } from "../../capacity";
import { Problem } from "../../text";
import { bytesIn, megabytesPerSecond, share, terabyte, type Bytes } from "../../quantity";
import { rebuildHours } from "../../rates";
import type { PlanRow } from "../read";
import { clusterAct } from "../model";
import type { PlanLookup } from "../model";

/**
 * Fields that stand in no column but follow from the plan, by the table whose rows they belong to.
 *
 * A field that cannot be computed, because a column it needs is blank or cannot be read, is blank.
 */
export const derivedFields = {
  array: {
    "Cluster act": "create for the array of order 1 of a new cluster, else join; blank without a cluster",
    "Controller count": "how many controllers it has",
    "Top unit": "highest rack unit it fills",
    "Usable": "usable capacity after spares, redundancy and reserve, in TB",
    "Usable before reserve": "usable capacity with the reserve still in it, in TB",
    "Addresses": "how many different addresses its ports have",
    "Rebuild hours": "hours to rebuild one drive at the drive rate of the settings",
    "Feed load": "share of its feeds in use, and after the loss of another feed",
  },
  controller: { "First controller": "yes on the first controller of the array, else no" },
  port: {
    "First controller": "yes on the first controller of the array, else no",
    "Port MTU": "its MTU, else that of its network, else 1500",
    "Ping size": "payload of an echo request that just fills the MTU: MTU − 28, in IPv6 MTU − 48",
    "Ping too large": "one byte more than Ping size",
  },
  network: { "Prefix length": "length of its prefix", "Netmask": "dotted mask of an IPv4 network" },
} as const;

/** The drive rate for rebuilds where the settings name none, in MB/s; common practice for large hard disks under load, no source. */
const usualDriveRate = 100;

/** Derives the fields of an array. `feedLoad` is worked out for the whole site elsewhere. */
export function deriveArrayFields(lookup: PlanLookup, array: PlanRow<"arrays">, feedLoad: string): Record<keyof (typeof derivedFields)["array"], string> {
  const capacity = capacityOf(array);
  const addresses = new Set(lookup.rowsWhere("ports", "array", array.array).map(({ address }) => address.trim().toLowerCase()).filter((one) => one !== ""));
  return {
    "Cluster act": clusterAct(lookup, array),
    "Controller count": orBlank(() => (array.controllers === "" ? "" : String(parseControllerNames(array.controllers).length))),
    "Top unit": array.bottomUnit === null ? "" : String(array.bottomUnit + (array.units ?? 1) - 1),
    "Usable": capacity === null ? "" : formatTerabytes(capacity.usable),
    "Usable before reserve": capacity === null ? "" : formatTerabytes((capacity.usable + capacity.reserve) as Bytes),
    "Addresses": addresses.size === 0 ? "" : String(addresses.size),
    "Rebuild hours": orBlank(() => hoursOf(lookup, array)),
    "Feed load": feedLoad,
  };
}

/** Breaks the capacity of an array down; null where a column it needs is blank or the scheme cannot be laid out. */
export function capacityOf(array: PlanRow<"arrays">): Breakdown | null {
  const layout = layoutOf(array);
  return layout === null || array.driveSize === null ? null : breakDown(layout, array.driveSize, array.reserve ?? share(0));
}

function layoutOf({ scheme, drives, spares }: PlanRow<"arrays">): Layout | null {
  try {
    return scheme === null || drives === null ? null : layoutDrives(scheme, drives, spares ?? 0);
  } catch (thrown) {
    if (thrown instanceof Problem) return null;
    throw thrown;
  }
}

function hoursOf(lookup: PlanLookup, array: PlanRow<"arrays">): string {
  const layout = layoutOf(array);
  if (layout === null || array.driveSize === null) return "";
  const set = Number(lookup.find("settings", "setting", "Drive rate MB/s")?.value);
  const rate = megabytesPerSecond(set > 0 ? set : usualDriveRate);
  return rebuildHours(layout, array.driveSize, rate, share(1)).toPrecision(2);
}

/** Derives the fields of a row of the Ports table. */
export function derivePortFields(port: PlanRow<"ports">, network: PlanRow<"networks"> | null, first: boolean): Record<keyof (typeof derivedFields)["port"], string> {
  const mtu = port.mtu ?? network?.mtu ?? 1500;
  const family = readAddress(port.address)?.family ?? prefixOf(network)?.family ?? 4;
  const size = pingSize(mtu, family);
  return { "First controller": first ? "yes" : "no", "Port MTU": String(mtu), "Ping size": String(size), "Ping too large": String(size + 1) };
}

/** Derives the fields of a network. */
export function deriveNetworkFields(network: PlanRow<"networks"> | null): Record<keyof (typeof derivedFields)["network"], string> {
  const prefix = prefixOf(network);
  if (prefix === null) return { "Prefix length": "", "Netmask": "" };
  return { "Prefix length": String(prefix.length), "Netmask": prefix.family === 4 ? formatMask(prefix.length) : "" };
}

function prefixOf(network: PlanRow<"networks"> | null): Prefix | null {
  if (network === null || network.prefix === "") return null;
  try {
    return parsePrefix(network.prefix);
  } catch (thrown) {
    if (thrown instanceof Problem) return null;
    throw thrown;
  }
}

/** Writes a size in TB, at most two decimals, rounded to the nearest. */
export function formatTerabytes(size: Bytes): string {
  return `${Number(bytesIn(size, terabyte).toFixed(2))} TB`;
}

/** Names the first controller of an array; blank where the plan does not say. */
export function firstController(lookup: PlanLookup, array: PlanRow<"arrays">): string {
  return orBlank(() => (array.controllers === "" ? (lookup.rowsWhere("ports", "array", array.array)[0]?.controller ?? "") : parseControllerNames(array.controllers)[0]!));
}

function orBlank(read: () => string): string {
  try {
    return read();
  } catch (thrown) {
    if (thrown instanceof Problem) return "";
    throw thrown;
  }
}
