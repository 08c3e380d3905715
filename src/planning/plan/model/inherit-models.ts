import { cellOf, heirOf, rowsOf, type PlanRow, type PlanTables, type Shown } from "../read";
import { columnsOf, inheritedColumns, nameColumn } from "../schema";
import { RowLookup } from "./row-lookup";

/**
 * Lists the arrays of a plan as they are with their models: what an array leaves empty is what its model says, and what stands on the array wins.
 *
 * A cell of an array that cannot be read is not empty: it takes nothing. An array whose model has no row stays as its own row says.
 */
export function inheritModels(plan: PlanTables): readonly PlanRow<"arrays">[] {
  const models = new RowLookup(rowsOf(plan, "models"), nameColumn("models"));
  const arrays = rowsOf(plan, "arrays");
  const [anyModel] = models.rows;
  if (anyModel === undefined) return arrays;
  const unread = new Set(plan.arrays?.faults.map(({ row, header }) => `${row} ${header}`));
  return arrays.map((row) => {
    const model = models.find(row.model);
    const taken = columnsOf("arrays").filter(
      ([name, { header }]) => inheritedColumns.has(name) && isEmpty(cellOf(row, name)) && !unread.has(`${row.row} ${header}`),
    );
    const given = model === null ? {} : Object.fromEntries(taken.map(([name]) => [name, cellOf(model, name)]));
    const headers = new Set(taken.map(([, { header }]) => header));
    return heirOf(row, given, () => showHeir(row.shown, (model ?? anyModel).shown, model !== null, headers));
  });
}

function isEmpty(cell: unknown): boolean {
  return cell === null || cell === "";
}

/** Shows an array with what its model gives, the model's further columns and the user's own in Models included; those are blank where it has no model. */
function showHeir(own: Shown, ofModel: Shown, hasModel: boolean, given: ReadonlySet<string>): Shown {
  const shown = Object.assign(Object.create(null) as Record<string, string>, own);
  for (const [header, text] of Object.entries(ofModel)) if (given.has(header) || !(header in shown)) shown[header] = hasModel ? text : "";
  return shown;
}
