import { gather, oncePer } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { cutSentence, foldName } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const volumeNumberTwice: Rule = {
  name: "volume-number-twice",
  family: "intent",
  weight: "warn",
  meaning: "A host sees each volume of a cluster, or of an array without one, under a number of its own (LUN).",
  check: (model) => {
    const seenBy = oncePer<PlanRow<"hosts">, Map<string, string>>(() => new Map());
    return gather(model.rows("access"), (row): Remark[] => {
      if (row.number === null) return [];
      const place = `${row.number} ${targetOf(model.find("volumes", row.volume)?.pool ?? "")}`;
      for (const host of model.volumes.hostsOf(row.to)) {
        const seen = seenBy(host);
        const other = seen.get(place) ?? row.volume;
        seen.set(place, other);
        if (other === row.volume || foldName(other) === foldName(row.volume)) continue;
        return [remarkAt(model, "access", row, "number", cutSentence(`${host.host} would see ${other} and ${row.volume} under number ${row.number}. Give one of them another number.`))];
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
