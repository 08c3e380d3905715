import type { PlanModel } from "../../../plan/model";
import { splitFeedPhase } from "../../../resilience";
import type { TableKey } from "../../../plan/schema";
import { foldName, quote, splitNames } from "../../../text";
import { remarkOn, type Remark, type Rule } from "../../finding";

export const otherSite: Rule = {
  name: "other-site",
  family: "references",
  weight: "stop",
  meaning: "The rack, feeds, switches and networks that a row names are at the site of that row, and a host is linked to switches of its own site.",
  check: (model) => {
    const remarks: Remark[] = [];
    const compare = (table: TableKey, { row }: { readonly row: number }, site: string, column: string, target: Sited, name: string): void => {
      const stranger = site === "" ? null : siteElsewhere(model, site, target, name);
      if (stranger === null) return;
      remarks.push(remarkOn(model, { table, row, column }, `${quote(name)} is at ${quote(stranger)}, this row at ${quote(site)}. Name one of the same site.`));
    };
    for (const key of ["arrays", "switches"] as const) {
      for (const row of model.rows(key)) {
        compare(key, row, row.site, "rack", "racks", row.rack);
        compare(key, row, row.site, "feedA", "feeds", splitFeedPhase(row.feedA).feed);
        compare(key, row, row.site, "feedB", "feeds", splitFeedPhase(row.feedB).feed);
      }
    }
    for (const row of model.rows("shelves")) {
      const site = model.find("arrays", row.array)?.site ?? "";
      compare("shelves", row, site, "rack", "racks", row.rack);
      compare("shelves", row, site, "feedA", "feeds", splitFeedPhase(row.feedA).feed);
      compare("shelves", row, site, "feedB", "feeds", splitFeedPhase(row.feedB).feed);
    }
    for (const row of model.rows("switches")) for (const name of splitNames(row.networks)) compare("switches", row, row.site, "networks", "networks", name);
    for (const { row, array, network, to } of model.ports.all()) {
      if (array === null) continue;
      if (network !== null && network.row.site !== array.site) compare("ports", row, array.site, "network", "networks", row.network);
      if (to !== null && to.site !== array.site) compare("ports", row, array.site, "switch", "switches", row.switch);
    }
    for (const { row, host, network, to } of model.hostPorts.all()) {
      if (host === null) continue;
      if (network !== null) compare("hostPorts", row, host.site, "network", "networks", row.network);
      if (to !== null) compare("hostPorts", row, host.site, "switch", "switches", row.switch);
    }
    for (const row of model.rows("links")) {
      for (const [host, end] of [["from", "to"], ["to", "from"]] as const) compare("links", row, model.find("hosts", row[host])?.site ?? "", end, "switches", row[end]);
    }
    for (const row of model.rows("jobs")) for (const name of splitNames(row.arrays)) compare("jobs", row, row.site, "arrays", "arrays", name);
    return remarks;
  },
};

type Sited = "racks" | "feeds" | "networks" | "switches" | "arrays";

/** Tells at which other site something is; null where it is at this one, at every one, or nowhere known. */
function siteElsewhere(model: PlanModel, site: string, target: Sited, name: string): string | null {
  const found = model.find(target, name);
  if (found === null || found.site === "" || found.site === site || foldName(found.site) === foldName(site)) return null;
  return found.site;
}
