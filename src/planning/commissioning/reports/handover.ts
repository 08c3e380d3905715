import { bytesIn, terabyte } from "../../quantity";
import type { Cell, SheetPlan } from "../../../sheet";
import type { PlanRow } from "../../plan/read";
import type { CommissioningPlan } from "../build";
import { canonicalText } from "../../text";
import { capacityOf } from "../../plan/subjects";
import { placesOf } from "../../plan/model";
import { checkSeal } from "../seal";
import { isSnagClosed, results, snagText, type JobRecords, type Snag, type StepRecord } from "../record";

/** Text by which a handover sheet is known for ours. */
export const handoverMark = "Handover";

/** Plans the handover sheet of a job: as built, deviations, open snags, capacity, contacts, the seal, and room for two signatures. */
export function planHandover(name: string, { lookup }: CommissioningPlan, job: PlanRow<"jobs">, tab: JobRecords, madeAt: string): SheetPlan {
  const { site, arrays } = placesOf(lookup, job);
  const seal = checkSeal(tab);
  const rows: Cell[][] = [
    [{ value: `${handoverMark}: ${job.job}`, style: "title" }],
    [{ value: `Site ${job.site}, ${job.procedure}, build ${tab.build}, made ${madeAt}`, style: "note" }],
  ];
  const block = (title: string, headers: readonly string[], lines: readonly (readonly (string | number)[])[], none: string): void => {
    rows.push([], [title, "", "", "", "", "", "", ""].map((value) => ({ ...(value === "" ? {} : { value }), style: "section" })));
    if (lines.length === 0) rows.push([{ value: none, style: "note" }]);
    else rows.push(headers.map((value) => ({ value, style: "header" })), ...lines.map((line) => line.map((value) => (value === "" ? { style: "text" } : { value, style: typeof value === "number" ? "number" : "text" }))));
  };
  block(
    "As built",
    ["Array", "Model", "Serial", "Firmware", "Rack", "Units", "Feeds", "Addresses"],
    arrays.map((array) => [
      array.array, array.model, array.serial, array.firmware, array.rack,
      array.bottomUnit === null ? "" : `${array.bottomUnit}–${array.bottomUnit + (array.units ?? 1) - 1}`,
      [array.feedA, array.feedB].filter((feed) => feed !== "").join(", "),
      lookup.rowsWhere("ports", "array", array.array).map(({ controller, port, address }) => `${controller}${port} ${address}`).join("\n"),
    ]),
    "No arrays.",
  );
  block(
    "Capacity",
    ["Array", "Pool", "Scheme", "Drives", "Spares", "Usable TB", "Reserve TB", "Raw TB"],
    arrays.map((array) => {
      const capacity = capacityOf(array);
      const inTerabytes = (size: bigint): number => Math.round(bytesIn(size as never, terabyte) * 100) / 100;
      return [array.array, array.pool, array.scheme?.name ?? "", array.drives ?? "", array.spares ?? "", ...(capacity === null ? ["", "", ""] : [inTerabytes(capacity.usable), inTerabytes(capacity.reserve), inTerabytes(capacity.raw)])];
    }),
    "No arrays.",
  );
  block(
    "Deviations",
    ["No.", "Step id", "For", "Expected", "Found", "Result", "By", "Note"],
    tab.steps.filter(({ result, resultText }) => resultText !== "" && result !== results.asExpected).map(deviationLine),
    "None: every step that was done is as expected.",
  );
  block(
    "Snags",
    ["Row", "Step id", "What was found", "Who mends", "By when", "Found again", "State", "By"],
    tab.snags.map(snagLine),
    "None.",
  );
  block("Contacts", ["Site", "Room", "Contact", "Alerts to", "Time servers", "Name servers"], site === null ? [] : [[site.site, site.room, site.contact, site.alertsTo, site.timeServers, site.nameServers]], "None in the plan.");
  block(
    "Seal",
    ["Code", "Sealed", "By", "State"],
    tab.seals.map(({ typed }, index) => {
      const isOver = index < tab.seals.length - 1 || typed.reopened !== null;
      const state = isOver ? `reopened ${canonicalText(typed.reopened, true)} by ${canonicalText(typed.reopenedBy)}` : seal.holds ? "holds" : "BROKEN";
      return [canonicalText(typed.code), canonicalText(typed.sealed, true), canonicalText(typed.by), state];
    }),
    "Not sealed: the tab is not closed out.",
  );
  rows.push([], [], [{ value: "For the site, name and date", style: "line" }, { style: "line" }, { style: "line" }, {}, { value: "For the installer, name and date", style: "line" }, { style: "line" }, { style: "line" }]);
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
    rowHeights: Object.fromEntries(rows.flatMap((cells, row) => {
      const lines = Math.max(1, ...cells.map(({ value, style }) => (typeof value === "string" && style === "text" ? value.split("\n").reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / 17)), 0) : 1)));
      return lines > 1 ? [[row, Math.min(409, lines * 15 + 4)]] : [];
    })),
    print: { orientation: "landscape", fitToWidth: true, footer: "page &P of &N", breaksBefore: [] },
  };
}

function deviationLine({ no, stepId, subject, expected, typed, resultText }: StepRecord): string[] {
  return [no, stepId, subject, expected, canonicalText(typed.found), resultText, canonicalText(typed.by), canonicalText(typed.note)];
}

function snagLine(snag: Snag): string[] {
  const text = (field: keyof Snag["typed"]): string => snagText(field, snag.typed[field]);
  const state = isSnagClosed(snag) ? text("closed") : "OPEN";
  return [text("about"), snag.stepId, text("foundWrong"), text("mender"), text("byWhen"), text("foundAgain"), state, text("by")];
}
