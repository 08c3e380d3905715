import { parseAddress, parseBlocks, parsePrefix } from "../../../addressing";
import { remarkAt, type Remark, type Rule } from "../../finding";
import { refusalOf } from "../../../plan/model";
import { foldName } from "../../../text";

export const notAnAddress: Rule = {
  name: "not-an-address",
  family: "addresses",
  weight: "stop",
  meaning: "Addresses, prefixes, gateways and reserved ranges can be read, and a prefix has no bits set after its length.",
  check: (index) => [
    ...index.networks.flatMap(({ row }): Remark[] => {
      const prefix = row.prefix === "" ? null : refusalOf(() => parsePrefix(row.prefix, "Prefix"));
      const gateway = row.gateway === "" || foldName(row.gateway) === "none" ? null : refusalOf(() => parseAddress(row.gateway, "Gateway"));
      const reserved = refusalOf(() => parseBlocks(row.reserved, "Reserved"));
      return [
        ...(prefix === null ? [] : [remarkAt(index, "networks", row, "prefix", prefix)]),
        ...(gateway === null ? [] : [remarkAt(index, "networks", row, "gateway", gateway)]),
        ...(reserved === null ? [] : [remarkAt(index, "networks", row, "reserved", reserved)]),
      ];
    }),
    ...index.ports.flatMap(({ row, address }): Remark[] => {
      const refusal = row.address === "" || address !== null ? null : refusalOf(() => parseAddress(row.address, "Address"));
      return refusal === null ? [] : [remarkAt(index, "ports", row, "address", refusal)];
    }),
    ...index.rows("clusters").flatMap((row): Remark[] => {
      const refusal = row.sharedAddress === "" ? null : refusalOf(() => parseAddress(row.sharedAddress, "Shared address"));
      return refusal === null ? [] : [remarkAt(index, "clusters", row, "sharedAddress", refusal)];
    }),
    ...index.rows("hosts").flatMap((row): Remark[] => {
      const refusal = row.address === "" ? null : refusalOf(() => parseAddress(row.address, "Address"));
      return refusal === null ? [] : [remarkAt(index, "hosts", row, "address", refusal)];
    }),
  ],
};
