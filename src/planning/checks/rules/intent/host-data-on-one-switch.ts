import { gather, oncePer, type HostPathCount, type Network } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const hostDataOnOneSwitch: Rule = {
  name: "host-data-on-one-switch",
  family: "intent",
  weight: "warn",
  meaning: "The ports of an array in the data networks of a host go to at least two switches: networks that the host is not in do not help it.",
  check: (model) => {
    const told = new Set<object>();
    // Arrays that stand alike share one list of hosts.
    const networksIn = oncePer((counts: readonly HostPathCount[]) => new Set(counts.map(({ networks }) => networks)));
    return gather(model.rows("arrays"), (array) => {
      const data = model.hostPaths.dataPortsOf(array);
      // Where all data ports are on one switch, the array is told of.
      if (model.paths.onlySwitchAmong(data) !== null) return [];
      const counts = model.hostPaths.to(array);
      const onlyOf = oncePer((networks: readonly Network[]) => model.paths.onlySwitchAmong(data.filter(({ network }) => network !== null && networks.includes(network))));
      if (![...networksIn(counts)].some((networks) => onlyOf(networks) !== null)) return [];
      return counts.flatMap(({ host, paths, networks }): Remark[] => {
        const only = paths === null || paths === 0 || told.has(host) ? null : onlyOf(networks);
        if (only === null) return [];
        told.add(host);
        const sentence = `${host.host} reaches ${array.array} over ${only} alone, by its addresses. Give it one in a data network on another switch.`;
        return [remarkAt(model, "hosts", host, "address", sentence)];
      });
    });
  },
};
