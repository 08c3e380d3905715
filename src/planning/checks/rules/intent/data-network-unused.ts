import { gather } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const dataNetworkUnused: Rule = {
  name: "data-network-unused",
  family: "intent",
  weight: "warn",
  meaning: "Every data network of a site with planned ports has a port of an array there: one that has none adds no path.",
  check: (model) => {
    const used = new Set(model.ports.all().map(({ network }) => network));
    const sites = gather(model.ports.all(), ({ array }) => (array === null || array.site === "" ? [] : [array.site]));
    const reached = new Set([...new Set(sites)].flatMap((site) => model.networks.ofSite(site)));
    return gather(model.networks.all(), (network): Remark[] => {
      if (!network.roles.has("data") || used.has(network) || !reached.has(network)) return [];
      const sentence = `No array port is in ${network.row.network}, a data network. Give arrays ports in it, or mend its role.`;
      return [remarkAt(model, "networks", network.row, "network", sentence)];
    });
  },
};
