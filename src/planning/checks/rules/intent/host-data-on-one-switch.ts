import { remarkAt, type Remark, type Rule } from "../../finding";

export const hostDataOnOneSwitch: Rule = {
  name: "host-data-on-one-switch",
  family: "intent",
  weight: "warn",
  meaning: "The ports of an array in the data networks of a host go to at least two switches: networks that the host is not in do not help it.",
  check: (model) => {
    const told = new Set<object>();
    return model.rows("arrays").flatMap((array) =>
      model.hostPaths.to(array).flatMap(({ host, paths, networks }): Remark[] => {
        if (paths === null || paths === 0 || told.has(host)) return [];
        const data = model.hostPaths.dataPortsOf(array);
        const only = model.paths.onlySwitchAmong(data.filter(({ network }) => network !== null && networks.includes(network)));
        // Where all data ports are on one switch, the array is told of.
        if (only === null || model.paths.onlySwitchAmong(data) !== null) return [];
        told.add(host);
        const sentence = `${host.host} reaches ${array.array} over ${only} alone, by its addresses. Give it one in a data network on another switch.`;
        return [remarkAt(model, "hosts", host, "address", sentence)];
      }),
    );
  },
};
