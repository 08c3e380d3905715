import { containsAddress, formatAddress, formatPrefix, isSameAddress } from "../../../addressing";
import { gather, isHostOf } from "../../../plan/model";
import { type Remark, remarkOn, type Rule } from "../../finding";

export const networkOrBroadcast: Rule = {
  name: "network-or-broadcast",
  family: "addresses",
  weight: "stop",
  meaning: "No device has the address of a network itself, its broadcast address, or in IPv6 its subnet-router anycast address.",
  check: (model) =>
    gather(model.addresses.all(), ({ table, row, column, address, network }): Remark[] => {
      const prefix = network?.prefix;
      if (prefix === null || prefix === undefined || !containsAddress(prefix, address) || isHostOf(prefix, address)) return [];
      const kind = !isSameAddress(address, prefix.first) ? "the broadcast address" : address.family === 4 ? "the network's own address" : "the routers' anycast address";
      const sentence = `${formatAddress(address)} is ${kind} of ${formatPrefix(prefix)}, which no device can have. Write another.`;
      return [remarkOn(model, { table, row: row.row, column }, sentence)];
    }),
};
