import { formatAddress } from "../../../addressing";
import { tables } from "../../../plan/schema";
import { addressCells, addressKey, userOf, type AddressCell } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const addressTwice: Rule = {
  name: "address-twice",
  family: "addresses",
  weight: "stop",
  meaning: "An address is used once in its routing table, however it is spelt. Controllers that share the address of a port number use it once together.",
  check: (index) => {
    const first = new Map<string, AddressCell>();
    return addressCells(index).flatMap((cell): Remark[] => {
      const key = addressKey(cell.address, cell.network?.routing ?? "");
      const earlier = first.get(key);
      if (earlier === undefined) {
        first.set(key, cell);
        return [];
      }
      // A cluster's address on a port is told by a rule of its own; on a shared port number each controller has one row.
      if (cell.table === "clusters" && earlier.table === "ports") return [];
      if (cell.use === earlier.use && !isSameController(cell, earlier)) return [];
      const where = `row ${earlier.row.row + 1} of ${tables[earlier.table].name}`;
      return [remarkAt(index, cell.table, cell.row, cell.column as never, `${formatAddress(cell.address)} of ${userOf(cell)} is used by ${userOf(earlier)} already, in ${where}. Give each its own.`)];
    });
  },
};

function isSameController(a: AddressCell, b: AddressCell): boolean {
  return "controller" in a.row && "controller" in b.row && a.row.controller.toLowerCase() === b.row.controller.toLowerCase();
}
