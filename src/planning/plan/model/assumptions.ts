import { showCell } from "../../../sheet";
import { foldName, splitNames } from "../../text";
import type { PlanRow } from "../read";
import { columnsOf, tableKeys, tables, type ColumnKey } from "../schema";
import { gather } from "./gather";
import { once } from "./once";
import type { Places } from "./places";
import type { PlanCell, PlanRows } from "./plan-rows";

/** A value of the plan that nobody has said is so. */
export interface Assumed {
  /** The row of Assumptions that says so. */
  readonly by: PlanRow<"assumptions">;
  /** The cell in which it stands. */
  readonly cell: PlanCell;
  readonly header: string;
}

/** What people or data depend on: an installation is not built on a guess of it. */
const reliedOn: { readonly [Key in "feeds" | "networks"]: readonly ColumnKey<Key>[] } = { feeds: ["volts", "phases", "breakerA"], networks: ["prefix", "gateway"] };

/** The values of a plan that were assumed and that nobody has settled. */
export class Assumptions {
  constructor(private readonly rows: PlanRows, private readonly places: Places) {}

  /** Lists what is assumed: what the cell no longer says, or what is ticked as settled, is not. */
  readonly open = once((): readonly Assumed[] => this.read().flatMap(({ by, found }) => (found === null || !stillSays(found.shown, by.value) ? [] : [found.assumed])));

  /** Lists the rows of Assumptions that name a cell which the plan does not have. */
  readonly lost = once((): readonly PlanRow<"assumptions">[] => this.read().flatMap(({ by, found }) => (found === null ? [by] : [])));

  /** What the installations that are not closed rely on. */
  readonly reliedOn = once((): ReadonlySet<Assumed> => new Set(gather(this.rows.rows("jobs"), (job) => (job.state === "closed" ? [] : this.reliedOnBy(job)))));

  /** Lists what is assumed of that on which people or data depend, at the site of a job that empties drives. */
  reliedOnBy(job: PlanRow<"jobs">): Assumed[] {
    if (!this.places.emptiesDrives(job.procedure)) return [];
    return this.open().filter(({ cell: { table, row, column } }) => {
      if (table !== "feeds" && table !== "networks") return false;
      const site = this.rows.rows(table).find((one) => one.row === row)?.site ?? "";
      const isHere = site === "" || splitNames(site).some((one) => foldName(one) === foldName(job.site));
      return isHere && (reliedOn[table] as readonly string[]).includes(column);
    });
  }

  private readonly read = once(() => this.rows.rows("assumptions").filter(({ settled }) => !settled).map((by) => ({ by, found: this.find(by) })));

  private find(by: PlanRow<"assumptions">): { readonly assumed: Assumed; readonly shown: string } | null {
    const key = tableKeys.find((one) => foldName(tables[one].name) === foldName(by.table));
    const column = key === undefined ? undefined : columnsOf(key).find(([, { header }]) => foldName(header) === foldName(by.column));
    const place = key === undefined || column === undefined ? undefined : this.rows.table(key)?.columns[column[0]];
    const row = key === undefined ? null : this.rows.find(key, by.named);
    if (key === undefined || column === undefined || place === undefined || row === null) return null;
    const shown = showCell(this.rows.sheet(this.rows.table(key)!.sheet)?.values[row.row]?.[place]);
    return { assumed: { by, cell: { table: key, row: row.row, column: column[0] }, header: column[1].header }, shown };
  }
}

function stillSays(shown: string, assumed: string): boolean {
  return foldName(shown) === foldName(assumed);
}
