import { gather } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const hostPaths: Rule = {
  name: "host-paths",
  family: "intent",
  weight: "warn",
  meaning: "A host has paths in data networks to every array of its site, and no fewer than the site's other hosts.",
  check: (model) => {
    const told = new Set<object>();
    return gather(model.rows("arrays"), (array) => {
      const counts = model.hostPaths.to(array);
      // Arrays that stand alike share one list: it is told at the first of them.
      if (told.has(counts)) return [];
      told.add(counts);
      const most = Math.max(0, ...counts.map(({ paths }) => paths ?? 0));
      const hasData = model.hostPaths.dataPortsOf(array).length > 0;
      return counts.flatMap(({ host, paths }): Remark[] => {
        if (paths === null || paths >= Math.max(most, hasData ? 1 : 0) || told.has(host)) return [];
        told.add(host);
        const sentence =
          paths === 0
            ? `${host.host} has no address in a data network of ${array.array}, so it has no path to it. Give it one.`
            : `${host.host} has ${paths} ${paths === 1 ? "path" : "paths"} to ${array.array}, other hosts of its site ${most}. Give it the addresses it lacks.`;
        return [remarkAt(model, "hosts", host, "address", sentence)];
      });
    });
  },
};
