import { DEFAULT_STYLES, IUniverInstanceService, type IWorkbookData, LifecycleService, LifecycleStages, LocaleService, LocaleType, type PluginCtor, Univer, UniverInstanceType } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { IDefinedNamesService } from "@univerjs/engine-formula";
import { UniverSheetsConditionalFormattingPreset } from "@univerjs/preset-sheets-conditional-formatting";
import { UniverSheetsFindReplacePreset } from "@univerjs/preset-sheets-find-replace";
import { defaultTheme } from "@univerjs/themes";
import { UniverSheetsNotePlugin } from "@univerjs/sheets-note";
import { UniverSheetsSortPreset } from "@univerjs/preset-sheets-sort";
import { SetWorksheetActiveOperation } from "@univerjs/sheets";
import { IEditorBridgeService } from "@univerjs/sheets-ui";
import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import { UniverSheetsDataValidationPreset } from "@univerjs/preset-sheets-data-validation";
import { SheetsDataValidationValidatorService } from "@univerjs/sheets-data-validation";
import { SheetsFindReplaceController } from "@univerjs/sheets-find-replace";
import { CalculationMode } from "@univerjs/sheets-formula";
import { ILayoutService } from "@univerjs/ui";
import "@univerjs/preset-sheets-core/lib/index.css";
import "@univerjs/preset-sheets-data-validation/lib/index.css";
import "@univerjs/preset-sheets-conditional-formatting/lib/index.css";
import "@univerjs/preset-sheets-find-replace/lib/index.css";
import "@univerjs/preset-sheets-sort/lib/index.css";
import { sameSheetName, type Area } from "../../sheet";
import { bayFunctionHelp, bayFunctions } from "../../workbook/engine/bay-functions";
import { createBrowserPort } from "../../workbook/engine/browser-port";
import { LiveWorkbook } from "../../workbook/engine/live-workbook";
import { frontOf } from "../../workbook/engine/stored-sheet";
import type { WorkbookPort } from "../../workbook/port";
import type { FilterCard } from "../filter-card";
import type { NoteCard } from "../note-card";
import { endExamples } from "./argument-help";
import { askOnceAFrame } from "./cells-of-a-frame";
import { copyLinks } from "./copied-links";
import { copyNotes } from "./copied-notes";
import { addDeskKeys } from "./desk-keys";
import { showEarlyDialogs } from "./early-dialogs";
import { loadEnglish } from "./engine-texts";
import { showFaultNotes, type FaultDisplay } from "./fault-notes";
import { fitRows } from "./fitted-rows";
import { keepFormulaBar } from "./formula-bar";
import { giveWay } from "./frozen-columns";
import { keepHostRules } from "./host-rules";
import { offerWhatFilesKeep } from "./offered-choices";
import { openMenusByKey } from "./menu-keys";
import { keepMovesInSight } from "./moves-in-sight";
import { followAddresses, placeOn } from "./name-box";
import { type OpenCell, watchOpenCell } from "./open-cell";
import { keepForeignText, keepPastedText } from "./plain-text-paste";
import { drawListsAsText } from "./list-cells";
import { keepToEdges } from "./sheet-edges";
import { showFilters } from "./show-filters";
import { showNotes } from "./show-notes";
import { formatAsFilesDo } from "./rules-of-files";
import { type LinkDisplay, showLinks } from "./show-links";
import { passStaleSuggestions } from "./stale-suggestions";
import { extendTabMenu, renameByDoubleClick, type AskPrint } from "./tab-menu";
import { keepTabRuns } from "./tab-run";
import { addTypingKeys } from "./typing-keys";
import { showWhatFits } from "./too-wide-numbers";
import { computeTypedFormulas } from "./typed-formulas";

/** The accent of the pane and the top bar, from its lightest shade to its darkest. */
const accent = {
  50: "#eef5f5", 100: "#dcecec", 200: "#b9d6d8", 300: "#8fbfc4", 400: "#4f97a0", 500: "#1f7a86", 600: "#0b5f6b", 700: "#084852", 800: "#06363d", 900: "#042529",
};

/** What a cell is drawn in that names no font, as its file means it. Where the machine lacks it the engine takes another. */
const standardFont = "Calibri";

