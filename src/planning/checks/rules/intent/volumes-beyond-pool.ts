import { cutSentence, formatTerabytes } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const volumesBeyondPool: Rule = {
  name: "volumes-beyond-pool",
  family: "intent",
  weight: "stop",
  meaning: "The full volumes of a pool, with their snapshots, take no more than the pool gives to hosts.",
  check: (model) =>
    model.volumes.demands().flatMap(({ contents, given, full }): Remark[] => {
      if (given === null || full <= given) return [];
      const { pool } = contents.pool;
      const sentence = `Full volumes of ${pool} take ${formatTerabytes(full)} with their snapshots, and hosts have ${formatTerabytes(given)}. Make them smaller or thin, or add capacity.`;
      return [remarkAt(model, "pools", contents.pool, "pool", cutSentence(sentence))];
    }),
};
