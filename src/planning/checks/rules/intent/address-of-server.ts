import { formatAddress } from "../../../addressing";
import { gather, addressKey, userOf } from "../../../plan/model";
import { remarkOn, type Remark, type Rule } from "../../finding";

export const addressOfServer: Rule = {
  name: "address-of-server",
  family: "intent",
  weight: "stop",
  meaning: "No port and no cluster has the address of a time server, name server or receiver of alerts. A host may be one of these itself.",
  check: (model) => {
    const servers = new Map(model.addresses.services().map((server) => [addressKey(server.address, server.routing), server]));
    return gather(model.addresses.all(), (cell): Remark[] => {
      const server = cell.table === "hosts" ? undefined : servers.get(addressKey(cell.address, cell.routing));
      if (server === undefined) return [];
      const sentence = `${formatAddress(cell.address)} of ${userOf(cell)} is a ${server.does} of ${server.row.site}. Give it another address.`;
      return [remarkOn(model, { table: cell.table, row: cell.row.row, column: cell.column }, sentence)];
    });
  },
};
