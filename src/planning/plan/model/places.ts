import type { Kilograms } from "../../quantity";
import { conditionHolds, foldName, invalid, parseCondition, quote, splitNames } from "../../text";
import type { PlanRow } from "../read";
import type { Capacity } from "./capacity";
import { groupBy } from "./group-by";
import { once, oncePer } from "./once";
import type { PlanRows } from "./plan-rows";
import { orNull } from "./refusal";

type ArrayRow = PlanRow<"arrays">;

/** Fields by which a procedure says what becomes of clusters, and that it brings arrays to their site. */
const [clusterAct, clusterLive, drivesTravel] = ["cluster act", "cluster live", "drives travel"];

/** Where a job is done and what it is about. */
export interface JobPlaces {
  readonly site: PlanRow<"sites">;
  /** In table order, but the arrays of one cluster among themselves in cluster order: the one that creates it comes first. */
  readonly arrays: readonly ArrayRow[];
}

/** The places of the jobs of a plan: where each is done, and on which job the steps of a cluster or a pool stand. */
export class Places {
  constructor(private readonly rows: PlanRows, private readonly capacity: Capacity) {}

  /** Finds the site and the arrays of a job; refuses a site or an array that the plan does not have. */
  of(job: PlanRow<"jobs">): JobPlaces {
    const site = this.rows.find("sites", job.site);
    if (site === null) {
      throw invalid("Site", job.site, `Job ${quote(job.job)} is at ${quote(job.site)}, which the table Sites does not have. Write one of its sites.`);
    }
    const names = splitNames(job.arrays);
    const arrays = names.length === 0 ? this.rows.rowsWith("arrays", "site", job.site) : names.map((name) => this.arrayNamed(job, name));
    return { site, arrays: inClusterOrder([...new Set(arrays)].sort((a, b) => a.row - b.row)) };
  }

  /** Finds the array on whose job the steps of a cluster stand: the one of the lowest cluster order in the whole plan. */
  homeOfCluster(cluster: string): ArrayRow | null {
    return lowest(this.rows.rowsWith("arrays", "cluster", cluster));
  }

  /** Finds the array on whose job the steps of a pool stand: that of its cluster, or the pool's first where it has no cluster. */
  homeOfPool(pool: PlanRow<"pools">): ArrayRow | null {
    return this.homeOfCluster(pool.cluster) ?? lowest(this.capacity.arraysIn(pool));
  }

  /** Tells what a job does with an array and its cluster: create for the first of a new one, else join; blank without one that is new or existing. */
  clusterActOf({ cluster, clusterOrder }: ArrayRow): "create" | "join" | "" {
    const found = this.rows.find("clusters", cluster);
    if (found === null || found.state === "") return "";
    return found.state === "new" && clusterOrder === 1 ? "create" : "join";
  }

  /**
   * Tells whether others may keep data in the cluster of an array before a job about some arrays begins: it exists already, or its first array, which
   * creates it, is none of them; null where that is not known.
   */
  isLive(array: ArrayRow, ofJob: readonly ArrayRow[]): boolean | null {
    const state = this.rows.find("clusters", array.cluster)?.state ?? "";
    if (state === "") return null;
    const home = this.homeOfCluster(array.cluster);
    return state === "existing" || (home !== null && !ofJob.includes(home));
  }

  /** Tells whether a procedure empties drives, as it creates clusters or joins arrays to them: one of its conditions asks for the cluster act. */
  readonly emptiesDrives = oncePer((procedure: string): boolean => this.asksFor(procedure, clusterAct));

  /** Tells whether a procedure is for arrays that nobody uses yet, as it empties their drives or is about how these travel: a workshop burns them in. */
  private readonly isBeforeUse = oncePer((procedure: string): boolean => this.emptiesDrives(procedure) || this.asksFor(procedure, drivesTravel));

  private asksFor(procedure: string, field: string): boolean {
    const conditions = [...this.rows.rowsWith("procedures", "procedure", procedure), ...this.rows.rowsWith("steps", "procedure", procedure)];
    return conditions.some(({ when }) => foldName(when).includes(field));
  }

