import { cutSentence } from "../../../text";
import { remarkAt, type Rule } from "../../finding";

export const networkNotChecked: Rule = {
  name: "network-not-checked",
  family: "intent",
  weight: "note",
  meaning: "The addresses, MTU and gateway of a network of kind other are not checked: they follow other standards. Its cabling, sides and paths are.",
  check: (model) =>
    model.networks
      .all()
      .filter(({ isIp }) => !isIp)
      .map(({ row }) =>
        remarkAt(model, "networks", row, "kind", cutSentence(`${row.network} is of kind other: its addresses, MTU and gateway are not checked. Check them by the guide of its switches.`)),
      ),
};
