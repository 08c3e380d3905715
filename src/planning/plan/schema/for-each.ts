import type { TableKey } from "./table-keys";

/** Names under which a step reaches the fields of the plan, as in `{{Rack.Units}}`, and the planning table behind each; null: none. */
export const layerTables = {
  Site: "sites",
  Job: "jobs",
  Cluster: "clusters",
  Pool: "pools",
  Rack: "racks",
  Network: "networks",
  Array: "arrays",
  Port: "ports",
  Prompt: "prompts",
  Drive: "drives",
  Controller: null,
  Switch: "switches",
  Feed: "feeds",
  Shelf: "shelves",
  Host: "hosts",
  "Host port": "hostPorts",
  Volume: "volumes",
} as const satisfies Record<string, TableKey | null>;

/** Name of a layer of fields, such as `Rack`. */
export type LayerName = keyof typeof layerTables;

const ofSite = ["Site", "Job"] as const;
const ofArray = ["Array", "Pool", "Cluster", "Rack", "Network", ...ofSite] as const;

/**
 * What a section of a procedure is repeated for, by the word in its column For each: what its steps reach, nearest first.
 *
 * What each kind is repeated for in a given job stands in the room of subjects, by an exhaustive record over these kinds.
 */
export const forEachKinds = {
  site: { reach: ofSite },
  rack: { reach: ["Rack", ...ofSite] },
  switch: { reach: ["Switch", "Rack", ...ofSite] },
  feed: { reach: ["Feed", ...ofSite] },
  network: { reach: ["Network", ...ofSite] },
  cluster: { reach: ["Cluster", "Network", ...ofSite] },
  "live cluster": { reach: ["Cluster", "Network", ...ofSite] },
  pool: { reach: ["Pool", "Cluster", "Network", ...ofSite] },
  volume: { reach: ["Volume", "Pool", "Cluster", ...ofSite] },
  host: { reach: ["Host", ...ofSite] },
  "host port": { reach: ["Host port", "Host", "Network", ...ofSite] },
  array: { reach: ofArray },
  shelf: { reach: ["Shelf", "Array", "Pool", "Cluster", "Rack", "Network", ...ofSite] },
  controller: { reach: ["Controller", ...ofArray] },
  port: { reach: ["Port", "Controller", ...ofArray] },
  drive: { reach: ["Drive", ...ofArray] },
  prompt: { reach: ["Prompt", ...ofArray] },
} as const satisfies Record<string, { readonly reach: readonly LayerName[] }>;

/** What a section may be repeated for. */
export type ForEach = keyof typeof forEachKinds;

/** Words of the column For each, in the order in which they are offered. */
export const forEachWords = Object.keys(forEachKinds) as readonly ForEach[];

/** Finds what a section is repeated for by its cell: one that says nothing is about the site. */
export function forEachOf(cell: ForEach | ""): ForEach {
  return cell === "" ? "site" : cell;
}
