import { gather } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const volumesNotHeld: Rule = {
  name: "volumes-not-held",
  family: "intent",
  weight: "warn",
  meaning: "Every volume has a size and a pool whose capacity is known: else nothing tells whether it fits.",
  check: (model) => [
    ...gather(model.rows("volumes"), (row): Remark[] => {
      if (row.pool === "") return [remarkAt(model, "volumes", row, "pool", cutSentence(`Whether ${row.volume} fits is not known, as it names no pool. Write its pool.`))];
      if (row.size === null) return [remarkAt(model, "volumes", row, "size", cutSentence(`Whether ${row.volume} fits is not known, as it has no size. Write one such as 40 TB.`))];
      return [];
    }),
    ...model.volumes.demands().flatMap(({ contents: { pool }, given }): Remark[] => {
      if (given !== null) return [];
      return [remarkAt(model, "pools", pool, "pool", cutSentence(`Whether the volumes of ${pool.pool} fit is not known, as its capacity is not. Fill drives and scheme of its arrays.`))];
    }),
  ],
};
