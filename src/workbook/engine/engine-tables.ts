import { ICommandService, IUniverInstanceService, type Univer, UniverInstanceType, type Workbook, type Worksheet } from "@univerjs/core";
import { Lexer, RemoveSuperTableMutation, SetSuperTableMutation } from "@univerjs/engine-formula";
import { foldSheetName, showCell, withCellsOfTables, type OwnRow, type TableOnSheet, type TablePlan } from "../../sheet";
import { cellValue } from "./sheet-snapshot";
import { extrasOf, toRange } from "./stored-sheet";

/** A table of a workbook that is open. */
interface OpenTable {
  readonly name: string;
  readonly sheetId: string;
  readonly table: TableOnSheet;
}

/**
 * Lets formulas speak of the tables of a workbook, by `Arrays[Drives]` and the like; answers what tells the engine of tables that changed, and whether any did.
 *
 * The engine has tables of its own, which count rows of totals as data, tell capitals apart and take the column before the first where a name is unknown.
 * So a formula is handed to its reader with cells in the place of tables, but for the cell of its own row. From its own tables the engine also knows which
 * formulas to read again.
 */
export function knowTables(univer: Univer): () => boolean {
  const injector = univer.__getInjector();
  const workbooks = injector.get(IUniverInstanceService);
  const commands = injector.get(ICommandService);
  const lexer = injector.get(Lexer);
  let told: { readonly unitId: string; readonly tables: ReadonlyMap<string, OpenTable> } = { unitId: "", tables: new Map() };
  let known: ReadonlyMap<string, OpenTable> = new Map();

  const read = lexer.treeBuilder.bind(lexer);
  // Looked up in its column, the cell would wait for the whole column: a balance that goes on from row to row would be a circle.
  const ownRow: OwnRow = ({ name, headers }, column) => (isPlainHeader(headers[column]!) ? `${name}[[#This Row],[${headers[column]!.trim()}]]` : null);
  lexer.treeBuilder = (formula, transformSuffix) => read(withCellsOfTables(formula, (name) => known.get(foldSheetName(name))?.table, ownRow), transformSuffix);

  return () => {
    const workbook = workbooks.getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);
    if (!workbook) return false;
    const unitId = workbook.getUnitId();
    known = tablesOf(workbook);
    const before = told.unitId === unitId ? told.tables : new Map<string, OpenTable>();
    const changed = [...known].filter(([key, one]) => JSON.stringify(before.get(key)) !== JSON.stringify(one)).map(([, one]) => one);
    const gone = [...before].filter(([key]) => !known.has(key)).map(([, one]) => one);
    told = { unitId, tables: known };
    for (const { name, sheetId, table } of [...changed, ...gone]) {
      const titleMap = new Map(table.headers.map((header, column) => [header.trim(), column]));
      commands.syncExecuteCommand(SetSuperTableMutation.id, { unitId, tableName: name, reference: { sheetId, range: toRange(table.area), titleMap } }, { onlyLocal: true });
    }
    // Which formulas speak of a table is told by setting it alone; left there, the engine would go on reading the cells where it was.
    for (const { name } of gone) commands.syncExecuteCommand(RemoveSuperTableMutation.id, { unitId, tableName: name }, { onlyLocal: true });
    return changed.length + gone.length > 0;
  };
}

/** Tells whether the engine reads a header between brackets as it is. */
function isPlainHeader(header: string): boolean {
  return /^[\p{L}\p{N} _]+$/u.test(header.trim());
}

function tablesOf(workbook: Workbook): Map<string, OpenTable> {
  return new Map(
    workbook.getSheets().flatMap((sheet) => (extrasOf(sheet.getConfig()).tables ?? []).map((table) => [foldSheetName(table.name), openTable(sheet, table)] as const)),
  );
}

function openTable(sheet: Worksheet, { name, area, totalRows = 0, isHeadless }: TablePlan): OpenTable {
  const headers = Array.from({ length: area.columns }, (_, column) => {
    const cell = isHeadless ? null : sheet.getCellRaw(area.row, area.column + column);
    return cell ? showCell(cellValue(cell, false)) : "";
  });
  return { name, sheetId: sheet.getSheetId(), table: { name, sheet: sheet.getName(), area, headerRows: isHeadless ? 0 : 1, totalRows, headers } };
}
