import type { Cell, SheetPlan } from "../../../sheet";
import { formatAddress } from "../../addressing";
import { topUnit, type DriveSet, type PlanModel, type PoolContents } from "../../plan/model";
import type { PlanRow } from "../../plan/read";
import { canonicalText, foldName, formatPercent, terabytesOf } from "../../text";
import type { CommissioningPlan } from "../build";
import { isReopened, isSnagClosed, results, signed, snagText, type JobRecords, type Snag, type StepRecord } from "../record";

/** Text by which a handover sheet is known for ours. */
export const handoverMark = "Handover";

type Line = readonly (string | number)[];

/** A block of the sheet: its title, and its lines under headers, or a sentence where it has none. */
interface Block {
  readonly title: string;
  readonly headers: readonly string[];
  readonly lines: readonly Line[];
  readonly none: string;
}

/** The tab of a job that is handed over. */
export interface HandedOver {
  readonly tab: JobRecords;
  /** True where its last seal is whole. */
  readonly sealHolds: boolean;
}

/**
 * Plans the handover sheet of a job: arrays, clusters, what hosts can store and who opens it, what is still to do, deviations, snags, what was
 * measured, serial numbers found, contacts, the seal, and room for two signatures.
 */
export function planHandover(name: string, { model }: CommissioningPlan, job: PlanRow<"jobs">, { tab, sealHolds }: HandedOver, madeAt: string): SheetPlan {
  const { site, arrays } = model.places.of(job);
  const pools = model.capacity.pools().filter((pool) => pool.arrays.some((array) => arrays.includes(array)));
  const clusters = model.rows("clusters").filter(({ cluster }) => arrays.some((array) => foldName(array.cluster) === foldName(cluster)));
  const blocks: readonly Block[] = [
    {
      title: "Arrays",
      headers: ["Array", "Model", "Serial", "Firmware", "Rack", "Units", "Feeds", "Addresses"],
      lines: arrays.map((array) => asBuiltLine(array, model)),
      none: "No arrays.",
    },
    {
      title: "Capacity",
      headers: ["Array", "Pool", "Scheme", "Drives", "Spares", "Usable TB", "Reserve TB", "Raw TB"],
      lines: arrays.flatMap((array) => model.capacity.setsOf(array)).map((set) => capacityLine(set, model)),
      none: "No arrays.",
    },
    {
      title: "Capacity to hosts",
      headers: ["Pool", "Scheme across arrays", "Arrays", "To hosts TB", "Full volumes TB", "Promised TB", "Fill limit"],
      lines: pools.map((pool) => poolLine(pool, model)),
      none: "No pool is planned: hosts have what each array leaves.",
    },
    {
      title: "Clusters",
      headers: ["Cluster", "Shared address", "Network", "State", "Arrays"],
      lines: clusters.map(({ cluster, sharedAddress, network, state }) => {
        return [cluster, sharedAddress, network, state, names(arrays.filter((array) => foldName(array.cluster) === foldName(cluster)))];
      }),
      none: "No cluster.",
    },
    {
      title: "Hosts",
      headers: ["Host", "Groups", "Initiator name", "Addresses"],
      lines: model.rowsWith("hosts", "site", site.site).map((host) => [host.host, host.groups, ...hostNamesAndAddresses(host, model)]),
      none: "No hosts in the plan.",
    },
    {
      title: "Volumes",
      headers: ["Volume", "Pool", "Opened by", "Size TB", "Provisioning", "Snapshot share", "Purpose"],
      lines: pools.flatMap(({ pool }) => model.rowsWith("volumes", "pool", pool.pool)).map((volume) => volumeLine(volume, model)),
      none: "No volumes in the plan.",
    },
    {
      title: "Still to do",
      headers: ["No.", "Step id", "For", "Expected", "Result"],
      lines: tab.steps.filter(({ required, settled }) => required && !settled).map(({ no, stepId, subject, expected, result }) => [no, stepId, subject, expected, result ?? "not done"]),
      none: "None: every required step is settled.",
    },
    {
      title: "Deviations",
      headers: ["No.", "Step id", "For", "Expected", "Found", "Result", "By", "Note"],
      lines: tab.steps.filter(({ result }) => result !== null && result !== results.asExpected).map((step) => deviationLine(signed(step, tab.steps))),
      none: "None: every step that was done is as expected.",
    },
    {
      title: "Snags",
      headers: ["Snag", "Step id", "What was found", "Who puts it right", "By when", "Found again", "State", "By"],
      lines: tab.snags.map(snagLine),
      none: "None.",
    },
    {
      title: "Measured",
      headers: ["No.", "Step id", "For", "Expected", "Found", "Unit", "By", "Done"],
      lines: tab.steps.filter(({ kind, typed }) => kind === "number" && typed.found !== null).map((step) => measuredLine(signed(step, tab.steps))),
      none: "Nothing was measured.",
    },
    {
      title: "Serial numbers found",
      headers: Array.from({ length: pairsOfLine }, () => ["For", "Serial"]).flat(),
      lines: inLines(tab.steps.flatMap(({ kind, subject, typed }) => (kind === "serial" && typed.found !== null ? [[subject, canonicalText(typed.found)]] : []))),
      none: "None were recorded.",
    },
    {
      title: "Contacts",
      headers: ["Site", "Room", "Contact", "Alerts to", "Time servers", "Name servers"],
      lines: [[site.site, site.room, site.contact, site.alertsTo, site.timeServers, site.nameServers]],
      none: "None in the plan.",
    },
    {
      title: "Seal",
      headers: ["Code", "Sealed", "By", "State"],
      lines: sealLines(tab, sealHolds),
      none: "Not sealed: the tab is not closed out.",
    },
  ];
  const rows: Cell[][] = [
    [{ value: `${handoverMark}: ${job.job}`, style: "title" }],
    [{ value: `Site ${job.site}, ${job.procedure}, build ${tab.build}, made ${madeAt}`, style: "note" }],
    ...blocks.flatMap(blockRows),
    [],
    [],
    [...signatureCells("For the site, name and date"), {}, ...signatureCells("For the installer, name and date")],
  ];
  return {
    name,
    rows,
    styles: {
      title: { bold: true, fontSize: 18, color: "#17352d" },
      note: { italic: true, color: "#3d4f49" },
      section: { bold: true, fontSize: 12, fill: "#cfe0da", color: "#17352d" },
      header: { bold: true, fontSize: 10, fill: "#e6eeeb", border: "all", borderColor: "#b9c4c0", wrap: true, vertical: "middle" },
      text: { format: "@", wrap: true, vertical: "top", border: "all", borderColor: "#b9c4c0" },
      number: { align: "center", vertical: "top", border: "all", borderColor: "#b9c4c0" },
      line: { border: "bottom", borderColor: "#17352d", fontSize: 9 },
    },
    columnWidths: [26, 20, 26, 20, 20, 18, 20, 30],
    rowHeights: Object.fromEntries([...rows.entries()].flatMap(([row, cells]) => {
      const height = heightOf(cells);
      return height === null ? [] : [[row, height]];
    })),
    print: { orientation: "landscape", fitToWidth: true, footer: "page &P of &N", breaksBefore: [] },
  };
}

