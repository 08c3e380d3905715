import type { FallibleNode, Link } from "../../../../src/planning/resilience";

/** A graph with what is known of its nodes. */
export interface Topology {
  readonly links: readonly Link[];
  readonly nodes: readonly FallibleNode[];
}

/** Spines that are alike: so many of them, and how often each and each of its links is down. */
export interface SpineClass {
  readonly count: number;
  readonly unavailability: number;
  readonly links: number;
}

/** A fabric of leaves and spines: the host on leaves 0 and 1, the array on leaves 2 and 3, each leaf on each spine. */
export interface Fabric {
  readonly leaves: number;
  readonly spines: readonly SpineClass[];
  /** Of a link of the host or the array, and of a leaf. */
  readonly edge: number;
  readonly leaf: number;
}

/** Builds a fabric whose ends are `host` and `array`. */
export function fabric({ leaves, spines, edge, leaf }: Fabric): Topology {
  const all = spines.flatMap((kind, index) => Array.from({ length: kind.count }, (_, number) => ({ ...kind, name: `spine ${index}.${number}` })));
  const leafNames = Array.from({ length: leaves }, (_, number) => `leaf ${number}`);
  return {
    links: [
      ...[0, 1].map((number) => ({ from: "host", to: leafNames[number]!, unavailability: edge })),
      ...[2, 3].map((number) => ({ from: leafNames[number]!, to: "array", unavailability: edge })),
      ...leafNames.flatMap((from) => all.map(({ name, links }) => ({ from, to: name, unavailability: links }))),
    ],
    nodes: [...leafNames.map((name) => ({ name, unavailability: leaf })), ...all.map(({ name, unavailability }) => ({ name, unavailability }))],
  };
}

/** Builds the links of a grid whose nodes are called row/column. */
export function grid(rows: number, columns: number, unavailability: number): Link[] {
  const links: Link[] = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const from = `${row}/${column}`;
      if (column + 1 < columns) links.push({ from, to: `${row}/${column + 1}`, unavailability });
      if (row + 1 < rows) links.push({ from, to: `${row + 1}/${column}`, unavailability });
    }
  }
  return links;
}

/** Builds the links of a complete graph whose nodes are called n0, n1 and so on. */
export function complete(nodes: number, unavailability: (a: number, b: number) => number): Link[] {
  return Array.from({ length: nodes }, (_, a) => Array.from({ length: a }, (__, b) => ({ from: `n${a}`, to: `n${b}`, unavailability: unavailability(a, b) }))).flat();
}

/** Builds the bridge: two ways of two links from `in` to `out`, joined across in the middle. */
export function bridge(unavailability: number): Link[] {
  return ["in x", "x out", "in y", "y out", "x y"].map((ends) => {
    const [from, to] = ends.split(" ") as [string, string];
    return { from, to, unavailability };
  });
}
