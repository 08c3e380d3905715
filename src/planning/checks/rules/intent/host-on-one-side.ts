import { gather } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const hostOnOneSide: Rule = {
  name: "host-on-one-side",
  family: "intent",
  weight: "warn",
  meaning: "A host has an address in a data network of each side, where its site has both.",
  check: (model) =>
    gather(model.rows("hosts"), (row): Remark[] => {
      const own = new Set(model.hostPaths.networksOf(row)?.filter(({ roles }) => roles.has("data")).map((network) => network.row.side));
      if (own.size === 0 || own.has("")) return [];
      const other = model.networks.ofSite(row.site).find(({ roles, row: { side } }) => roles.has("data") && side !== "" && !own.has(side));
      if (other === undefined) return [];
      const sentence = `${row.host} has addresses on side ${[...own].join()} alone: when that fails it loses its disks. Give it one in ${other.row.network} too.`;
      return [remarkAt(model, "hosts", row, "address", sentence)];
    }),
};
