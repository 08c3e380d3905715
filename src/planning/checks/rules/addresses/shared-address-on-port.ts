import { formatAddress } from "../../../addressing";
import { addressCells, addressKey, userOf, type AddressCell } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const sharedAddressOnPort: Rule = {
  name: "shared-address-on-port",
  family: "addresses",
  weight: "stop",
  meaning: "The shared address of a cluster sits on no port: the cluster moves it itself.",
  check: (index) => {
    const ports = new Map<string, AddressCell>();
    for (const cell of addressCells(index)) if (cell.table === "ports") ports.set(addressKey(cell.address, cell.network?.routing ?? ""), cell);
    return addressCells(index).flatMap(({ table, row, address, network }): Remark[] => {
      const port = table === "clusters" ? ports.get(addressKey(address, network?.routing ?? "")) : undefined;
      if (port === undefined) return [];
      return [remarkAt(index, "clusters", row, "sharedAddress", `${formatAddress(address)} is the address of ${userOf(port)} too. A shared address sits on no port: write a free one.`)];
    });
  },
};
