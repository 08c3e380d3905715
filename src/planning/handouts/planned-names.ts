import { formatAddress, type Address, type Prefix } from "../addressing";
import { portLabel, type PlanModel, type UsedAddress } from "../plan/model";

/** An address of the plan and the name under which it is to be known. */
export interface PlannedName {
  /** Name of the device itself, as the plan has it. */
  readonly device: string;
  /** Name of the address: the device, and behind a dash what tells its ports apart. */
  readonly name: string;
  readonly address: Address;
  /** Prefix of its network; null where it lies in none that can be read. */
  readonly prefix: Prefix | null;
}

/**
 * Names every address that the plan uses: a cluster by its name, a port by its array and port (arr-1-a0), a port of a host by its host and
 * card, or its network where no card is named.
 *
 * Controllers that share the address of a port have one name for it. In what is set behind the name of the device, signs that no host name may hold
 * become dashes and letters small; the name of the device itself is left as it is.
 */
export function plannedNames(model: PlanModel): PlannedName[] {
  const seen = new Set<string>();
  return model.addresses.all().flatMap((used): PlannedName[] => {
    const { device, port } = nameOf(used, model);
    const tail = port.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "");
    const name = tail === "" ? device : `${device}-${tail}`;
    const key = `${name.toLowerCase()}\n${formatAddress(used.address)}`;
    if (seen.has(key)) return [];
    seen.add(key);
    return [{ device, name, address: used.address, prefix: used.network?.prefix ?? null }];
  });
}

function nameOf(used: UsedAddress, model: PlanModel): { readonly device: string; readonly port: string } {
  const network = used.network?.row.network ?? "";
  switch (used.table) {
    case "ports": {
      const isShared = model.find("arrays", used.row.array)?.portSharing === "array";
      return { device: used.row.array, port: isShared ? used.row.port : portLabel(used.row).replace("/", "") };
    }
    case "clusters":
      return { device: used.row.cluster, port: "" };
    case "hostPorts":
      return { device: used.row.host, port: used.row.card === "" ? network : used.row.card };
    case "hosts":
      return { device: used.row.host, port: network };
  }
}
