import { gather, type PlanModel } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const pathsOnOneStack: Rule = {
  name: "paths-on-one-stack",
  family: "resilience",
  weight: "warn",
  meaning: "The data ports of an array, and the paths of a host, do not all go to switches of one stack: a stack runs one firmware, and restarts as one when that changes.",
  check: (model) => [
    ...gather(model.rows("arrays"), (array): Remark[] => {
      const data = model.hostPaths.dataPortsOf(array);
      const ports = data.length > 0 ? data : model.ports.of(array);
      const sentence = sentenceOf("All data ports", array.array, ports.flatMap(({ to }) => to ?? []));
      return sentence === null ? [] : [remarkAt(model, "arrays", array, "array", sentence)];
    }),
    ...gather(model.rows("hosts"), (host): Remark[] => {
      const sentence = sentenceOf("All paths", host.host, switchesOf(model, host));
      return sentence === null ? [] : [remarkAt(model, "hosts", host, "host", sentence)];
    }),
  ],
};

function switchesOf(model: PlanModel, host: PlanRow<"hosts">): PlanRow<"switches">[] {
  return model.paths.switchesOf(host).flatMap((name) => model.find("switches", name) ?? []);
}

/** What hangs on one switch alone is told by rules of their own. */
function sentenceOf(what: string, name: string, switches: readonly PlanRow<"switches">[]): string | null {
  const stack = switches[0]?.stack ?? "";
  const names = [...new Set(switches.map((row) => row.switch))];
  if (stack === "" || names.length < 2 || switches.some((row) => foldName(row.stack) !== foldName(stack))) return null;
  return cutSentence(`${what} of ${name} go to stack ${stack}: new firmware restarts all of it at once. Cable some to a switch outside it, or plan for the standstill.`);
}
