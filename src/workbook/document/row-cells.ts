import type { DocumentCell } from "./workbook-document";

/** A row of cells mostly side by side, in a third of the memory of a map: a workbook of a hundred tabs has 34,000 of them. Is not changed. */
export class RowCells implements ReadonlyMap<number, DocumentCell> {
  private constructor(readonly size: number, private readonly first: number, private readonly cells: readonly (DocumentCell | null)[]) {}

  /** Keeps the cells of a row; those far from each other stay a map. */
  static of(line: ReadonlyMap<number, DocumentCell>): ReadonlyMap<number, DocumentCell> {
    const columns = [...line.keys()];
    const [first, last] = [Math.min(...columns), Math.max(...columns)];
    if (last - first + 1 > 2 * line.size) return new Map(line);
    const cells = Array<DocumentCell | null>(last - first + 1).fill(null);
    for (const [column, cell] of line) cells[column - first] = cell;
    return new RowCells(line.size, first, cells);
  }

  get(column: number): DocumentCell | undefined {
    return this.cells[column - this.first] ?? undefined;
  }

  has(column: number): boolean {
    return this.get(column) !== undefined;
  }

  forEach(tell: (cell: DocumentCell, column: number, row: ReadonlyMap<number, DocumentCell>) => void): void {
    this.cells.forEach((cell, index) => {
      if (cell !== null) tell(cell, this.first + index, this);
    });
  }

  // Lists of their own, as a generator makes an object a cell.
  entries(): MapIterator<[number, DocumentCell]> {
    const entries: [number, DocumentCell][] = [];
    this.forEach((cell, column) => entries.push([column, cell]));
    return entries.values();
  }

  keys(): MapIterator<number> {
    const columns: number[] = [];
    this.forEach((_, column) => columns.push(column));
    return columns.values();
  }

  values(): MapIterator<DocumentCell> {
    return this.cells.filter((cell) => cell !== null).values();
  }

  [Symbol.iterator](): MapIterator<[number, DocumentCell]> {
    return this.entries();
  }
}
