import { quote } from "../problem";
import type { TableKey } from "../workbook-model";
import { remarkAt, type Remark, type Rule } from "./finding";
import { foldName, splitFeed, splitNames, type PlanIndex } from "./plan-index";

export const otherSite: Rule = {
  name: "other-site",
  family: "references",
  weight: "stop",
  meaning: "The rack, feeds, switches and networks that a row names are at the site of that row.",
  check: (index) => [
    ...index.rows("arrays").flatMap((row) => [
      ...strangers(index, "arrays", row, row.site, "rack", "racks", [row.rack]),
      ...strangers(index, "arrays", row, row.site, "feedA", "feeds", [splitFeed(row.feedA).feed]),
      ...strangers(index, "arrays", row, row.site, "feedB", "feeds", [splitFeed(row.feedB).feed]),
    ]),
    ...index.rows("switches").flatMap((row) => [
      ...strangers(index, "switches", row, row.site, "rack", "racks", [row.rack]),
      ...strangers(index, "switches", row, row.site, "feedA", "feeds", [splitFeed(row.feedA).feed]),
      ...strangers(index, "switches", row, row.site, "feedB", "feeds", [splitFeed(row.feedB).feed]),
      ...strangers(index, "switches", row, row.site, "networks", "networks", splitNames(row.networks)),
    ]),
    ...index.ports.flatMap(({ row, array }) =>
      array === null
        ? []
        : [
            ...strangers(index, "ports", row, array.site, "network", "networks", [row.network]),
            ...strangers(index, "ports", row, array.site, "switch", "switches", [row.switch]),
          ],
    ),
    ...index.rows("jobs").flatMap((row) => strangers(index, "jobs", row, row.site, "arrays", "arrays", splitNames(row.arrays))),
  ],
};

type Sited = "racks" | "feeds" | "networks" | "switches" | "arrays";

function strangers(index: PlanIndex, key: TableKey, row: { readonly row: number }, site: string, column: string, target: Sited, names: readonly string[]): Remark[] {
  if (site === "") return [];
  return names.flatMap((name): Remark[] => {
    const found = name === "" ? null : index.find(target, name);
    if (found === null || found.site === "" || foldName(found.site) === foldName(site)) return [];
    return [remarkAt(index, key, row, column as never, `${quote(name)} is at ${quote(found.site)}, this row at ${quote(site)}. Name one of the same site.`)];
  });
}
