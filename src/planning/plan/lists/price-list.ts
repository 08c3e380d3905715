import { isBlank, isIsoDate, showCell, type CellValue } from "../../../sheet";
import { andMore, foldName, invalid, quote } from "../../text";
import { noChanges, type CellWrite } from "../changes";
import type { PlanModel } from "../model";
import { nameColumn } from "../schema";
import type { List, ListRow } from "./list";
import type { Match } from "./match-columns";
import { planImport, type ImportPlan } from "./plan-list";

/** A firm's own price list, and what stands beside each price that comes from it. */
export interface PriceList {
  readonly list: List;
  /** By the columns of the list. */
  readonly matches: readonly Match[];
  /** What the list is called, such as Spring 2026. */
  readonly name: string;
  /** Day of the list, as an ISO date. */
  readonly day: string;
}

/** A price that the list has otherwise than the table, in the same currency. */
export interface PriceChange {
  readonly part: string;
  readonly before: number;
  readonly after: number;
}

/** What a price list would change. */
export interface PriceListPlan extends ImportPlan {
  /** Prices that go up or down, those first that change most for what they were. */
  readonly changed: readonly PriceChange[];
  /** Why nothing of the list is taken; null where it can be. */
  readonly stop: string | null;
}

/**
 * Plans to bring a price list in: the price of every part that stands in the table already is changed, others are added, none is deleted, and list
 * and day are written beside each.
 *
 * Rows without a cost are headings and are left out. A list of which any other row cannot be taken, as a part stands twice or a cost cannot be
 * read, is not taken at all: half a price list is worse than an old one.
 */
export function planPriceList(model: PlanModel, { list, matches, name, day }: PriceList): PriceListPlan {
  const costAt = matches.findIndex(({ column }) => column === "cost");
  if (costAt < 0) throw invalid("Cost", null, "No column of the list goes to Cost. Choose the one in which the prices stand.");
  if (name.trim() === "") throw invalid("name", name, "The list has no name. Write one, such as Spring 2026.");
  if (!isIsoDate(day)) throw invalid("day", day, `The day ${quote(day)} of the list is no date. Write it as 2026-05-31.`);
  const headings = list.rows.filter(({ cells }) => isBlank(cells[costAt]));
  const priced = list.rows.filter(({ cells }) => !isBlank(cells[costAt]));
  const beside = [{ column: "list", value: name.trim() }, { column: "day", value: day }].filter(({ column }) => !matches.some((match) => match.column === column));
  const whole = {
    headers: [...list.headers, ...beside.map(({ column }) => column)],
    rows: priced.map(({ number, cells }): ListRow => ({ number, cells: [...filledTo(cells, list.headers.length), ...beside.map(({ value }) => value)] })),
    leftOut: list.leftOut,
  };
  const given = [...matches, ...beside.map(({ column }): Match => ({ column, readAs: "" }))];
  const plan = planImport(model, { table: "prices", list: whole, matches: given, keyColumns: [nameColumn("prices")] });
  const refused = plan.refused.slice(list.leftOut.length);
  const told = [...plan.refused, ...(headings.length === 0 ? [] : [`${headings.length} rows without a cost are left out: row ${headings[0]!.number} is the first.`])];
  if (refused.length > 0) {
    const stop = "Nothing of the list is taken while any of its rows cannot be: mend them in the list, or leave them out of it.";
    return { changes: noChanges, added: 0, updated: 0, refused: told, changed: [], stop };
  }
  const moved = currencyWrites(model, plan);
  return { ...plan, refused: [...told, ...newerThan(model, day), ...toldOf(model, moved)], changed: changesOf(model, plan, new Set(moved.map(({ row }) => row))), stop: null };
}

function filledTo(cells: readonly CellValue[], length: number): CellValue[] {
  return Array.from({ length }, (_, at) => cells[at] ?? null);
}

/** Finds the writes by which a price that stands would be in another currency: the two figures cannot be compared. */
function currencyWrites(model: PlanModel, { changes }: ImportPlan): CellWrite[] {
  const table = model.table("prices");
  return changes.writes.filter(
    ({ sheet, column, before, value }) => sheet === table?.sheet && column === table.columns.currency && !isBlank(before) && foldName(showCell(before)) !== foldName(showCell(value)),
  );
}

function toldOf(model: PlanModel, [first, ...others]: readonly CellWrite[]): string[] {
  if (first === undefined) return [];
  const part = model.rows("prices").find(({ row }) => row === first.row)!.part;
  return [`In another currency than before: ${andMore(`${part}, from ${showCell(first.before)} to ${showCell(first.value)}`, others.length)}. See that each is meant.`];
}

function changesOf(model: PlanModel, { changes }: ImportPlan, moved: ReadonlySet<number>): PriceChange[] {
  const table = model.table("prices");
  const rows = new Map(model.rows("prices").flatMap((row) => (moved.has(row.row) ? [] : [[row.row, row]])));
  const changed = changes.writes.flatMap(({ sheet, row, column, value }): PriceChange[] => {
    const found = sheet === table?.sheet && column === table.columns["cost"] ? rows.get(row) : undefined;
    const after = Number(showCell(value));
    return found === undefined || found.cost === null ? [] : [{ part: found.part, before: found.cost, after }];
  });
  const share = ({ before, after }: PriceChange): number => (before === 0 ? Infinity : Math.abs(after / before - 1));
  return changed.sort((a, b) => share(b) - share(a) || (foldName(a.part) < foldName(b.part) ? -1 : 1));
}

/** Tells that prices in the table are of a later day than the list: somebody may have chosen an old file. */
function newerThan(model: PlanModel, day: string): string[] {
  const days = model.rows("prices").flatMap((row) => (row.day !== null && row.day > day ? [row.day] : [])).sort();
  return days.length === 0 ? [] : [`${days.length} prices in the table are of a later day than this list, up to ${days.at(-1)!}. See that it is not an old one.`];
}
