import { noChanges, type Changes } from "../plan/changes";
import type { PlanModel } from "../plan/model";

/** Plans to write the costs that the price list says into the rows of Quote, each with its list and the day of that; rows in another currency are left. */
export function planCosts({ quote }: PlanModel): Changes {
  const writes = quote.listPrices().flatMap((price) => (price.isTaken || !price.hasSameCurrency ? [] : quote.costWrites(price)));
  return writes.length === 0 ? noChanges : { writes, growths: [] };
}