  /**
   * Finds an array of a job for which its procedure says nothing of what becomes of its cluster, though it says it for others: an array that joins a live
   * cluster in an installation that creates one; null where there is none, and where the procedure does not tell live clusters from others.
   */
  withoutClusterStep(job: PlanRow<"jobs">): { readonly array: ArrayRow; readonly act: "create" | "join"; readonly isLive: boolean } | null {
    const sections = new Map(this.rows.rowsWith("procedures", "procedure", job.procedure).map(({ section, when }) => [foldName(section), when]));
    const conditions = this.rows.rowsWith("steps", "procedure", job.procedure).flatMap(({ section, when }) => {
      const all = [...(orNull(() => parseCondition(sections.get(foldName(section)) ?? "", "When")) ?? []), ...(orNull(() => parseCondition(when, "When")) ?? [])];
      const ofCluster = all.filter(({ field }) => [clusterAct, clusterLive].includes(foldName(field)));
      return ofCluster.some(({ field }) => foldName(field) === clusterAct) ? [ofCluster] : [];
    });
    // A firm's own procedure that knows one kind of cluster alone says nothing of whether it is live, and is not held to it.
    if (!conditions.flat().some(({ field }) => foldName(field) === clusterLive)) return null;
    const { arrays } = this.of(job);
    for (const array of arrays) {
      const [act, isLive] = [this.clusterActOf(array), this.isLive(array, arrays) === true];
      const said = (field: string): string => (foldName(field) === clusterAct ? act : isLive ? "yes" : "no");
      if (act !== "" && !conditions.some((condition) => conditionHolds(condition, said))) return { array, act, isLive };
    }
    return null;
  }

  /** Finds an array of a job whose drives it would empty, or prepare for the road, though a job that is closed has installed it; null where there is none. */
  installedAgain(job: PlanRow<"jobs">): { readonly array: ArrayRow; readonly by: PlanRow<"jobs"> } | null {
    if (!this.isBeforeUse(job.procedure)) return null;
    const closed = this.rows.rows("jobs").filter((other) => other !== job && other.state === "closed" && this.emptiesDrives(other.procedure));
    for (const array of this.of(job).arrays) {
      const by = closed.find((other) => orNull(() => this.of(other))?.arrays.includes(array) === true);
      if (by !== undefined) return { array, by };
    }
    return null;
  }

  /** Kilograms that are lifted of an array: as heavy as it is where an installation that is not closed brings it with its drives in; null where nobody knows. */
  liftedKg(array: ArrayRow): Kilograms | null {
    const { liftKg, weightKg } = array;
    return this.travelsWithDrives().has(array) ? (weightKg ?? liftKg) : (liftKg ?? weightKg);
  }

  private readonly travelsWithDrives = once((): ReadonlySet<ArrayRow> => {
    const jobs = this.rows.rows("jobs").filter(({ state, drivesTravel, procedure }) => state !== "closed" && drivesTravel === "in" && this.emptiesDrives(procedure));
    return new Set(jobs.flatMap((job) => orNull(() => this.of(job))?.arrays ?? []));
  });

  private arrayNamed(job: PlanRow<"jobs">, name: string): ArrayRow {
    const found = this.rows.find("arrays", name);
    if (found !== null) return found;
    throw invalid("Arrays", name, `Job ${quote(job.job)} names array ${quote(name)}, which the table Arrays does not have. Write one of its arrays.`);
  }
}

/** Sorts the arrays of each cluster among themselves by cluster order; the others, and the places of all, stay. */
function inClusterOrder(arrays: readonly ArrayRow[]): ArrayRow[] {
  const clusters = groupBy(arrays, ({ cluster }) => foldName(cluster));
  for (const [cluster, members] of clusters) if (cluster !== "") members.sort((a, b) => orderOf(a) - orderOf(b));
  return arrays.flatMap(({ cluster }) => clusters.get(foldName(cluster))?.shift() ?? []);
}

function lowest(arrays: readonly ArrayRow[]): ArrayRow | null {
  return arrays.reduce<ArrayRow | null>((best, array) => (best === null || orderOf(array) < orderOf(best) ? array : best), null);
}

function orderOf({ clusterOrder }: ArrayRow): number {
  return clusterOrder ?? Infinity;
}