/** What the menus of the engine offer and no file keeps: it protects sheets and cells in a way of its own. */
const leftOut: readonly string[] = [
  "sheet.contextMenu.permission", "sheet.command.add-range-protection-from-toolbar", "sheet.command.add-range-protection-from-sheet-bar",
  "sheet.command.delete-worksheet-protection-from-sheet-bar", "sheet.command.change-sheet-protection-from-sheet-bar", "sheet.command.view-sheet-permission-from-sheet-bar",
];

/** A grid on the page: the one workbook that is open in it, and how to open another. */
export interface Grid {
  readonly api: FUniver;
  readonly live: LiveWorkbook;
  readonly openCell: OpenCell;
  /** The port of the workbook that is open now; that of an earlier one refuses every call. */
  readonly port: WorkbookPort;
  /** Shows the grid in dark colours, or in light ones. */
  darken(dark: boolean): void;
  /** Gives the keyboard to the cells: what is typed then goes into the selected one. */
  focus(): void;
  /** Lets what is being typed stand in its cell, or as its note, and closes both. */
  endTyping(): Promise<void>;
  /** Puts another workbook in place of the one that is open. */
  show(data: Partial<IWorkbookData>): void;
}

/** What the grid asks of the page around it: to show sentences of errors and notes, to say why something is refused, and to ask how a sheet is printed. */
export interface GridDisplay extends FaultDisplay {
  readonly notes: NoteCard;
  readonly filters: FilterCard;
  /** Says under the cells that rows are out of sight, and offers to show them; null where none are. */
  readonly filtered: (sentence: string | null, showAll: () => void) => void;
  readonly say: (sentence: string) => void;
  /** Shows under the cells where the selected one leads, and offers to go there; null where it leads nowhere. */
  readonly linked: LinkDisplay["linked"];
  readonly askPrint: AskPrint;
}

