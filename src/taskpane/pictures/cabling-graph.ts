import { controllersOf, type PlanModel } from "../../planning/plan/model";
import { foldName } from "../../planning/text";
import { label, pictureWidth, rect, type Picture, type Shape } from "./picture";

type Column = "controller" | "switch" | "host";

/** A node of the cabling of a site. */
export interface CabledNode {
  readonly name: string;
  readonly kind: Column;
  /** True where its loss alone parts an array from a host. */
  readonly isSinglePoint: boolean;
}

/** Cables between two nodes: how many, and whether there is only this one way between an array and a host. */
export interface CableRun {
  readonly from: string;
  readonly to: string;
  readonly count: number;
  readonly isSinglePoint: boolean;
}

/** The cabling of a site: controllers to switches, switches among themselves, switches to hosts. */
export interface CablingLayout {
  readonly site: string;
  readonly nodes: readonly CabledNode[];
  readonly runs: readonly CableRun[];
  /** Pairs of array and host that nothing joins. */
  readonly parted: readonly string[];
  /** Hosts and arrays of which the plan does not say how they are cabled. */
  readonly unknown: readonly string[];
}

/** Reads the cabling of a site from Ports and Links, with the single points that the checks find between its arrays and hosts. */
export function layoutCabling(model: PlanModel, site: string): CablingLayout {
  const nodes = new Map<string, { readonly name: string; readonly kind: Column }>();
  const add = (name: string, kind: Column) => {
    if (name !== "" && !nodes.has(foldName(name))) nodes.set(foldName(name), { name, kind });
  };
  const runs = new Map<string, { from: string; to: string; count: number }>();
  const cable = (from: string, to: string) => {
    const [one, other] = [nodes.get(foldName(from)), nodes.get(foldName(to))];
    if (one === undefined || other === undefined || one === other) return;
    const key = runKey(from, to);
    const run = runs.get(key);
    if (run === undefined) runs.set(key, { from: one.name, to: other.name, count: 1 });
    else run.count += 1;
  };

  for (const row of model.rowsWith("switches", "site", site)) add(row.switch, "switch");
  for (const { host } of model.rowsWith("hosts", "site", site)) add(host, "host");
  for (const array of model.rowsWith("arrays", "site", site)) {
    const severalControllers = (controllersOf(array)?.length ?? 0) > 1;
    for (const { row } of model.ports.of(array)) {
      const node = severalControllers ? `${array.array} ${row.controller}` : array.array;
      if (row.switch !== "") add(node, "controller");
      cable(node, row.switch);
    }
  }
  for (const host of model.rowsWith("hosts", "site", site)) for (const to of model.paths.switchesOf(host)) cable(host.host, to);
  for (const { from, to } of model.rows("links")) if (model.find("hosts", from) === null && model.find("hosts", to) === null) cable(from, to);

  const single = new Set<string>();
  const parted: string[] = [];
  for (const { host, array, points } of model.paths.all()) {
    if (foldName(array.site) !== foldName(site)) continue;
    if (points === null) parted.push(`${array.array} and ${host.host}`);
    // The checks speak of "controller a" and "the array", whose ways the picture shows at the array's name.
    const nodeOf = (name: string) => name.replace(/^controller /, `${array.array} `).replace(/^the array$/, array.array);
    for (const { kind, name } of points ?? []) single.add(kind === "node" ? foldName(nodeOf(name)) : runKey(...(name.split(" - ").map(nodeOf) as [string, string])));
  }
  return {
    site,
    nodes: [...nodes.values()].map((node) => ({ ...node, isSinglePoint: single.has(foldName(node.name)) })),
    runs: [...runs].map(([key, run]) => ({ ...run, isSinglePoint: single.has(key) })),
    parted,
    unknown: model.paths.unknownAt(site),
  };
}

/** Names the cables between two nodes, whichever stands first. */
function runKey(from: string, to: string): string {
  return [foldName(from), foldName(to)].sort().join("\n");
}

const rowHeight = 34;
const boxHeight = 22;
const head = 24;
const columns: Readonly<Record<Column, { readonly x: number; readonly width: number; readonly title: string }>> = {
  controller: { x: 2, width: 100, title: "Controllers" },
  switch: { x: 128, width: 66, title: "Switches" },
  host: { x: 222, width: 66, title: "Hosts" },
};

