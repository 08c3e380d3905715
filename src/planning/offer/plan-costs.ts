import { noChanges, type Changes } from "../plan/changes";
import type { PlanModel } from "../plan/model";
import type { PlanRow } from "../plan/read";

/**
 * Plans to write the costs that the price list says into the rows of Quote, each with its list and the day of that.
 *
 * Rows in another currency are left, and so is a cost that somebody works out by a formula.
 */
export function planCosts(model: PlanModel): Changes {
  const { quote } = model;
  const writes = quote.listPrices().flatMap((price) => (price.isTaken || !price.hasSameCurrency || isCostFormula(model, price.row) ? [] : quote.costWrites(price)));
  return writes.length === 0 ? noChanges : { writes, growths: [] };
}

function isCostFormula(model: PlanModel, { row }: PlanRow<"quote">): boolean {
  const table = model.table("quote");
  const column = table?.columns.cost;
  return table !== null && column !== undefined && (model.sheet(table.sheet)?.formulas[row]?.[column] ?? null) !== null;
}