/** Opens a workbook as a grid inside `container`, and answers once it is drawn. */
export async function openGrid(container: HTMLElement, data: Partial<IWorkbookData>, display: GridDisplay): Promise<Grid> {
  showWhatFits();
  DEFAULT_STYLES.ff = standardFont;
  askOnceAFrame();
  const univer = new Univer({ theme: { ...defaultTheme, primary: accent }, locale: LocaleType.EN_US });
  loadEnglish(univer.__getInjector().get(LocaleService));
  const presets = [
    UniverSheetsCorePreset({
      container,
      // The keyboard belongs to the page until somebody goes to the grid.
      disableAutoFocus: true,
      menu: Object.fromEntries(leftOut.map((entry) => [entry, { hidden: true }])),
      ribbonType: "simple",
      // Text that looks like a number is meant as text: addresses, serials, bays.
      disableTextFormatMark: true,
      disableTextFormatAlert: true,
      sheets: { disableForceStringMark: true, disableForceStringAlert: true },
      formula: { function: bayFunctions(), description: bayFunctionHelp(), initialFormulaComputing: CalculationMode.FORCED },
    }),
    // Its search box would take the keyboard: Enter must end what is typed into a cell with a list, as in any other cell.
    UniverSheetsDataValidationPreset({ showSearchOnDropdown: false, showEditOnDropdown: false }),
    UniverSheetsConditionalFormattingPreset(),
    UniverSheetsFindReplacePreset(),
    UniverSheetsSortPreset(),
  ];
  // Notes by their model alone: they are shown on a card of our own.
  const plugins = [...presets.flatMap((preset) => preset.plugins), UniverSheetsNotePlugin];
  const known = new Set<string>();
  for (const entry of plugins) {
    const [plugin, config] = (Array.isArray(entry) ? entry : [entry, undefined]) as [PluginCtor, never];
    if (known.has(plugin.pluginName)) continue;
    known.add(plugin.pluginName);
    univer.registerPlugin(plugin, config);
  }
  const api = FUniver.newAPI(univer);
  showEarlyDialogs(univer);
  univer.createUnit(UniverInstanceType.UNIVER_SHEET, data);
  forgetClosedWorkbooks(univer);
  const live = new LiveWorkbook(univer);
  // Formulas of a file answer what the file says until all is computed once.
  const comeAlive = () => void live.settle().catch(() => undefined);
  await univer.__getInjector().get(LifecycleService).onStage(LifecycleStages.Rendered);
  keepHostRules(univer, live, display.say);
  offerWhatFilesKeep(univer, live);
  formatAsFilesDo(univer);
  passStaleSuggestions(univer, live);
  keepTabRuns(univer, live);
  keepToEdges(univer, live);
  addDeskKeys(univer, live);
  addTypingKeys(univer);
  keepFormulaBar(univer, container);
  turnToFront(live, data);
  extendTabMenu(univer, live, display.askPrint);
  renameByDoubleClick(univer, container);
  openMenusByKey(univer, api, live, container);
  giveWay(univer, live, container);
  drawListsAsText(univer);
  endExamples(univer);
  const fitInFront = fitRows(univer, live);
  keepPastedText(univer);
  keepForeignText(univer, live);
  copyNotes(univer, live);
  copyLinks(univer, live);
  keepMovesInSight(univer, live, display.say);
  computeTypedFormulas(univer);
  // The engine learns to search sheets three seconds later; until then Ctrl+F would do nothing.
  univer.__getInjector().get(SheetsFindReplaceController);
  showFaultNotes(univer, api, live, container, display);
  const focus = () => {
    univer.__getInjector().get(ILayoutService).focus();
  };
  showNotes(univer, api, live, container, display.notes, { focus, say: display.say });
  showFilters(univer, api, live, container, { card: display.filters, focus, say: display.say, filtered: display.filtered });
  comeAlive();
  let port = createBrowserPort(univer, live);
  const lead = (name: string, area: Area) => {
    const sheet = live.workbook.getSheets().find((one) => sameSheetName(one.getName(), name));
    if (sheet !== undefined) void port.apply([{ kind: "select", sheet: sheet.getName(), area }]).then(focus);
    return sheet !== undefined;
  };
  const own = () => live.workbook.getActiveSheet().getName();
  const leadTo = (text: string) => {
    const named = api.getActiveWorkbook()?.getDefinedName(text)?.getFormulaOrRefString();
    const place = placeOn(named ?? text, own());
    return place !== null && lead(place.sheet, place.area);
  };
  const definedNames = univer.__getInjector().get(IDefinedNamesService);
  const isName = (text: string) => definedNames.getValueByName(live.workbook.getUnitId(), text) !== null;
  followAddresses(container, { lead, own, isName, focus, say: display.say });
  showLinks(univer, live, { linked: display.linked, say: display.say, lead: leadTo });
  return {
    api,
    live,
    openCell: watchOpenCell(univer, live),
    get port() {
      return port;
    },
    darken(dark) {
      api.toggleDarkMode(dark);
    },
    focus,
    async endTyping() {
      display.notes.finish();
      display.filters.close();
      // While a formula is written the engine keeps its cell open for references that may be clicked.
      univer.__getInjector().get(IEditorBridgeService).disableForceKeepVisible();
      await api.getActiveWorkbook()?.endEditingAsync(true);
    },
    show(next) {
      const before = live.workbook.getUnitId();
      // Under a name of its own: the engine clears up after the old one for a while.
      univer.createUnit(UniverInstanceType.UNIVER_SHEET, { ...next, id: `${before}+` });
      api.disposeUnit(before);
      live.wake();
      turnToFront(live, next);
      fitInFront();
      port = createBrowserPort(univer, live);
      comeAlive();
    },
  };
}

function turnToFront(live: LiveWorkbook, data: Partial<IWorkbookData>): void {
  const subUnitId = frontOf(data);
  if (subUnitId !== undefined) live.run(SetWorksheetActiveOperation.id, { subUnitId });
}

/** Lets go what the engine had planned to validate in idle moments once its workbook is closed; left alone it throws for each. */
function forgetClosedWorkbooks(univer: Univer): void {
  const injector = univer.__getInjector();
  const [validator, workbooks] = [injector.get(SheetsDataValidationValidatorService), injector.get(IUniverInstanceService)];
  const validate = validator.validatorRanges.bind(validator);
  validator.validatorRanges = (unitId, ...rest) => (workbooks.getUnit(unitId) ? validate(unitId, ...rest) : Promise.resolve([]));
}
