import { foldName } from "../../text";

/**
 * Steps of earlier editions that were withdrawn because they are unsafe, with what they do. An id is never given to another step.
 *
 * All of them let an array into a pool, or out of its rack, before it was known to be whole.
 */
export const withdrawnSteps: Readonly<Record<string, string>> = {
  "INS-122": "joins a live cluster before the array was built and tested",
  "INS-152": "puts capacity into a pool that may be live before the array was built and tested",
  "INS-157": "gives hosts capacity before the failure tests",
  "INS-225": "pulls a controller with one name and without looking whether the other is well",
  "RCT-050": "sets the ports of both controllers where one was replaced",
  "OUT-052": "expects failed drives to report a finished erasure",
};

const byId = new Map(Object.entries(withdrawnSteps).map(([id, what]) => [foldName(id), what]));

/** Says why a step is followed no more, and what to do; null where its id was not withdrawn. */
export function withdrawnFault(stepId: string): string | null {
  const what = byId.get(foldName(stepId));
  return what === undefined ? null : `${stepId} was withdrawn: it ${what}. Delete it, or follow the built-in steps.`;
}