const columnCount = 8;

function blockRows({ title, headers, lines, none }: Block): Cell[][] {
  const band = Array.from({ length: columnCount }, (_, index): Cell => ({ ...(index === 0 && { value: title }), style: "section" }));
  if (lines.length === 0) return [[], band, [{ value: none, style: "note" }]];
  const head = headers.map((value): Cell => ({ value, style: "header" }));
  return [[], band, head, ...lines.map((line) => line.map(lineCell))];
}

function lineCell(value: string | number): Cell {
  if (typeof value === "number") return { value, style: "number" };
  return value === "" ? { style: "text" } : { value, style: "text" };
}

/** Makes a line to sign on, three columns wide. */
function signatureCells(value: string): Cell[] {
  return [{ value, style: "line" }, { style: "line" }, { style: "line" }];
}

/** Characters that surely fit on a line of the narrowest column, the height of one in points, and the most that a sheet takes. */
const narrowestLine = 17;
const [pointsPerLine, pointsAround, highestRow] = [15, 4, 409];

/** Works out how high a row must be for its longest text; null where one line will do. */
function heightOf(cells: readonly Cell[]): number | null {
  const linesOf = ({ value, style }: Cell): number =>
    typeof value === "string" && style === "text"
      ? value.split("\n").reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / narrowestLine)), 0)
      : 1;
  const lines = Math.max(1, ...cells.map(linesOf));
  return lines === 1 ? null : Math.min(highestRow, lines * pointsPerLine + pointsAround);
}

