import { buildGraph, searchFrom, singlePointsTo, type Link } from "../../planning/resilience";
import { rowsOf, type Plan } from "../../planning/workbook-model";
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
}

/**
 * Reads the cabling of a site from Ports and Links, with the single points between each array and each host of the site.
 *
 * Both controllers of an array lead to the array itself, so that losing one of them parts nothing while the other is cabled.
 */
export function layoutCabling(plan: Plan, site: string): CablingLayout {
  const isHere = (row: { readonly site: string }) => row.site.toLowerCase() === site.toLowerCase();
  const arrays = rowsOf(plan, "arrays").filter(isHere).map(({ array }) => array).filter((name) => name !== "");
  const hosts = rowsOf(plan, "hosts").filter(isHere).map(({ host }) => host).filter((name) => name !== "");
  const switches = rowsOf(plan, "switches").filter(isHere).map((row) => row.switch).filter((name) => name !== "");
  const known = new Map<string, { readonly name: string; readonly kind: Column }>();
  for (const name of switches) known.set(name.toLowerCase(), { name, kind: "switch" });
  for (const name of hosts) known.set(name.toLowerCase(), { name, kind: "host" });

  const arrayLinks = new Map<string, Link>();
  const cables: Link[] = [];
  for (const { array, controller, switch: to } of rowsOf(plan, "ports")) {
    const home = arrays.find((name) => name.toLowerCase() === array.toLowerCase());
    const target = known.get(to.toLowerCase());
    if (home === undefined || target === undefined) continue;
    const node = `${home} ${controller}`.trim();
    if (node !== home && !arrayLinks.has(node)) arrayLinks.set(node, { from: home, to: node });
    known.set(node.toLowerCase(), { name: node, kind: "controller" });
    cables.push({ from: node, to: target.name });
  }
  for (const { from, to } of rowsOf(plan, "links")) {
    const [one, other] = [known.get(from.toLowerCase()), known.get(to.toLowerCase())];
    if (one !== undefined && other !== undefined && one !== other) cables.push({ from: one.name, to: other.name });
  }

  const alone = new Set<string>();
  const parted: string[] = [];
  const links = [...arrayLinks.values(), ...cables];
  const graph = buildGraph(links);
  for (const array of arrays) {
    const start = graph.nodeNumbers.get(array.toLowerCase());
    const search = start === undefined ? null : searchFrom(graph, start);
    for (const host of hosts) {
      const end = graph.nodeNumbers.get(host.toLowerCase());
      const points = search === null || end === undefined ? null : singlePointsTo(search, end);
      if (points === null) parted.push(`${array} and ${host}`);
      else for (const { name } of points) alone.add(name.toLowerCase());
    }
  }

  const runs = new Map<string, { from: string; to: string; count: number }>();
  for (const { from, to } of cables) {
    const key = [from, to].sort().join("\u0000");
    const run = runs.get(key);
    if (run === undefined) runs.set(key, { from, to, count: 1 });
    else run.count += 1;
  }
  const isAlone = ({ from, to }: { from: string; to: string }) => alone.has(`${from} - ${to}`.toLowerCase()) || alone.has(`${to} - ${from}`.toLowerCase());
  return {
    site,
    nodes: [...known.values()].map((node) => ({ ...node, isSinglePoint: alone.has(node.name.toLowerCase()) })),
    runs: [...runs.values()].map((run) => ({ ...run, isSinglePoint: isAlone(run) })),
    parted,
  };
}

const rowHeight = 34;
const boxHeight = 22;
const head = 24;
const columns: Readonly<Record<Column, { readonly x: number; readonly width: number; readonly title: string }>> = {
  controller: { x: 2, width: 100, title: "Controllers" },
  switch: { x: 128, width: 66, title: "Switches" },
  host: { x: 222, width: 66, title: "Hosts" },
};

/** Draws the cabling of a site in three columns. A single point has a double frame and the sign ①, a single cable is thick and dashed. */
export function drawCabling(layout: CablingLayout): Picture {
  const kinds = Object.keys(columns) as Column[];
  const tallest = Math.max(1, ...kinds.map((kind) => layout.nodes.filter((node) => node.kind === kind).length));
  const places = new Map<string, { readonly x: number; readonly y: number; readonly kind: Column }>();
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
    shapes.push(label(x + 6, y + 15, isSinglePoint ? `① ${name}` : name, { room: width - 10 }));
  }
  const notes = layout.parted.map((pair) => `⚠ Nothing joins ${pair}`);
  const bottom = head + tallest * rowHeight;
  notes.forEach((text, index) => shapes.push(label(2, bottom + 14 + index * 15, text)));
  return { title: `Cabling of ${layout.site}`, summary: describeCabling(layout), width: pictureWidth, height: bottom + notes.length * 15 + 6, shapes };
}

function curve(from: { readonly x: number; readonly y: number; readonly kind: Column }, to: { readonly x: number; readonly y: number; readonly kind: Column }, isSinglePoint: boolean, count: number): Shape {
  const x1 = from.x + columns[from.kind].width;
  const [y1, y2] = [from.y + boxHeight / 2, to.y + boxHeight / 2];
  // A link within a column swings out to its right.
  const d = from.kind === to.kind ? `M${x1} ${y1} C${x1 + 16} ${y1} ${x1 + 16} ${y2} ${x1} ${y2}` : `M${x1} ${y1} C${x1 + 14} ${y1} ${to.x - 14} ${y2} ${to.x} ${y2}`;
  return { tag: "path", attributes: { d, class: `cable${isSinglePoint ? " single" : ""}`, "stroke-width": isSinglePoint ? 3 : Math.min(1 + (count - 1) * 0.7, 2.5) } };
}

/** Says in words how a site is cabled. */
export function describeCabling({ site, nodes, runs, parted }: CablingLayout): string {
  const single = [...nodes.filter(({ isSinglePoint }) => isSinglePoint).map(({ name }) => name), ...runs.filter(({ isSinglePoint }) => isSinglePoint).map(({ from, to }) => `the cable ${from} – ${to}`)];
  const cables = runs.reduce((sum, { count }) => sum + count, 0);
  const first = nodes.length === 0 ? `${site}: nothing is cabled yet.` : `${site}: ${cables} cables between ${nodes.length} devices.`;
  const second = nodes.length === 0 ? "" : single.length === 0 ? " No single point parts an array from a host." : ` Single points: ${single.join(", ")}.`;
  return first + second + (parted.length === 0 ? "" : ` Nothing joins ${parted.join("; ")}.`);
}
