import { gather, portLabel } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const portOfOtherRole: Rule = {
  name: "port-of-other-role",
  family: "intent",
  weight: "stop",
  meaning: "A port of an array is in a network of the role that its model gives the port in Model ports.",
  check: (model) =>
    gather(model.ports.all(), ({ row, network, duty }): Remark[] => {
      if (network === null || duty === null || duty.role === "" || network.roles.size === 0 || network.roles.has(duty.role)) return [];
      const sentence = `${row.array} port ${portLabel(row)} is in ${row.network} (${[...network.roles].join(", ")}); on ${duty.model} it is for ${duty.role}. Name a network for that.`;
      return [remarkAt(model, "ports", row, "network", cutSentence(sentence))];
    }),
};
