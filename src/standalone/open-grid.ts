import { type IWorkbookData, LocaleType, type Plugin, type PluginCtor, Univer, mergeLocales } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { UniverSheetsConditionalFormattingPreset } from "@univerjs/preset-sheets-conditional-formatting";
import conditionalFormattingEnglish from "@univerjs/preset-sheets-conditional-formatting/locales/en-US";
import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import coreEnglish from "@univerjs/preset-sheets-core/locales/en-US";
import { UniverSheetsDataValidationPreset } from "@univerjs/preset-sheets-data-validation";
import dataValidationEnglish from "@univerjs/preset-sheets-data-validation/locales/en-US";
import "@univerjs/preset-sheets-core/lib/index.css";
import "@univerjs/preset-sheets-data-validation/lib/index.css";
import "@univerjs/preset-sheets-conditional-formatting/lib/index.css";
import { bayFunctionHelp, bayFunctions } from "../workbook/browser/bay-functions";

/** A browser workbook on the page. */
export interface Grid {
  readonly univer: Univer;
  readonly api: FUniver;
}

/** Opens a workbook as a grid inside `container`. */
export function openGrid(container: HTMLElement, data: Partial<IWorkbookData>): Grid {
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: mergeLocales(coreEnglish, dataValidationEnglish, conditionalFormattingEnglish) },
  });
  const presets = [
    UniverSheetsCorePreset({ container, formula: { function: bayFunctions() as never, description: bayFunctionHelp() } }),
    UniverSheetsDataValidationPreset(),
    UniverSheetsConditionalFormattingPreset(),
  ];
  const known = new Set<string>();
  for (const entry of presets.flatMap(({ plugins }) => plugins)) {
    const [plugin, config] = (Array.isArray(entry) ? entry : [entry, undefined]) as [PluginCtor<Plugin>, never];
    if (known.has(plugin.pluginName)) continue;
    known.add(plugin.pluginName);
    univer.registerPlugin(plugin, config);
  }
  const api = FUniver.newAPI(univer);
  api.createWorkbook(data);
  return { univer, api };
}
