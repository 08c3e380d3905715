import { layoutDrives, parseScheme } from "../../../capacity";
import { poolContents, saysNone } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";
import { refusalOf } from "../../../plan/model";

export const schemeLayout: Rule = {
  name: "scheme-layout",
  family: "capacity",
  weight: "stop",
  meaning: "The drives of an array, less its spares, can be laid out by its scheme, and the arrays of a pool by the scheme across them.",
  check: (index) => [
    ...index.rows("arrays").flatMap((row): Remark[] => {
      const { scheme, drives, spares } = row;
      const refusal = scheme === null || drives === null ? null : refusalOf(() => layoutDrives(scheme, drives, spares ?? 0));
      return refusal === null ? [] : [remarkAt(index, "arrays", row, refusal.startsWith("spares") ? "spares" : "drives", refusal)];
    }),
    ...poolContents(index).flatMap(({ pool, arrays }): Remark[] => {
      if (saysNone(pool.acrossArrays)) return [];
      const unread = refusalOf(() => parseScheme(pool.acrossArrays, "Across arrays"));
      if (unread !== null) return [remarkAt(index, "pools", pool, "acrossArrays", unread)];
      const scheme = parseScheme(pool.acrossArrays, "Across arrays");
      if (arrays.length === 0 || refusalOf(() => layoutDrives(scheme, arrays.length)) === null) return [];
      return [remarkAt(index, "pools", pool, "acrossArrays", `${scheme.name} cannot be laid over the ${arrays.length} arrays of ${pool.pool}: it needs at least ${scheme.leastDrives}.`)];
    }),
  ],
};
