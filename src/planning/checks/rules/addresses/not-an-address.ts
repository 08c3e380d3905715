import { parseAddress, parseBlocks, parsePrefix } from "../../../addressing";
import { gather, refusalOf } from "../../../plan/model";
import { foldName, splitNames } from "../../../text";
import { type Remark, remarkAt, type Rule } from "../../finding";

export const notAnAddress: Rule = {
  name: "not-an-address",
  family: "addresses",
  weight: "stop",
  meaning:
    "In networks of IP addresses, prefixes, gateways and reserved ranges can be read, and a prefix has no bits set after its length; so can servers that are not said by name.",
  check: (model) => [
    ...gather(model.networks.all(), ({ row, isIp }): Remark[] => {
      if (!isIp) return [];
      const prefix = row.prefix === "" ? null : refusalOf(() => parsePrefix(row.prefix, "Prefix"));
      const gateway = row.gateway === "" || foldName(row.gateway) === "none" ? null : refusalOf(() => parseAddress(row.gateway, "Gateway"));
      const reserved = refusalOf(() => parseBlocks(row.reserved, "Reserved"));
      return [
        ...(prefix === null ? [] : [remarkAt(model, "networks", row, "prefix", prefix)]),
        ...(gateway === null ? [] : [remarkAt(model, "networks", row, "gateway", gateway)]),
        ...(reserved === null ? [] : [remarkAt(model, "networks", row, "reserved", reserved)]),
      ];
    }),
    ...gather(model.ports.all(), ({ row, network, address }): Remark[] => {
      const refusal = row.address === "" || address !== null || network?.isIp === false ? null : refusalOf(() => parseAddress(row.address, "Address"));
      return refusal === null ? [] : [remarkAt(model, "ports", row, "address", refusal)];
    }),
    ...gather(model.hostPorts.all(), ({ row, network, address }): Remark[] => {
      const refusal = row.address === "" || address !== null || network?.isIp === false ? null : refusalOf(() => parseAddress(row.address, "Address"));
      return refusal === null ? [] : [remarkAt(model, "hostPorts", row, "address", refusal)];
    }),
    ...gather(model.rows("clusters"), (row): Remark[] => {
      const refusal = row.sharedAddress === "" ? null : refusalOf(() => parseAddress(row.sharedAddress, "Shared address"));
      return refusal === null ? [] : [remarkAt(model, "clusters", row, "sharedAddress", refusal)];
    }),
    ...gather(model.rows("hosts"), (row) =>
      splitNames(row.address).flatMap((text): Remark[] => {
        const refusal = refusalOf(() => parseAddress(text, "Address"));
        return refusal === null ? [] : [remarkAt(model, "hosts", row, "address", refusal)];
      }),
    ),
    ...gather(model.rows("sites"), (row) =>
      servers.flatMap(([column, header]) =>
        splitNames(row[column]).flatMap((text): Remark[] => {
          const refusal = isMeantAsAddress(text) ? refusalOf(() => parseAddress(text, header)) : null;
          return refusal === null ? [] : [remarkAt(model, "sites", row, column, refusal)];
        }),
      ),
    ),
  ],
};

const servers = [["timeServers", "Time servers"], ["nameServers", "Name servers"], ["alertsTo", "Alerts to"]] as const;

/** Tells an address from a name, whose last part begins with a letter (RFC 1123 section 2.1) and which has no two colons. */
function isMeantAsAddress(text: string): boolean {
  return /^\d+(?:\.\d*)+(?:\/\d+)?$/.test(text) || /^[\da-f]*:[\da-f.]*:[\da-f:./]*$/i.test(text);
}
