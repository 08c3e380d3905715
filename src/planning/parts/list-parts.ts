import type { WorkbookSnapshot } from "../../sheet";
import { appendRows, joinChanges, noChanges, type Changes } from "../plan/changes";
import { PlanModel } from "../plan/model";
import { requireTables } from "../plan/read";
import type { TableRow } from "../plan/schema";
import { expectedOf } from "./expected-serial";
import { neededParts, partKey } from "./needed-parts";

/**
 * Plans a row of Parts for everything that plan and quote need and that has none, and brings quantities of cables and of what is quoted up to date.
 *
 * Serials, days and boxes that stand there stay, and so do rows of parts that the plan no longer needs. A serial that the plan knows goes along.
 * Refuses a workbook without the table Parts.
 */
export function listParts(workbook: WorkbookSnapshot): Changes {
  const model = new PlanModel(workbook);
  requireTables(model.plan, ["parts"]);
  const there = new Map(model.rows("parts").map((row) => [partKey(row), row]));
  const needed = neededParts(model);
  const added = needed.filter((part) => !there.has(partKey(part)));
  const changed = needed.flatMap((part) => {
    const row = there.get(partKey(part));
    if (row === undefined || row.quantity === part.quantity) return [];
    return model.write({ table: "parts", row: row.row, column: "quantity" }, part.quantity) ?? [];
  });
  const rows = added.map((part): TableRow<"parts"> => ({ ...part, for: blankless(part.for), shelf: blankless(part.shelf), serial: blankless(expectedOf(model, part)?.serial ?? "") }));
  return joinChanges({ writes: changed, growths: [] }, added.length === 0 ? noChanges : appendRows(workbook, model.table("parts")!, "parts", rows));
}

function blankless(text: string): string | null {
  return text === "" ? null : text;
}
