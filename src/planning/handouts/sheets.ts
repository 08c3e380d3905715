import type { Cell, CellStyle, SheetPlan } from "../../sheet";
import type { PlanModel } from "../plan/model";
import { noAnswer } from "../text";
import { namesOfPlan } from "./name-lines";
import { portLinesOf } from "./switch-ports";

/** Texts by which the sheets are known for ours. */
export const switchListMark = "Ports by switch";
export const namesMark = "Names and addresses";

/** Points that the title takes. */
const titleHeight = 28;

const styles = {
  title: { bold: true, fontSize: 18, color: "#17352d" },
  note: { italic: true, color: "#3d4f49" },
  section: { bold: true, fontSize: 12, fill: "#cfe0da", color: "#17352d" },
  header: { bold: true, fontSize: 10, fill: "#e6eeeb", border: "all", borderColor: "#b9c4c0", vertical: "middle" },
  text: { format: "@", wrap: true, vertical: "top", border: "all", borderColor: "#b9c4c0" },
  number: { align: "center", vertical: "top", border: "all", borderColor: "#b9c4c0" },
  line: { format: "@" },
  refused: { format: "@", color: "#8a1f11" },
} as const satisfies Readonly<Record<string, CellStyle>>;

/** Plans a sheet that lists, switch by switch and each on a page of its own, what its owner sets up. No answer for a plan without switches. */
export function planSwitchList(model: PlanModel, madeAt: string): SheetPlan {
  const switches = model.rows("switches").filter((row) => row.switch !== "");
  if (switches.length === 0) throw noAnswer("Switches", null, "No switch stands in the plan, so there is no port to list. Fill Switches, then cable the ports.");
  const rows: Cell[][] = [[{ value: switchListMark, style: "title" }], [{ value: `Made ${madeAt}. Made anew from the plan: notes written here go with it.`, style: "note" }]];
  const breaksBefore: number[] = [];
  for (const row of switches) {
    rows.push([]);
    if (rows.length > 3) breaksBefore.push(rows.length);
    rows.push(band(`${row.switch}${row.site === "" ? "" : `, ${row.site}`}${row.side === "" ? "" : `, side ${row.side}`}`, 4));
    const lines = portLinesOf(model, row);
    if (lines.length === 0) {
      rows.push([{ value: "Nothing is cabled to it in the plan.", style: "note" }]);
      continue;
    }
    rows.push(["Port", "VLAN", "MTU", "Description"].map((value): Cell => ({ value, style: "header" })));
    for (const { port, vlan, mtu, description } of lines) {
      rows.push([textCell(port), textCell(vlan), mtu === null ? { style: "number" } : { value: mtu, style: "number" }, textCell(description)]);
    }
  }
  return {
    name: switchListMark, rows, styles, columnWidths: [16, 16, 10, 56], rowHeights: { 0: titleHeight },
    print: { orientation: "portrait", fitToWidth: true, footer: "page &P of &N", breaksBefore },
  };
}

/** Plans a sheet of the names of a plan, one line a cell, so that a block can be copied into a zone or a hosts file; see `namesOfPlan`. */
export function planNames(model: PlanModel, domain: string, madeAt: string): SheetPlan {
  const { refused, blocks } = namesOfPlan(model, domain);
  if (refused.length + blocks.length === 0) throw noAnswer("Ports", null, "No address stands in the plan, so there is no name to list. Assign addresses first.");
  const rows: Cell[][] = [
    [{ value: namesMark, style: "title" }],
    [{ value: `Made ${madeAt}. Copy the lines below a title; SOA and NS records are the zone owner's.`, style: "note" }],
    ...(refused.length === 0 ? [] : [[], band("Without a name", 1), ...refused.map((value): Cell[] => [{ value, style: "refused" }])]),
    ...blocks.flatMap(({ title, lines }): Cell[][] => [[], band(title, 1), ...lines.map((value): Cell[] => [{ value, style: "line" }])]),
  ];
  return {
    name: namesMark, rows, styles, columnWidths: [84], rowHeights: { 0: titleHeight },
    print: { orientation: "portrait", fitToWidth: true, footer: "page &P of &N", breaksBefore: [] },
  };
}

function band(value: string, columns: number): Cell[] {
  return Array.from({ length: columns }, (_, at): Cell => (at === 0 ? { value, style: "section" } : { style: "section" }));
}

function textCell(value: string): Cell {
  return value === "" ? { style: "text" } : { value, style: "text" };
}
