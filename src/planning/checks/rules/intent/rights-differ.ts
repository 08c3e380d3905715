import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const rightsDiffer: Rule = {
  name: "rights-differ",
  family: "intent",
  weight: "warn",
  meaning: "The hosts of a group open a volume with one right, and all of them do, and no host opens it with two: else a takeover by another host of the group fails.",
  check: (model) =>
    model.rows("volumes").flatMap(({ volume }): Remark[] => {
      const openings = model.volumes.openingsOf(volume);
      const rightOf = (host: object): string => {
        const own = openings.filter(({ hosts }) => hosts.some((one) => one === host));
        return own.length === 0 ? "not at all" : own.some(({ writes }) => writes) ? "to read and write" : "to read";
      };
      for (const { row, hosts, writes } of openings) {
        const twice = hosts.find((host) => openings.some((other) => other.writes !== writes && other.hosts.includes(host)));
        if (twice !== undefined && !writes) {
          const sentence = `${twice.host} may only read ${volume} here, and write it by another row. Give it one right.`;
          return [remarkAt(model, "access", row, "right", cutSentence(sentence))];
        }
        for (const [first, ...others] of model.volumes.groupsWith(hosts)) {
          if (first === undefined) continue;
          const other = others.find((host) => rightOf(host) !== rightOf(first));
          if (other === undefined) continue;
          const sentence = `${first.host} opens ${volume} ${rightOf(first)}, ${other.host} of the same group ${rightOf(other)}. Give both one right.`;
          return [remarkAt(model, "access", row, "right", cutSentence(sentence))];
        }
      }
      return [];
    }),
};
