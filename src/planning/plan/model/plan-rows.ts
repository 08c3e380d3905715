import type { Scalar, SheetSnapshot, WorkbookSnapshot } from "../../../sheet";
import { foldName } from "../../text";
import { writeCell, type CellWrite } from "../changes";
import { readPlan, readSettings, rowsOf, type Plan, type PlanRow, type ReadTable, type SettingFault, type Settings } from "../read";
import { nameColumn, tableKeys, type TableKey, type TextColumn } from "../schema";
import { joinDriveSets } from "./drive-sets";
import { inheritModels } from "./inherit-models";
import { takeReadings } from "./readings";
import { RowLookup } from "./row-lookup";

/** A cell of the plan: a column of one row of a planning table. */
export interface PlanCell {
  readonly table: TableKey;
  /** Row of the sheet, counted from 0. */
  readonly row: number;
  /** Key of the column in code. */
  readonly column: string;
}

type Lookups = { readonly [Key in TableKey]: RowLookup<PlanRow<Key>> };

/** The rows of a plan as they were read, and the ways to find them; each look-up is prepared when it is first needed. */
export class PlanRows {
  readonly plan: Plan;
  readonly settings: Settings;
  readonly settingFaults: readonly SettingFault[];
  private readonly lookups: Lookups;
  private readonly sheets: ReadonlyMap<string, SheetSnapshot>;

  constructor(readonly workbook: WorkbookSnapshot) {
    this.plan = readPlan(workbook);
    const { settings, faults } = readSettings(this.plan);
    this.settings = settings;
    this.settingFaults = faults;
    const arrays = takeReadings(this.plan, joinDriveSets(this.plan, inheritModels(this.plan)));
    // One look-up a table, over the rows of that table: what is made here table by table is what the type says.
    const rowsAsTheyAre = (key: TableKey): readonly { readonly row: number }[] => (key === "arrays" ? arrays : rowsOf(this.plan, key));
    this.lookups = Object.fromEntries(tableKeys.map((key) => [key, new RowLookup(rowsAsTheyAre(key), nameColumn(key))])) as unknown as Lookups;
    this.sheets = new Map(workbook.sheets.map((sheet) => [sheet.name, sheet]));
  }

  /** Gives a planning table as it was read; null where the workbook has none. */
  table(key: TableKey): ReadTable | null {
    return this.plan[key];
  }

  /** Lists the rows of a table; none where the table is not there. Arrays are as they are with their models, drive sets and readings. */
  rows<Key extends TableKey>(key: Key): readonly PlanRow<Key>[] {
    return this.lookups[key].rows;
  }

  sheet(name: string): SheetSnapshot | null {
    return this.sheets.get(name) ?? null;
  }

  /** Proposes to write one cell of the plan; null where its table lacks the column. */
  write({ table: key, row, column }: PlanCell, value: Scalar): CellWrite | null {
    const table = this.table(key);
    return table === null ? null : writeCell(this.workbook, table, row, column, value);
  }

  /** Finds the row of a table by its name, without case; the first of two; null for a blank. */
  find<Key extends TableKey>(key: Key, name: string): PlanRow<Key> | null {
    return this.lookups[key].find(name);
  }

  /** Groups the rows of a table by the text of one column, without case; rows with a blank there are left out. */
  groupBy<Key extends TableKey>(key: Key, column: TextColumn<Key>): ReadonlyMap<string, readonly PlanRow<Key>[]> {
    return this.lookups[key].groupBy(column);
  }

  /** Groups the rows of a table by their names, without case: two in one group have the same. */
  namesakes(key: TableKey): ReadonlyMap<string, readonly { readonly row: number }[]> {
    return this.lookups[key].groupBy(nameColumn(key));
  }

  /** Lists the rows of a table whose column names `name`, without case; none for a blank. */
  rowsWith<Key extends TableKey>(key: Key, column: TextColumn<Key>, name: string): readonly PlanRow<Key>[] {
    return this.groupBy(key, column).get(foldName(name)) ?? [];
  }
}
