import { CELL_INVERTED_INDEX_CACHE } from "@univerjs/engine-formula";

/**
 * Keeps the engine from indexing columns of formulas in which nothing is looked up.
 *
 * It keeps the cells of a column by their values for lookups, and with each result goes through all values of the column: thirty thousand formulas one
 * below the other took half a minute. A lookup builds the index of its column itself; only from then on results are kept in it. Applies to every engine
 * of the page or process; calling it again does nothing.
 */
export function indexOnlyLookups(): void {
  const index = CELL_INVERTED_INDEX_CACHE as typeof CELL_INVERTED_INDEX_CACHE & { indexesOnlyLookups?: true };
  if (index.indexesOnlyLookups) return;
  const keep = index.set.bind(index);
  index.indexesOnlyLookups = true;
  index.set = (unit, sheet, column, value, row, isResult) => {
    if (isResult === true && index.getCellValuePositions(unit, sheet, column) === undefined) return;
    keep(unit, sheet, column, value, row, isResult);
  };
}
