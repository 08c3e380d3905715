import { layoutDrives, parseScheme } from "../../../capacity";
import { gather, refusalOf, saysNone } from "../../../plan/model";
import { type Remark, remarkAt, remarkOn, type Rule } from "../../finding";

export const schemeLayout: Rule = {
  name: "scheme-layout",
  family: "capacity",
  weight: "stop",
  meaning: "The drives of an array, or of each of its drive sets, less its spares, can be laid out by its scheme, and the arrays of a pool by the scheme across them.",
  check: (model) => [
    ...model.capacity.sets().flatMap(({ at, scheme, drives, spares }): Remark[] => {
      const refusal = scheme === null || drives === null ? null : refusalOf(() => layoutDrives(scheme, drives, spares ?? 0));
      return refusal === null ? [] : [remarkOn(model, { ...at, column: refusal.startsWith("spares") ? "spares" : "drives" }, refusal)];
    }),
    ...gather(model.capacity.pools(), ({ pool, arrays }): Remark[] => {
      if (saysNone(pool.acrossArrays)) return [];
      const unread = refusalOf(() => parseScheme(pool.acrossArrays, "Across arrays"));
      if (unread !== null) return [remarkAt(model, "pools", pool, "acrossArrays", unread)];
      const scheme = parseScheme(pool.acrossArrays, "Across arrays");
      if (arrays.length === 0 || refusalOf(() => layoutDrives(scheme, arrays.length)) === null) return [];
      const sentence = `${scheme.name} cannot be laid over the ${arrays.length} arrays of ${pool.pool}: it needs at least ${scheme.leastDrives}.`;
      return [remarkAt(model, "pools", pool, "acrossArrays", sentence)];
    }),
  ],
};
