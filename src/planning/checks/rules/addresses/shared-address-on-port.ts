import { formatAddress } from "../../../addressing";
import { gather, addressKey, type UsedAddress, userOf } from "../../../plan/model";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const sharedAddressOnPort: Rule = {
  name: "shared-address-on-port",
  family: "addresses",
  weight: "stop",
  meaning: "The shared address of a cluster sits on no port: the cluster moves it itself.",
  check: (model) => {
    const ports = new Map<string, UsedAddress>();
    for (const cell of model.addresses.all()) if (cell.table === "ports") ports.set(addressKey(cell.address, cell.routing), cell);
    return gather(model.addresses.all(), ({ table, row, address, routing }): Remark[] => {
      const port = table === "clusters" ? ports.get(addressKey(address, routing)) : undefined;
      if (port === undefined) return [];
      const sentence = `${formatAddress(address)} is the address of ${userOf(port)} too. A shared address sits on no port: write a free one.`;
      return [remarkAt(model, "clusters", row, "sharedAddress", sentence)];
    });
  },
};
