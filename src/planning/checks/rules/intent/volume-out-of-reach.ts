import { gather, oncePer } from "../../../plan/model";
import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const volumeOutOfReach: Rule = {
  name: "volume-out-of-reach",
  family: "intent",
  weight: "warn",
  meaning: "A host opens volumes of pools that have an array at its site: paths, cabling and single points are looked for within a site alone.",
  check: (model) => {
    const sitesOf = oncePer((pool: string): ReadonlySet<string> => {
      const row = model.find("pools", pool);
      const arrays = row === null ? [] : model.capacity.arraysIn(row);
      return new Set(arrays.map(({ site }) => foldName(site)).filter((site) => site !== ""));
    });
    return gather(model.rows("access"), (row): Remark[] => {
      const pool = model.find("volumes", row.volume)?.pool ?? "";
      const sites = sitesOf(pool);
      const far = sites.size === 0 ? undefined : model.volumes.hostsOf(row.to).find(({ site }) => site !== "" && !sites.has(foldName(site)));
      if (far === undefined) return [];
      const sentence = `No array of ${pool} is at ${far.site}, where ${far.host} is: whether it reaches ${row.volume} is not checked. Open it to a host there, or make sure.`;
      return [remarkAt(model, "access", row, "to", cutSentence(sentence))];
    });
  },
};
