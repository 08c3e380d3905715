import { foldName } from "../../text";
import type { Cell } from "../../../sheet";
import type { PlanRow } from "../../plan/read";
import { bytesIn, terabyte } from "../../quantity";
import { capacityOf } from "../../plan/subjects";
import type { FeedLoads } from "../../plan/model";
import type { PlanLookup } from "../../plan/model";
import type { ExpandedJob } from "../job";
import { percent } from "../../plan/subjects";
import { at, shownColumns } from "./tab-columns";
import type { ProgressFormulas } from "./tab-formulas";

/** When and out of what a tab is built. */
export interface BuildStamp {
  readonly build: number;
  /** Instant of the job's first build, ISO. */
  readonly born: string;
  /** When this build was made, as people read it. */
  readonly madeAt: string;
  /** Name of the plan it was made from. */
  readonly planName: string;
}

/** One row of the summary: its cells by column number, and which of them run together. */
export interface SummaryRow {
  readonly cells: ReadonlyMap<number, Cell>;
  /** First and last column of cells that are merged. */
  readonly merges: readonly (readonly [number, number])[];
}

/**
 * Plans what stands above the steps: where and what, how far the job is, cautions, addresses, rack positions, feed loads and capacity.
 *
 * The tables stand side by side (addresses left, the rest right), so that a site of a few arrays fits on one screen.
 */
export function planSummary(expanded: ExpandedJob, lookup: PlanLookup, loads: FeedLoads, stamp: BuildStamp, formulas: ProgressFormulas): SummaryRow[] {
  const { job, places } = expanded;
  const last = shownColumns - 1;
  const facts = [
    `Site ${places.site?.site ?? job.site}`,
    ...labelled("room", places.site?.room), ...labelled("contact", places.site?.contact),
    job.procedure, ...labelled("planned", job.plannedDate), ...labelled("about", job.subject),
    `build ${stamp.build}, made ${stamp.madeAt} from ${stamp.planName}`,
  ].join(" · ");
  const progress: readonly (readonly [string, number, number, string, string])[] = [
    ["Next open step", at.step, at.step, formulas.next, "figureText"],
    ["Done", at.subject, at.subject, formulas.done, "figure"],
    ["Required open", at.expected, at.expected, formulas.open, "figure"],
    ["Differ", at.found, at.found, formulas.differ, "figure"],
    ["To see again", at.unit, at.result, formulas.again, "figure"],
    ["By eye", at.was, at.seenAgain, formulas.eye, "figure"],
    ["Second name", at.by, at.by, formulas.second, "figure"],
    ["Snags open", at.second, at.second, formulas.snags, "figure"],
    ["Minutes left", at.done, at.done, formulas.minutes, "figure"],
    ["Seal", at.note, at.note, formulas.seal, "figureText"],
  ];
  const spans = progress.map(([, from, to]) => [from, to] as const);
  const left = addressRows(expanded, lookup);
  const right = [...positionRows(expanded), ...feedRows(expanded, loads), ...poolRows(expanded, lookup)];
  const height = Math.max(left.length, right.length);
  return [
    wide(facts, "facts", last),
    wide("Anyone may stop the work. Type what you see into Found and your name into By; “Not applicable” and “Waived” want a name and a reason in Note. What differs goes to Snags at the end: the first Found stays.", "facts", last),
    ...cautionRows(expanded),
    spread(progress.map(([value, from]) => [from, { value, style: "label" }]), spans),
    spread(progress.map(([, from, , formula, style]) => [from, { formula, style }]), spans),
    rowOf([]),
    ...Array.from({ length: height }, (_, index) => joinRows(left[index], right[index])),
    rowOf([]),
  ];
}

function labelled(label: string, text: string | null | undefined): string[] {
  return text === null || text === undefined || text === "" ? [] : [`${label} ${text}`];
}

