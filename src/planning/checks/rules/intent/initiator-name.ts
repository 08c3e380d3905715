import { iscsiNameFault } from "../../../addressing";
import type { Initiator, PlanModel } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const initiatorName: Rule = {
  name: "initiator-name",
  family: "intent",
  weight: "stop",
  meaning: "The initiator name of a host or a card is an iSCSI name: iqn., eui. or naa. and what belongs behind it (RFC 7143 section 4.2.7).",
  check: (model) =>
    model.hostPorts.initiators().flatMap(({ table, row }): Remark[] => {
      const fault = isForOtherKind(model, row) ? null : iscsiNameFault(row.initiatorName);
      return fault === null ? [] : [remarkAt(model, table, row, "initiatorName", fault)];
    }),
};

/** Tells whether a card is in a network that is none of IP: its name is one of another standard. */
function isForOtherKind(model: PlanModel, row: Initiator["row"]): boolean {
  return "network" in row && model.networks.named(row.network)?.isIp === false;
}
