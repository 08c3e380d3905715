import type { IWorkbookData } from "@univerjs/core";
import type { SheetPlan } from "../../planning/workbook-model";
import { storedSheet } from "./plan-sheet";
import { estimateRowHeights } from "./row-heights";
import { resourceNames, type StoredStyle } from "./stored-sheet";

/** Makes a whole workbook of sheet plans, as the engine stores it: one step, where adding sheet by sheet computes again after each. */
export function planWorkbook(plans: readonly SheetPlan[]): IWorkbookData {
  const styles: Record<string, StoredStyle> = {};
  const ids = new Map<string, string>();
  let counter = 0;
  const keepStyle = (style: StoredStyle): string => {
    const text = JSON.stringify(style);
    const id = ids.get(text) ?? `s${ids.size}`;
    ids.set(text, id);
    styles[id] = style;
    return id;
  };
  const stored = plans.map((plan) => storedSheet(plan, keepStyle, () => `p${(counter += 1)}`));
  for (const { sheet } of stored) estimateRowHeights(sheet, styles);
  const bySheet = <T>(pick: (sheet: (typeof stored)[number]) => readonly T[]) => JSON.stringify(Object.fromEntries(stored.map((one) => [one.sheet.id, pick(one)])));
  return {
    id: "workbook",
    name: "Workbook",
    appVersion: "",
    locale: "enUS" as never,
    styles,
    sheetOrder: stored.map(({ sheet }) => sheet.id),
    sheets: Object.fromEntries(stored.map(({ sheet }) => [sheet.id, sheet])),
    resources: [
      { name: resourceNames.validations, data: bySheet(({ validations }) => validations) },
      { name: resourceNames.conditionalFormats, data: bySheet(({ conditionalFormats }) => conditionalFormats) },
    ],
  };
}
