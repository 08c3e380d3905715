import type { Changes } from "../plan/changes";
import { addedRows, refuseTakenNames } from "../plan/guided";
import { PlanModel } from "../plan/model";
import type { TableKey, TableRows } from "../plan/schema";
import { foldName, invalid, quote } from "../text";
import { formatSize, terabyte } from "../quantity";
import type { WorkbookSnapshot } from "../../sheet";
import { capacityOfDesign } from "./design-capacity";
import { readOptions, type Design } from "./read-options";

/** Tables into which a design writes. */
export const tablesOfDesign: readonly TableKey[] = ["sites", "pools", "models", "arrays"];

/** Most arrays of a design that become rows: more come by a list. */
const mostArrays = 200;

/**
 * Plans the rows of one design of the sheet of options: its arrays with their drives, a pool of their own at the fill limit of the needs, the model and the site
 * where the plan has none of that name.
 *
 * Racks, feeds and ports are left to whoever plans the site. Refuses what `designRows` does, and a workbook that lacks one of the tables.
 */
export function planDesign(workbook: WorkbookSnapshot, name: string, site: string): Changes {
  return addedRows(new PlanModel(workbook), designRows(workbook, name, site));
}

/** Names the pool of a design at a site, by which it is found in the plan again. */
export function poolOfDesign(site: string, { design }: Design): string {
  return `${site} ${design}`;
}

/** Works out the rows of one design, table by table; refuses a design that is not there or cannot be laid out, and names that the plan has. */
export function designRows(workbook: WorkbookSnapshot, name: string, place: string): TableRows {
  const { needs, designs } = readOptions(workbook);
  const design = designs.find((one) => foldName(one.design) === foldName(name));
  if (design === undefined) throw invalid("Design", name, `${quote(name)} is no design of the sheet of options. Choose ${designs.map((one) => one.design).join(" or ")}.`);
  const site = place.trim();
  if (site === "") throw invalid("Site", place, "Site is empty. Write the site to which the arrays go: one of the plan, or a new one.");
  const { arrays: count } = capacityOfDesign(needs, design);
  if (count > mostArrays) throw invalid("Arrays", count, `${design.design} has ${count} arrays, more than ${mostArrays}. Take larger ones, or bring the rows in as a list.`);
  const model = new PlanModel(workbook);
  const isNew = (key: "sites" | "models", named: string): boolean => named !== "" && model.find(key, named) === null;
  // What the plan's own row of the model says otherwise stands on the arrays, which win.
  const known = model.find("models", design.model);
  const own = known === null ? {} : { units: design.units === known.units ? null : design.units, watts: design.watts === known.watts ? null : design.watts };
  const pool = poolOfDesign(site, design);
  // Arrays are named in lists, as in For of Quote, where commas stand between names.
  const arrayName = pool.replaceAll(",", "");
  const rows: TableRows = {
    sites: isNew("sites", site) ? [{ site }] : [],
    pools: [{ pool, fillLimit: needs.fillLimit, acrossArrays: design.across?.name ?? "none" }],
    models: isNew("models", design.model) ? [{ model: design.model, bays: design.drives, units: design.units, watts: design.watts }] : [],
    arrays: Array.from({ length: count }, (_, at) => ({
      array: `${arrayName} ${at + 1}`, site, model: design.model || null, drives: design.drives, driveSize: formatSize(design.driveSize, terabyte, null), scheme: design.scheme.name,
      spares: design.spares ?? 0, pool, ...own,
    })),
  };
  refuseTakenNames(model, rows);
  return rows;
}
