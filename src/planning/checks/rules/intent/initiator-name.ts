import { iscsiNameFault } from "../../../addressing";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const initiatorName: Rule = {
  name: "initiator-name",
  family: "intent",
  weight: "stop",
  meaning: "The initiator name of a host or a card is an iSCSI name: iqn., eui. or naa. and what belongs behind it (RFC 7143 section 4.2.7).",
  check: (model) =>
    model.hostPorts.initiators().flatMap(({ table, row }): Remark[] => {
      const fault = iscsiNameFault(row.initiatorName);
      return fault === null ? [] : [remarkAt(model, table, row, "initiatorName", fault)];
    }),
};
