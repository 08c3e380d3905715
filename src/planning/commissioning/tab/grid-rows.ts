import type { Cell } from "../../../sheet";
import { stepWords, type JobSection, type JobStep } from "../job";
import type { CarriedStep } from "../record";
import { kindsOnTab } from "./kind-on-tab";
import { gridRuleText, packed, type SlotRule } from "./rule-cell";
import { wantedCells } from "./step-rows";
import { hidden, inShownColumns, rowOf, styled, type TabCells } from "./tab-cells";
import { slotColumns, slotsPrefix, tags, type TabColumn } from "./tab-columns";
import { gridFormulas } from "./tab-formulas";

/** A step in the row of a grid, with what was carried to it. */
export interface GridSlot {
  readonly step: JobStep;
  readonly carried: CarriedStep | undefined;
}

/** Lays out what stands above the rows of a grid: what each step says, in a cell that runs over all columns behind it. */
export function gridHeadRow(title: string, columns: JobSection["columns"]): Cell[] {
  const steps = [...new Map(columns.map((step) => [step.stepId, step])).values()];
  return rowOf({
    ...inShownColumns("gridHead"),
    no: styled(title, "sideTitle"),
    stepId: { style: "sideTitle" },
    step: styled(steps.map((step) => `${step.stepId}: ${stepWords(step)}`).join("\n"), "gridHead"),
    key: hidden(tags.grid),
    rule: hidden(packed(steps.map(({ stepId }) => stepId))),
  });
}

/** Lays out what stands above steps of a list that say the same: their words, in a cell that runs over all columns behind it, and whose they are. */
export function wordsRow(title: string, steps: readonly JobStep[]): Cell[] {
  const [first] = steps;
  const style = first!.caution === "" ? "gridHead" : "stepCaution";
  return rowOf({
    ...inShownColumns(style),
    no: styled(title, "sideTitle"),
    stepId: { style: "sideTitle" },
    step: styled(`${first!.stepId}: ${stepWords(first!)}`, style),
    key: hidden(tags.words),
    rule: hidden(packed([first!.stepId, ...steps.map(({ key }) => key)])),
  });
}

/** Lays out the names of the columns of a grid: above what is expected of a step stands its id, or whose it is. */
export function gridLabelRow(columns: JobSection["columns"]): Cell[] {
  const cells: TabCells = { ...inShownColumns("label"), no: styled("No.", "label"), subject: styled("For", "label"), result: styled("Result", "label"), note: styled("Note", "label") };
  for (const { slot, stepId, unit } of columns) {
    const { place, head } = slot!;
    const { expected, found } = slotColumns[place]!;
    cells[expected] = styled(head, "label");
    // Where subjects stand side by side each row has its unit under For.
    cells[found] = styled(head !== stepId || unit === "" ? "Found" : `Found, ${unit}`, "label");
  }
  return rowOf(cells);
}

/** Reads what each step of a grid says, by its id, from the row above it. */
export function readGridHead(text: string, stepIds: readonly (string | null)[]): (readonly [stepId: string, words: string])[] {
  const starts = stepIds.map((stepId) => (text.startsWith(`${stepId}: `) ? 0 : text.indexOf(`\n${stepId}: `) + 1));
  return stepIds.flatMap((stepId, index) => (stepId === null ? [] : [[stepId, text.slice(starts[index]! + stepId.length + 2, starts[index + 1]).trim()] as const]));
}

/** Where the row of a grid stands on the tab. */
export interface GridPlace {
  /** Row of the sheet, from 0. */
  readonly row: number;
  readonly no: number;
  /** What heads the columns whose steps stand in rows of their own below the grid. */
  readonly apart: readonly string[];
}

/** Writes the hidden key of the row of a grid: those of its steps by place. */
export function gridKey(slots: readonly (GridSlot | null)[]): string {
  return slotsPrefix + packed(slots.map((slot) => slot?.step.key ?? null));
}

function slotRule({ stepId, required, expectation: { kind }, subject, slot }: JobStep): SlotRule {
  return { stepId, ...(slot!.head !== stepId && { head: slot!.head, subject }), rule: { required, sign: "none", kind, holdPoint: false } };
}

/** Lays out the row of a subject in a grid: its slots by place, null where it has none; the note is that of the first. */
export function gridRow(slots: readonly (GridSlot | null)[], { row, no, apart }: GridPlace): Cell[] {
  const there = slots.flatMap((slot, place) => (slot === null ? [] : [{ ...slot, columns: slotColumns[place]! }]));
  const { step: first, carried: firstCarried } = there[0]!;
  const cells: TabCells = inShownColumns("notAsked");
  for (const { step, carried, columns } of there) {
    const { low, high } = wantedCells(step.expectation);
    cells[columns.expected] = styled(step.expectation.shown, "expected");
    cells[columns.found] = styled(carried?.typed.found ?? null, kindsOnTab[step.expectation.kind].foundStyle);
    cells[columns.low] = low;
    cells[columns.high] = high;
  }
  const formulas = gridFormulas(row, there.map(({ step, columns }) => ({ expectation: step.expectation, name: step.slot!.head, columns })));
  for (const key of Object.keys(formulas) as TabColumn[]) {
    cells[key] = { formula: formulas[key], style: key === "result" ? "result" : "hidden" };
  }
  const byPlace = (textOf: (slot: GridSlot) => string): string => packed(slots.map((slot) => slot && textOf(slot)));
  return rowOf({
    ...cells,
    no: styled(no, "no"),
    stepId: styled(first.stepId, "stepId"),
    step: styled(apart.length === 0 ? null : `In rows of their own below: ${apart.join(", ")}.`, "step"),
    subject: styled(first.slot!.label, "text"),
    note: styled(firstCarried?.typed.note ?? null, "typedText"),
    key: hidden(gridKey(slots)),
    rule: hidden(gridRuleText({
      signKey: first.slot?.signKey ?? "",
      slots: slots.map((slot) => slot && slotRule(slot.step)),
    })),
    plannedUnit: hidden(byPlace(({ step }) => step.unit)),
    minutes: hidden(there.reduce((sum, { step }) => sum + step.minutes, 0)),
    carried: hidden(there.every(({ carried }) => carried === undefined) ? null : byPlace(({ carried }) => carried?.carried ?? "")),
    digest: { style: "hiddenText" },
  });
}
