/** Keys of the planning tables in code, in the order of their sheets: each table stands behind those it refers to. */
export const tableKeys = [
  "settings", "sites", "racks", "feeds", "networks", "switches", "hosts", "hostPorts", "links", "clusters", "pools", "models", "modelPorts", "arrays", "shelves", "driveSets",
  "drives", "ports", "cables", "volumes", "access", "procedures", "steps", "prompts", "jobs", "readings", "parts", "prices", "quote", "assumptions", "lists",
] as const;

/** Key of a planning table in code, such as `arrays`. */
export type TableKey = (typeof tableKeys)[number];
