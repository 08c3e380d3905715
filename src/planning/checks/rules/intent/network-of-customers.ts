import { gather } from "../../../plan/model";
import { andMore, cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const networkOfCustomers: Rule = {
  name: "network-of-customers",
  family: "intent",
  weight: "warn",
  meaning: "With several customers, a network that reaches every site names its routing table: else nobody knows whose addresses it must be apart from.",
  check: (model) => {
    const [first, second, ...others] = model.networks.customers();
    if (first === undefined || second === undefined) return [];
    return gather(model.networks.all(), ({ row, isIp }): Remark[] => {
      if (row.site !== "" || row.routing !== "" || !isIp) return [];
      const sentence = `${row.network} reaches the sites of ${andMore(`${first}, ${second}`, others.length)}, and is held apart from none of their networks. Write its Site or its Routing.`;
      return [remarkAt(model, "networks", row, "routing", cutSentence(sentence))];
    });
  },
};