function asBuiltLine(array: PlanRow<"arrays">, model: PlanModel): Line {
  const ports = model.rowsWith("ports", "array", array.array);
  return [
    array.array,
    array.model,
    array.serial,
    array.firmware,
    array.rack,
    array.bottomUnit === null ? "" : `${array.bottomUnit}–${topUnit(array.bottomUnit, array.units)}`,
    [array.feedA, array.feedB].filter((feed) => feed !== "").join(", "),
    ports.map(({ controller, port, address }) => `${controller}${port} ${address}`).join("\n"),
  ];
}

function capacityLine(set: DriveSet, model: PlanModel): Line {
  const capacity = model.capacity.ofSet(set);
  const sizes = capacity === null ? ["", "", ""] : [capacity.usable, capacity.reserve, capacity.raw].map(terabytesOf);
  return [set.label, set.pool, set.scheme?.name ?? "", set.drives ?? "", set.spares ?? "", ...sizes];
}

/** Pairs of subject and serial number that stand side by side. */
const pairsOfLine = 4;

function inLines(pairs: readonly (readonly string[])[]): Line[] {
  return Array.from({ length: Math.ceil(pairs.length / pairsOfLine) }, (_, index) => pairs.slice(index * pairsOfLine, (index + 1) * pairsOfLine).flat());
}

function names(arrays: readonly PlanRow<"arrays">[]): string {
  return arrays.map(({ array }) => array).join("\n");
}

function poolLine(contents: PoolContents, model: PlanModel): Line {
  const demand = model.volumes.demands().find((one) => one.contents === contents);
  const given = model.capacity.toHosts(contents);
  const { pool, arrays, fillLimit } = contents;
  const volumes = demand === undefined ? ["", ""] : [terabytesOf(demand.full), terabytesOf(demand.promised)];
  return [pool.pool, pool.acrossArrays === "" ? "none" : pool.acrossArrays, names(arrays), given === null ? "not known" : terabytesOf(given), ...volumes, formatPercent(fillLimit)];
}

function volumeLine({ volume, pool, size, provisioning, snapshotShare, purpose }: PlanRow<"volumes">, model: PlanModel): Line {
  const openings = model.volumes.openingsOf(volume).map(({ row: { to, number }, writes }) => `${to}${number === null ? "" : ` as ${number}`}, ${writes ? "read and write" : "read"}`);
  return [volume, pool, openings.join("\n"), size === null ? "" : terabytesOf(size), provisioning === "thin" ? "thin" : "full", formatPercent(snapshotShare ?? 0), purpose];
}

function hostNamesAndAddresses(host: PlanRow<"hosts">, model: PlanModel): string[] {
  return [model.hostPorts.initiatorNamesOf(host), model.hostPorts.addressesOf(host).map(formatAddress)].map((lines) => lines.join("\n"));
}

function measuredLine({ no, stepId, subject, expected, typed, seenUnit }: StepRecord): Line {
  return [no, stepId, subject, expected, canonicalText(typed.found), seenUnit, canonicalText(typed.by), canonicalText(typed.done, true)];
}

function deviationLine({ no, stepId, subject, expected, typed, result }: StepRecord): Line {
  return [no, stepId, subject, expected, canonicalText(typed.found), result ?? "", canonicalText(typed.by), canonicalText(typed.note)];
}

function snagLine(snag: Snag): Line {
  const text = (field: keyof Snag["typed"]): string => snagText(field, snag.typed[field]);
  const state = isSnagClosed(snag) ? text("closed") : "OPEN";
  return [snag.id, snag.stepId, text("foundWrong"), text("mender"), text("byWhen"), text("foundAgain"), state, text("by")];
}

/** Lists the seals with what became of each: only the last one can hold. */
function sealLines({ seals }: JobRecords, holds: boolean): Line[] {
  return seals.map((seal, index) => {
    const { typed } = seal;
    const isOver = index < seals.length - 1 || isReopened(seal);
    const state = isOver ? `reopened ${canonicalText(typed.reopened, true)} by ${canonicalText(typed.reopenedBy)}` : holds ? "holds" : "BROKEN";
    return [canonicalText(typed.code), canonicalText(typed.sealed, true), canonicalText(typed.by), state];
  });
}
