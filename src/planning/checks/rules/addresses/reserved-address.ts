import { formatAddress } from "../../../addressing";
import { gather, isReserved } from "../../../plan/model";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const reservedAddress: Rule = {
  name: "reserved-address",
  family: "addresses",
  weight: "warn",
  meaning: "No port has an address that its network keeps back in Reserved.",
  check: (model) =>
    gather(model.ports.all(), ({ row, network, address }): Remark[] => {
      if (address === null || network === null || !isReserved(network, address)) return [];
      const sentence = `${formatAddress(address)} is kept back by the column Reserved of ${network.row.network}. Write another, or free it there.`;
      return [remarkAt(model, "ports", row, "address", sentence)];
    }),
};
