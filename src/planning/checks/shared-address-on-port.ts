import { formatAddress } from "../addressing";
import { addressCells, addressKey } from "./address-cells";
import { remarkAt, type Remark, type Rule } from "./finding";

export const sharedAddressOnPort: Rule = {
  name: "shared-address-on-port",
  family: "addresses",
  weight: "stop",
  meaning: "The shared address of a cluster sits on no port: the cluster moves it itself.",
  check: (index) => {
    const ports = new Map<string, string>();
    for (const { table, address, network, user } of addressCells(index)) if (table === "ports") ports.set(addressKey(address, network?.routing ?? ""), user);
    return addressCells(index).flatMap(({ table, row, address, network }): Remark[] => {
      const user = table === "clusters" ? ports.get(addressKey(address, network?.routing ?? "")) : undefined;
      if (user === undefined) return [];
      return [remarkAt(index, "clusters", row, "sharedAddress", `${formatAddress(address)} is the address of ${user} too. A shared address sits on no port: write a free one.`)];
    });
  },
};
