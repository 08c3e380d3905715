import { gather } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const rightsDiffer: Rule = {
  name: "rights-differ",
  family: "intent",
  weight: "warn",
  meaning: "The hosts of a group open a volume with one right, and all of them do, and no host opens it with two: else a takeover by another host of the group fails.",
  check: (model) =>
    gather(model.rows("volumes"), ({ volume }): Remark[] => {
      const openings = model.volumes.openingsOf(volume);
      const rightOf = (host: PlanRow<"hosts">): string => {
        let right = "not at all";
        for (const { hosts, writes } of openings) {
          if (!hosts.includes(host)) continue;
          if (writes) return "to read and write";
          right = "to read";
        }
        return right;
      };
      for (const { row, hosts, writes } of openings) {
        const twice = writes ? undefined : hosts.find((host) => openings.some((other) => other.writes && other.hosts.includes(host)));
        if (twice !== undefined) {
          const sentence = `${twice.host} may only read ${volume} here, and write it by another row. Give it one right.`;
          return [remarkAt(model, "access", row, "right", cutSentence(sentence))];
        }
        for (const group of model.volumes.groupsWith(hosts)) {
          const [first] = group;
          const right = first === undefined ? "" : rightOf(first);
          const other = group.find((host) => rightOf(host) !== right);
          if (first === undefined || other === undefined) continue;
          const sentence = `${first.host} opens ${volume} ${right}, ${other.host} of the same group ${rightOf(other)}. Give both one right.`;
          return [remarkAt(model, "access", row, "right", cutSentence(sentence))];
        }
      }
      return [];
    }),
};
