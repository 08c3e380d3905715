import { formatAddress } from "../../../addressing";
import { gather, addressKey, userOf, type UsedAddress } from "../../../plan/model";
import { tables } from "../../../plan/schema";
import { foldName } from "../../../text";
import { remarkOn, type Remark, type Rule } from "../../finding";

export const addressTwice: Rule = {
  name: "address-twice",
  family: "addresses",
  weight: "stop",
  meaning: "An address is used once in its routing table, however it is spelt. Controllers that share the address of a port number use it once together.",
  check: (model) => {
    const first = new Map<string, UsedAddress>();
    return gather(model.addresses.all(), (cell): Remark[] => {
      const key = addressKey(cell.address, cell.routing);
      const earlier = first.get(key);
      if (earlier === undefined) {
        first.set(key, cell);
        return [];
      }
      // A cluster's address on a port is told by a rule of its own; on a shared port number each controller has one row.
      if (cell.table === "clusters" && earlier.table === "ports") return [];
      if (cell.use === earlier.use && !isSameController(cell, earlier)) return [];
      const where = `row ${earlier.row.row + 1} of ${tables[earlier.table].name}`;
      const sentence = `${formatAddress(cell.address)} of ${userOf(cell)} is used by ${userOf(earlier)} already, in ${where}. Give each its own.`;
      return [remarkOn(model, { ...cell, row: cell.row.row }, sentence)];
    });
  },
};

function isSameController(a: UsedAddress, b: UsedAddress): boolean {
  return a.table === "ports" && b.table === "ports" && foldName(a.row.controller) === foldName(b.row.controller);
}
