import type { CellValue, SheetPlan, SheetSnapshot, WorkbookSnapshot } from "../../src/sheet";
import type { Edit, Selection, WorkbookPort } from "../../src/workbook/port";
import { readChosen, type SheetChoice } from "../../src/workbook/sheet-choice";

/** Reads planned sheets back as a workbook in which formulas have no results yet. */
export function snapshotOf(plans: readonly SheetPlan[]): WorkbookSnapshot {
  return {
    sheets: plans.map((plan): SheetSnapshot => ({
      name: plan.name,
      visible: true,
      protected: false,
      values: plan.rows.map((row) => row.map((cell) => (cell.formula === undefined ? (cell.value ?? null) : ""))),
      formulas: plan.rows.map((row) => row.map((cell) => cell.formula ?? null)),
      tables: plan.tables ?? [],
      attachments: 0,
    })),
  };
}

/** Makes a workbook of one sheet a table, out of cells as they stand. */
export function workbookOf(sheets: Readonly<Record<string, readonly (readonly CellValue[])[]>>): WorkbookSnapshot {
  return {
    sheets: Object.entries(sheets).map(([name, values]) => ({ name, visible: true, protected: false, values, formulas: values.map((row) => row.map(() => null)), tables: [], attachments: 0 })),
  };
}

/** Changes one cell of a workbook. */
export function withCell(workbook: WorkbookSnapshot, sheet: string, row: number, column: number, value: CellValue): WorkbookSnapshot {
  return {
    sheets: workbook.sheets.map((one) => {
      if (one.name !== sheet) return one;
      const values = one.values.map((line) => [...line]);
      while (values.length <= row) values.push([]);
      const line = values[row]!;
      while (line.length <= column) line.push(null);
      line[column] = value;
      return { ...one, values };
    }),
  };
}

/** A port over a workbook in memory. `before` is called ahead of each `apply`; `refuse` makes the next `apply` fail. */
export class PlainPort implements WorkbookPort {
  readonly applied: Edit[][] = [];
  refuse: Error | null = null;
  selected: Selection | null = null;
  private readonly listeners = new Set<() => void>();

  constructor(public workbook: WorkbookSnapshot = { sheets: [] }) {}

  read(choice?: SheetChoice): Promise<WorkbookSnapshot> {
    const read = (sheet: SheetSnapshot) => (rows: number) => ({ ...sheet, values: sheet.values.slice(0, rows), formulas: sheet.formulas.slice(0, rows) });
    return Promise.resolve({ sheets: this.workbook.sheets.map((sheet) => readChosen(choice, { ...sheet, hasTables: sheet.tables.length > 0 }, read(sheet))) });
  }

  apply(edits: readonly Edit[]): Promise<void> {
    if (this.refuse !== null) return Promise.reject(this.refuse);
    this.applied.push([...edits]);
    for (const edit of edits) this.carryOut(edit);
    for (const listener of this.listeners) listener();
    return Promise.resolve();
  }

  spillAreas(cells: readonly unknown[]): Promise<null[]> {
    return Promise.resolve(cells.map(() => null));
  }

  selection(): Promise<Selection> {
    return this.selected === null ? Promise.reject(new Error("nothing is selected")) : Promise.resolve(this.selected);
  }

  watch(listener: () => void): Promise<() => void> {
    this.listeners.add(listener);
    return Promise.resolve(() => this.listeners.delete(listener));
  }

  private carryOut(edit: Edit): void {
    if (edit.kind === "add-sheet") {
      this.workbook = { sheets: [...this.workbook.sheets, ...snapshotOf([edit.plan]).sheets] };
    } else if (edit.kind === "write") {
      edit.cells.forEach((line, row) => {
        line.forEach((cell, column) => {
          if (cell !== null) this.workbook = withCell(this.workbook, edit.sheet, edit.row + row, edit.column + column, cell.value ?? null);
        });
      });
    } else if (edit.kind === "resize-table") {
      const { sheet, table, area } = edit;
      this.workbook = {
        sheets: this.workbook.sheets.map((one) => (one.name === sheet ? { ...one, tables: one.tables.map((known) => (known.name === table ? { name: table, area } : known)) } : one)),
      };
    } else if (edit.kind === "select") {
      this.selected = { sheet: edit.sheet, area: edit.area };
    } else {
      const changed = (sheet: SheetSnapshot): SheetSnapshot[] =>
        edit.kind === "delete-sheet" ? [] : [edit.kind === "rename-sheet" ? { ...sheet, name: edit.name } : { ...sheet, visible: edit.kind === "show-sheet" }];
      this.workbook = { sheets: this.workbook.sheets.flatMap((sheet) => (sheet.name === edit.sheet ? changed(sheet) : [sheet])) };
    }
  }
}