interface NodePlace {
  readonly x: number;
  readonly y: number;
  readonly kind: Column;
}

/** Draws the cabling of a site in three columns. A single point has a double frame and the sign (1), a single cable is thick and dashed. */
export function drawCabling(layout: CablingLayout): Picture {
  const kinds = Object.keys(columns) as Column[];
  const tallest = Math.max(1, ...kinds.map((kind) => layout.nodes.filter((node) => node.kind === kind).length));
  const places = new Map<string, NodePlace>();
  for (const kind of kinds) {
    const nodes = layout.nodes.filter((node) => node.kind === kind);
    const step = (tallest * rowHeight) / Math.max(1, nodes.length);
    nodes.forEach(({ name }, index) => places.set(name, { x: columns[kind].x, y: head + step * (index + 0.5) - boxHeight / 2, kind }));
  }
  const shapes: Shape[] = kinds.map((kind) => label(columns[kind].x, 12, columns[kind].title, { look: "label soft" }));
  for (const { from, to, count, isSinglePoint } of layout.runs) {
    const [a, b] = [places.get(from), places.get(to)];
    if (a === undefined || b === undefined) continue;
    shapes.push(curve(a.x <= b.x ? a : b, a.x <= b.x ? b : a, isSinglePoint, count));
  }
  for (const { name, isSinglePoint } of layout.nodes) {
    const { x, y, kind } = places.get(name)!;
    const { width } = columns[kind];
    shapes.push(rect(x, y, width, boxHeight, `node ${kind}${isSinglePoint ? " single" : ""}`));
    if (isSinglePoint) shapes.push(rect(x + 2.5, y + 2.5, width - 5, boxHeight - 5, "node single inner"));
    shapes.push(label(x + 6, y + 15, isSinglePoint ? `(1) ${name}` : name, { room: width - 10 }));
  }
  const notes = [...layout.parted.map((pair) => `! Nothing joins ${pair}`), ...layout.unknown.map((name) => `? Not known: how ${name} is cabled`)];
  const bottom = head + tallest * rowHeight;
  notes.forEach((text, index) => shapes.push(label(2, bottom + 14 + index * 15, text)));
  return { title: `Cabling of ${layout.site}`, summary: describeCabling(layout), width: pictureWidth, height: bottom + notes.length * 15 + 6, shapes };
}

function curve(from: NodePlace, to: NodePlace, isSinglePoint: boolean, count: number): Shape {
  const x1 = from.x + columns[from.kind].width;
  const [y1, y2] = [from.y + boxHeight / 2, to.y + boxHeight / 2];
  // A link within a column swings out to its right.
  const d = from.kind === to.kind ? `M${x1} ${y1} C${x1 + 16} ${y1} ${x1 + 16} ${y2} ${x1} ${y2}` : `M${x1} ${y1} C${x1 + 14} ${y1} ${to.x - 14} ${y2} ${to.x} ${y2}`;
  return { tag: "path", attributes: { d, class: `cable${isSinglePoint ? " single" : ""}`, "stroke-width": isSinglePoint ? 3 : Math.min(1 + (count - 1) * 0.7, 2.5) } };
}

/** Says in words how a site is cabled. */
export function describeCabling({ site, nodes, runs, parted, unknown }: CablingLayout): string {
  const single = [
    ...nodes.filter(({ isSinglePoint }) => isSinglePoint).map(({ name }) => name),
    ...runs.filter(({ isSinglePoint }) => isSinglePoint).map(({ from, to }) => `the cable ${from} – ${to}`),
  ];
  const cables = runs.reduce((sum, { count }) => sum + count, 0);
  if (runs.length === 0) return `${site}: nothing is cabled yet.`;
  const first = `${site}: ${cables} cables between ${nodes.length} devices.`;
  const known = unknown.length === 0 ? "" : ` Not known: how ${unknown.join(", ")} ${unknown.length === 1 ? "is" : "are"} cabled.`;
  const none = unknown.length === 0 ? " No single point parts an array from a host." : " Of the rest no single point is known.";
  const second = single.length === 0 ? none : ` Single points: ${single.join(", ")}.`;
  return first + known + second + (parted.length === 0 ? "" : ` Nothing joins ${parted.join("; ")}.`);
}
