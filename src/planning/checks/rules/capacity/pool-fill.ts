import { formatTerabytes } from "../../terabytes";
import { poolContents } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const poolFill: Rule = {
  name: "pool-fill",
  family: "capacity",
  weight: "warn",
  meaning: "A pool is filled no further than its fill limit (setting Fill limit where the pool names none). Used counts what stands on each array.",
  check: (index) =>
    poolContents(index).flatMap(({ pool, fillLimit, arrays, members }): Remark[] => {
      if (members.length === 0 || members.length < arrays.length) return [];
      const usable = members.reduce((sum, member) => sum + member.usable, 0n);
      const used = members.reduce((sum, member) => sum + member.used, 0n);
      const fill = Number(used) / Number(usable);
      if (fill <= fillLimit) return [];
      return [remarkAt(index, "pools", pool, "fillLimit", `${pool.pool} holds ${formatTerabytes(used)} of ${formatTerabytes(usable)} usable, ${percent(fill)} where ${percent(fillLimit)} is the limit. Add capacity.`)];
    }),
};

function percent(share: number): string {
  return `${Math.round(share * 1000) / 10}%`;
}
