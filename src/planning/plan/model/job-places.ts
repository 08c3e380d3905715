import { foldName } from "../../text";
import { invalid, quote } from "../../text";
import type { PlanRow } from "../read";
import type { PlanLookup } from "./plan-lookup";

type ArrayRow = PlanRow<"arrays">;

/** Where a job is done and what it is about. */
export interface JobPlaces {
  readonly site: PlanRow<"sites"> | null;
  /** In table order, but the arrays of one cluster among themselves in cluster order: the one that creates it comes first. */
  readonly arrays: readonly ArrayRow[];
}

/** Finds the site and the arrays of a job; refuses an array that the plan does not have. */
export function placesOf(lookup: PlanLookup, job: PlanRow<"jobs">): JobPlaces {
  const site = lookup.find("sites", "site", job.site);
  if (site === null) throw invalid("Site", job.site, `Job ${quote(job.job)} is at ${quote(job.site)}, which the table Sites does not have. Write one of its sites.`);
  const names = job.arrays.split(",").map((name) => name.trim()).filter((name) => name !== "");
  const arrays =
    names.length === 0
      ? lookup.rowsWhere("arrays", "site", job.site)
      : names.map((name) => {
          const found = lookup.find("arrays", "array", name);
          if (found === null) throw invalid("Arrays", name, `Job ${quote(job.job)} names array ${quote(name)}, which the table Arrays does not have. Write one of its arrays.`);
          return found;
        });
  return { site, arrays: inClusterOrder([...new Set(arrays)].sort((a, b) => a.row - b.row)) };
}

function inClusterOrder(arrays: readonly ArrayRow[]): ArrayRow[] {
  const waiting = new Map<string, ArrayRow[]>();
  for (const array of arrays) {
    const cluster = foldName(array.cluster);
    waiting.set(cluster, [...(waiting.get(cluster) ?? []), array]);
  }
  for (const [cluster, members] of waiting) if (cluster !== "") members.sort((a, b) => orderOf(a) - orderOf(b));
  return arrays.map((array) => waiting.get(foldName(array.cluster))!.shift()!);
}

function orderOf({ clusterOrder }: ArrayRow): number {
  return clusterOrder ?? Infinity;
}

/** Finds the array on whose job the steps of a cluster stand: the one of the lowest cluster order in the whole plan. */
export function homeOfCluster(lookup: PlanLookup, cluster: string): ArrayRow | null {
  return lowest(lookup.rowsWhere("arrays", "cluster", cluster));
}

/** Finds the array on whose job the steps of a pool stand: that of its cluster, or the pool's first where it has no cluster. */
export function homeOfPool(lookup: PlanLookup, pool: PlanRow<"pools">): ArrayRow | null {
  const cluster = pool.cluster === "" ? null : homeOfCluster(lookup, pool.cluster);
  return cluster ?? lowest(lookup.rowsWhere("arrays", "pool", pool.pool));
}

function lowest(arrays: readonly ArrayRow[]): ArrayRow | null {
  return arrays.reduce<ArrayRow | null>((best, array) => (best === null || orderOf(array) < orderOf(best) ? array : best), null);
}

/** Tells what a job does with an array and its cluster: create for the first of a new one, else join; blank without a cluster. */
export function clusterAct(lookup: PlanLookup, array: ArrayRow): "create" | "join" | "" {
  const cluster = lookup.find("clusters", "cluster", array.cluster);
  if (cluster === null) return "";
  return cluster.state !== "existing" && array.clusterOrder === 1 ? "create" : "join";
}