/** Lists what can hurt in two columns, in the order of the work: the first sentence of every caution, once. */
function cautionRows({ sections }: ExpandedJob): SummaryRow[] {
  const firsts = sections.flatMap(({ steps }) => steps.map(({ caution }) => /^.*?[.!](?=\s|$)/s.exec(caution)?.[0] ?? caution));
  const lines = [...new Set(firsts)].filter((text) => text !== "").map((text) => `• ${text}`);
  if (lines.length === 0) return [];
  const half = Math.ceil(lines.length / 2);
  const list = (from: number, to?: number): Cell => ({ value: lines.slice(from, to).join("\n"), style: "caution" });
  return [
    wide("Cautions, in the order of the work. Each stands in full at its step.", "cautionHead", shownColumns - 1),
    spread([[at.no, list(0, half)], [at.unit, list(half)]], [[at.no, at.found], [at.unit, shownColumns - 1]]),
  ];
}

function addressRows({ places }: ExpandedJob, lookup: PlanLookup): SummaryRow[] {
  const rows: SummaryRow[] = [];
  for (const array of places.arrays) {
    const ports = lookup.rowsWhere("ports", "array", array.array);
    const controllers = [...new Set(ports.map(({ controller }) => controller))];
    const lines = new Map<string, PlanRow<"ports">[]>();
    for (const port of ports) {
      const line = `${foldName(port.port)} ${foldName(port.network)}`;
      lines.set(line, [...(lines.get(line) ?? []), port]);
    }
    for (const line of lines.values()) {
      const network = lookup.find("networks", "network", line[0]!.network);
      const facts = [network?.prefix, network?.gateway ? `gateway ${network.gateway}` : "", network?.vlan === null || network === null ? "" : `VLAN ${network.vlan}`];
      const addressOf = (controller: string | undefined): string => line.find((port) => port.controller === controller)?.address ?? "";
      const rest = controllers.slice(1).map((controller) => (controllers.length > 2 ? `${controller} ${addressOf(controller)}` : addressOf(controller)));
      rows.push(
        rowOf(
          [
            [at.no, fact(array.array)],
            [at.stepId, { style: "fact" }],
            [at.step, fact(`Port ${line[0]!.port} · ${[line[0]!.network, ...facts].filter(Boolean).join(", ")}`)],
            [at.subject, fact(addressOf(controllers[0]))],
            [at.expected, fact(rest.join("\n"))],
          ],
          [[at.no, at.stepId]],
        ),
      );
    }
  }
  for (const cluster of new Set(places.arrays.map(({ cluster }) => cluster).filter((name) => name !== ""))) {
    const found = lookup.find("clusters", "cluster", cluster);
    rows.push(rowOf([[at.no, fact(cluster)], [at.stepId, { style: "fact" }], [at.step, fact("Shared address of the cluster")], [at.subject, fact(found?.sharedAddress ?? "")], [at.expected, { style: "fact" }]], [[at.no, at.stepId]]));
  }
  const names = [...new Set(places.arrays.flatMap((array) => lookup.rowsWhere("ports", "array", array.array).map(({ controller }) => controller)))];
  return rows.length === 0 ? [] : [heads([[at.no, "Addresses"], [at.step, "Port and network"], [at.subject, `Controller ${names[0] ?? ""}`], [at.expected, `Controller ${names.slice(1).join(", ")}`]], [at.no, at.stepId]), ...rows];
}

function positionRows({ places }: ExpandedJob): SummaryRow[] {
  const rows = places.arrays.map((array) =>
    rowOf(
      [
        [at.unit, fact(array.array)],
        [at.result, { style: "fact" }],
        [at.was, fact(array.rack)],
        [at.seenAgain, fact(array.bottomUnit === null ? "" : `${array.bottomUnit}–${array.bottomUnit + (array.units ?? 1) - 1}`)],
        [at.by, fact(array.liftKg === null ? "" : `${array.liftKg} kg`)],
        [at.second, fact(array.liftBy)],
        [at.done, fact(array.feedA)],
        [at.note, fact(array.feedB)],
      ],
      [[at.unit, at.result]],
    ),
  );
  return rows.length === 0
    ? []
    : [heads([[at.unit, "Rack positions"], [at.was, "Rack"], [at.seenAgain, "Units"], [at.by, "Lift"], [at.second, "Lift by"], [at.done, "Feed A"], [at.note, "Feed B"]], [at.unit, at.result]), ...rows];
}

