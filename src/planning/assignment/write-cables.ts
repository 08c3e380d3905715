import type { WorkbookSnapshot } from "../../sheet";
import { appendRows, joinChanges, noChanges, type Changes } from "../plan/changes";
import { formatId, lastIdNumber, PlanModel } from "../plan/model";
import { initialSettings, lastIdSettings, requireTables } from "../plan/read";
import type { TableRow } from "../plan/schema";

/**
 * Plans a row of Cables, with the next id, for every cable of the plan that has none, and writes the ends that the plan has today into rows that have another.
 *
 * Ids, kinds, colours and lengths that stand there stay, and so do rows of cables that the plan no longer has. The settings remember the last id.
 * Refuses a workbook without the table Cables.
 */
export function writeCables(workbook: WorkbookSnapshot): Changes {
  const model = new PlanModel(workbook);
  requireTables(model.plan, ["cables"]);
  const ends = model.cables.moved().flatMap(({ row, cable }) =>
    (["from", "to"] as const).flatMap((column) => (row[column] === cable[column] ? [] : (model.write({ table: "cables", row: row.row, column }, cable[column]) ?? []))),
  );
  const last = lastIdNumber(model, "cables");
  const added = model.cables.unlisted().map(({ kind, from, to }, at): TableRow<"cables"> => ({ id: formatId("cables", last + at + 1), from, to, kind: kind === "power" ? kind : null }));
  const rows = appendRows(workbook, model.table("cables")!, "cables", added);
  const memory = added.length === 0 ? noChanges : remember(model, formatId("cables", last + added.length));
  return joinChanges({ writes: ends, growths: [] }, rows, memory);
}

/** Writes the last id into the settings, in a row of its own where a plan of an earlier layout has none for it. */
function remember(model: PlanModel, id: string): Changes {
  const row = model.find("settings", lastIdSettings.cables);
  const table = model.table("settings");
  const fresh = initialSettings().find(({ setting }) => setting === lastIdSettings.cables)!;
  if (row === null) return table === null ? noChanges : appendRows(model.workbook, table, "settings", [{ ...fresh, value: id }]);
  const write = model.write({ table: "settings", row: row.row, column: "value" }, id);
  return { writes: write === null ? [] : [write], growths: [] };
}
