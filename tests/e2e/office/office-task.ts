import { cellAddress, type CellValue, type WorkbookSnapshot } from "../../../src/sheet";
import { cellAt, type DocumentCell, type DocumentSheet, type Look, type WorkbookDocument } from "../../../src/workbook/document/workbook-document";
import { placeOf, type Hands } from "./hands";

/** One thing that people do in a spreadsheet: how they do it in two ways, and what must hold afterwards. */
export interface OfficeTask {
  /** What somebody does, as a sentence. */
  readonly does: string;
  readonly keyboard: (hands: Hands) => Promise<void>;
  readonly mouse: (hands: Hands) => Promise<void>;
  /** Throws where something is not as it must be. */
  readonly holds: (after: Outcome) => void | Promise<void>;
  /** How many steps of undo take it back; none where nothing is changed, or where no spreadsheet takes it back. */
  readonly undo?: number;
}

/** A workbook after a task: as the page has it, and as it is in the file that was saved then. */
export class Outcome {
  constructor(
    readonly model: WorkbookSnapshot,
    readonly file: WorkbookDocument,
    readonly hands: Hands,
  ) {}

  /** What stands in the cells of a place, which page and file agree on. */
  values(text: string): CellValue[][] {
    const { sheet, area } = placeOf(text);
    const shown = this.model.sheets.find(({ name }) => name === sheet)?.values ?? [];
    const saved = this.sheet(sheet);
    return Array.from({ length: area.rows }, (_, down) =>
      Array.from({ length: area.columns }, (_line, across) => {
        const [row, column] = [area.row + down, area.column + across];
        const value = shown[row]?.[column] ?? null;
        const inFile = cellAt(saved.cells, row, column)?.value ?? null;
        if (JSON.stringify(value) !== JSON.stringify(inFile)) {
          throw new Error(`${sheet}!${cellAddress({ row, column })}: the page shows ${JSON.stringify(value)}, the file has ${JSON.stringify(inFile)}.`);
        }
        return value;
      }),
    );
  }

  /** A sheet of the file. */
  sheet(name: string): DocumentSheet {
    const found = this.file.sheets.find((sheet) => sheet.name === name);
    if (found === undefined) throw new Error(`The file has no sheet ${name}.`);
    return found;
  }

  /** A cell of the file. */
  cell(text: string): DocumentCell | undefined {
    const { sheet, area } = placeOf(text);
    return cellAt(this.sheet(sheet).cells, area.row, area.column);
  }

  /** How a cell looks in the file. */
  look(text: string): Look {
    return this.file.looks[this.cell(text)?.look ?? 0]!;
  }
}
