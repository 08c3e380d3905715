import { saysNone } from "../../../plan/model";
import { remarkAt, type Rule } from "../../finding";

export const poolWithoutScheme: Rule = {
  name: "pool-without-scheme",
  family: "resilience",
  weight: "note",
  meaning: "A pool of several arrays without a scheme across them loses data with any one of them; that may be meant.",
  check: (model) =>
    model.capacity.pools()
      .filter(({ pool, arrays }) => arrays.length > 1 && saysNone(pool.acrossArrays))
      .map(({ pool, arrays }) =>
        remarkAt(model, "pools", pool, "acrossArrays", `${pool.pool} has no redundancy across its ${arrays.length} arrays: the loss of one takes its part of the data.`),
      ),
};