function feedRows({ places }: ExpandedJob, loads: FeedLoads): SummaryRow[] {
  const rows = loads.of(places.arrays).map((load) =>
    rowOf(
      [
        [at.unit, fact(load.feed)],
        [at.result, { style: "fact" }],
        [at.was, number(Math.round(load.normalWatts))],
        [at.seenAgain, { style: "fact" }],
        [at.by, number(Math.round(load.worstWatts))],
        [at.second, number(round(load.worstAmps))],
        [at.done, number(round(load.limitAmps))],
        [at.note, load.ok ? fact(`${Math.round(load.share * 100)}%, within the limit`) : { value: `${Math.round(load.share * 100)}%: over the limit`, style: "alarm" }],
      ],
      [[at.unit, at.result], [at.was, at.seenAgain]],
    ),
  );
  return rows.length === 0
    ? []
    : [heads([[at.unit, "Feed loads (local code decides)"], [at.was, "Normal W"], [at.by, "Worst W"], [at.second, "Worst A"], [at.done, "Limit A"], [at.note, "Share at worst"]], [at.unit, at.result], [at.was, at.seenAgain]), ...rows];
}

function poolRows({ places }: ExpandedJob, lookup: PlanLookup): SummaryRow[] {
  const pools = new Map<string, PlanRow<"arrays">[]>();
  for (const array of places.arrays) if (array.pool !== "") pools.set(array.pool, [...(pools.get(array.pool) ?? []), array]);
  const rows = [...pools].map(([name, arrays]) => {
    const capacities = arrays.map(capacityOf);
    const total = capacities.every((one) => one !== null) ? capacities.reduce((sum, one) => sum + bytesIn(one.usable, terabyte), 0) : null;
    const limit = lookup.find("pools", "pool", name)?.fillLimit ?? null;
    return rowOf(
      [
        [at.unit, fact(name)],
        [at.result, { style: "fact" }],
        [at.was, total === null ? fact("") : number(round(total))],
        [at.seenAgain, { style: "fact" }],
        [at.by, fact(limit === null ? "" : percent(limit))],
        [at.second, fact("")],
        [at.done, total === null || limit === null ? fact("") : number(round(total * limit))],
        [at.note, fact(arrays.map(({ array }) => array).join(", "))],
      ],
      [[at.unit, at.result], [at.was, at.seenAgain], [at.by, at.second]],
    );
  });
  return rows.length === 0
    ? []
    : [heads([[at.unit, "Capacity by pool, here"], [at.was, "Usable TB"], [at.by, "Fill limit"], [at.done, "To fill TB"], [at.note, "Arrays"]], [at.unit, at.result], [at.was, at.seenAgain], [at.by, at.second]), ...rows];
}

function round(figure: number): number {
  return Math.round(figure * 100) / 100;
}

function fact(value: string): Cell {
  return value === "" ? { style: "fact" } : { value, style: "fact" };
}

function number(value: number): Cell {
  return { value, style: "factNumber" };
}

function rowOf(cells: readonly (readonly [number, Cell])[], merges: SummaryRow["merges"] = []): SummaryRow {
  return { cells: new Map(cells), merges };
}

function heads(labels: readonly (readonly [number, string])[], ...merges: readonly (readonly [number, number])[]): SummaryRow {
  return spread(labels.map(([column, value]) => [column, { value, style: "label" }]), merges);
}

/** Makes a row in which some cells run over their neighbours; those take on the same style, so that frames close. */
function spread(cells: readonly (readonly [number, Cell])[], spans: readonly (readonly [number, number])[]): SummaryRow {
  const all = new Map<number, Cell>(cells);
  for (const [from, to] of spans) for (let column = from + 1; column <= to; column += 1) all.set(column, { style: all.get(from)?.style });
  return { cells: all, merges: spans.filter(([from, to]) => to > from) };
}

function wide(value: string, style: string, last: number): SummaryRow {
  const cells = new Map<number, Cell>([[0, { value, style }]]);
  for (let column = 1; column <= last; column += 1) cells.set(column, { style });
  return { cells, merges: [[0, last]] };
}

function joinRows(left: SummaryRow | undefined, right: SummaryRow | undefined): SummaryRow {
  return { cells: new Map([...(left?.cells ?? []), ...(right?.cells ?? [])]), merges: [...(left?.merges ?? []), ...(right?.merges ?? [])] };
}
