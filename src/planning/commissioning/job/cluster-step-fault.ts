import type { PlanModel } from "../../plan/model";
import type { PlanRow } from "../../plan/read";
import { cutSentence, quote } from "../../text";

/**
 * Says for which array of a job its procedure has no step about its cluster, as an installation, which creates one, for an array of a live cluster; null
 * where there is none. Refuses a site or an array that the plan does not have.
 */
export function clusterStepFault(model: PlanModel, job: PlanRow<"jobs">): string | null {
  const missing = model.places.withoutClusterStep(job);
  if (missing === null) return null;
  const { array: { array, cluster }, act, isLive } = missing;
  const what = act === "create" ? `creates ${quote(cluster)}` : `joins ${quote(cluster)}, which is ${isLive ? "live" : "new"}`;
  const other = act === "create" || !isLive ? "Install a rack array" : "Add an array to a live cluster";
  return cutSentence(`${array} ${what}: ${quote(job.procedure)} has no step for that. Follow one such as ${other}.`);
}
