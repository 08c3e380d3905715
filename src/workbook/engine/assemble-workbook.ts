import { LocaleType, type IWorkbookData } from "@univerjs/core";
import { estimateRowHeights } from "./row-heights";
import { resourceNames, type StoredSheet, type StoredStyle } from "./stored-sheet";

/** The styles of a workbook in the making, each kept once. */
export interface StyleKeeper {
  readonly styles: Readonly<Record<string, StoredStyle>>;
  /** Keeps a style and answers the id under which cells name it. */
  readonly keep: (style: StoredStyle) => string;
}

export function makeStyleKeeper(): StyleKeeper {
  const styles: Record<string, StoredStyle> = {};
  const ids = new Map<string, string>();
  return {
    styles,
    keep(style) {
      const text = JSON.stringify(style);
      const id = ids.get(text) ?? `s${ids.size}`;
      ids.set(text, id);
      styles[id] = style;
      return id;
    },
  };
}

/** Puts sheets together to a workbook as the engine stores it. `further` is what plug-ins keep beside rules and formats, by name. */
export function assembleWorkbook(
  stored: readonly StoredSheet[],
  styles: Readonly<Record<string, StoredStyle>>,
  further: Readonly<Record<string, unknown>> = {},
): IWorkbookData {
  for (const { sheet } of stored) estimateRowHeights(sheet, styles);
  const bySheet = <T>(pick: (sheet: StoredSheet) => readonly T[]) => Object.fromEntries(stored.map((one) => [one.sheet.id, pick(one)]));
  const resources = {
    [resourceNames.validations]: bySheet(({ validations }) => validations),
    [resourceNames.conditionalFormats]: bySheet(({ conditionalFormats }) => conditionalFormats),
    ...further,
  };
  return {
    id: "workbook",
    name: "Workbook",
    appVersion: "",
    locale: LocaleType.EN_US,
    styles,
    sheetOrder: stored.map(({ sheet }) => sheet.id),
    sheets: Object.fromEntries(stored.map(({ sheet }) => [sheet.id, sheet])),
    resources: Object.entries(resources).map(([name, resource]) => ({ name, data: JSON.stringify(resource) })),
  };
}
