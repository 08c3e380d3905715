import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const volumeNumberTwice: Rule = {
  name: "volume-number-twice",
  family: "intent",
  weight: "warn",
  meaning: "A host sees each volume of a cluster, or of an array without one, under a number of its own (LUN).",
  check: (model) => {
    const seen = new Map<string, string>();
    return model.rows("access").flatMap((row): Remark[] => {
      if (row.number === null) return [];
      const target = targetOf(model.find("volumes", row.volume)?.pool ?? "");
      for (const { host, row: place } of model.volumes.hostsOf(row.to)) {
        const key = `${row.number} ${place} ${target}`;
        const other = seen.get(key) ?? row.volume;
        seen.set(key, other);
        if (foldName(other) === foldName(row.volume)) continue;
        return [remarkAt(model, "access", row, "number", cutSentence(`${host} would see ${other} and ${row.volume} under number ${row.number}. Give one of them another number.`))];
      }
      return [];
    });

    /** What a host signs in to: the cluster of a pool, or the pool alone. */
    function targetOf(pool: string): string {
      const cluster = model.find("pools", pool)?.cluster ?? "";
      return foldName(cluster === "" ? pool : cluster);
    }
  },
};
