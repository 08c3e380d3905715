import { foldName, splitNames } from "../../text";
import type { PlanRow } from "../read";

/** Most ports that one range of names may stand for: more is no switch. */
const mostPorts = 4096;

/**
 * Lists the ports of a switch in their order; null where its row does not say, or cannot be read.
 *
 * A count alone means ports 1 to that number; else names with commas between, where 1-24 stands for all from 1 to 24.
 */
export function portsOfSwitch({ ports }: PlanRow<"switches">): readonly string[] | null {
  if (ports === "") return null;
  if (/^\d+$/.test(ports)) return Number(ports) <= mostPorts ? Array.from({ length: Number(ports) }, (_, at) => String(at + 1)) : null;
  return namesIn(ports);
}

/** Names, without case, the ports of a switch that the plan must not use; null where the cell cannot be read. */
export function keptPortsOf({ keptPorts }: PlanRow<"switches">): ReadonlySet<string> | null {
  const names = namesIn(keptPorts);
  return names === null ? null : new Set(names.map(foldName));
}

function namesIn(text: string): readonly string[] | null {
  const lists = splitNames(text).map((name): readonly string[] | null => {
    const [, before = "", from = "", to = ""] = /^(.*?)(\d+)\s*(?:-|\u2013)\s*(\d+)$/.exec(name) ?? [];
    // A run without one of its ends is no name: nobody would know which ports it means.
    if (from === "") return /^[-\u2013]|[-\u2013]$/.test(name) ? null : [name];
    const count = Number(to) - Number(from) + 1;
    return count < 1 || count > mostPorts ? null : Array.from({ length: count }, (_, at) => `${before}${Number(from) + at}`);
  });
  return lists.some((list) => list === null) ? null : lists.flatMap((list) => list ?? []);
}
