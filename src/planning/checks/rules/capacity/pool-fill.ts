import { gather } from "../../../plan/model";
import { formatPercent, formatTerabytes } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const poolFill: Rule = {
  name: "pool-fill",
  family: "capacity",
  weight: "warn",
  meaning: "A pool is filled no further than its fill limit (setting Fill limit where the pool names none). Used counts what stands on each array.",
  check: (model) =>
    gather(model.capacity.pools(), ({ pool, fillLimit, arrays, members }): Remark[] => {
      if (members.length === 0 || members.length < arrays.length) return [];
      const usable = members.reduce((sum, member) => sum + member.usable, 0n);
      const used = members.reduce((sum, member) => sum + member.used, 0n);
      const fill = Number(used) / Number(usable);
      if (fill <= fillLimit) return [];
      const sentence = `${pool.pool} holds ${formatTerabytes(used)} of ${formatTerabytes(usable)} usable, ${formatPercent(fill)} where ${formatPercent(fillLimit)} is the limit. Add capacity.`;
      return [remarkAt(model, "pools", pool, "fillLimit", sentence)];
    }),
};
