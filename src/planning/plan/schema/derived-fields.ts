import type { LayerName } from "./for-each";

/** A field that stands in no column but follows from the plan. */
export interface DerivedField {
  readonly meaning: string;
  /** Every value that it can have, where those are few. */
  readonly choices?: readonly string[];
}

const firstController = { meaning: "yes on the first controller of the array, else no", choices: ["yes", "no"] } as const;

/**
 * Fields that stand in no column but follow from the plan, by the layer in which a step reaches them.
 *
 * A field that cannot be computed, because a column it needs is blank or cannot be read, is blank.
 */
export const derivedFields = {
  Array: {
    "Cluster act": { meaning: "create for the array of order 1 of a new cluster, else join; blank without a cluster", choices: ["create", "join"] },
    "Controller count": { meaning: "how many controllers it has" },
    "Top unit": { meaning: "highest rack unit it fills" },
    "Usable": { meaning: "usable capacity after spares, redundancy and reserve, in TB" },
    "Usable before reserve": { meaning: "usable capacity with the reserve still in it, in TB" },
    "Addresses": { meaning: "how many different addresses its ports have" },
    "Rebuild hours": { meaning: "hours to rebuild one drive at the drive rate of the settings" },
    "Feed load": { meaning: "share of its feeds in use, and after the loss of another feed" },
  },
  Controller: { "Controller": { meaning: "name of the controller" }, "First controller": firstController },
  Drive: { "Bay": { meaning: "number of the bay, from 1" } },
  Port: {
    "First controller": firstController,
    "Port MTU": { meaning: "its MTU, else that of its network, else 1500" },
    "Ping size": { meaning: "payload of an echo request that just fills the MTU: MTU − 28, in IPv6 MTU − 48" },
    "Ping too large": { meaning: "one byte more than Ping size" },
  },
  Network: { "Prefix length": { meaning: "length of its prefix" }, "Netmask": { meaning: "dotted mask of an IPv4 network" } },
} as const satisfies Partial<Record<LayerName, Readonly<Record<string, DerivedField>>>>;

/** The derived fields of a layer with their texts. */
export type DerivedTexts<Layer extends keyof typeof derivedFields> = Readonly<Record<keyof (typeof derivedFields)[Layer] & string, string>>;

/** Lists the derived fields of a layer by name; none where it has none. */
export function derivedFieldsOf(layer: LayerName): readonly (readonly [name: string, field: DerivedField])[] {
  const known: Partial<Record<LayerName, Readonly<Record<string, DerivedField>>>> = derivedFields;
  return Object.entries(known[layer] ?? {});
}
