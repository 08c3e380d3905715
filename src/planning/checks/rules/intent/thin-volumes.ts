import { cutSentence, formatTerabytes } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const thinVolumes: Rule = {
  name: "thin-volumes",
  family: "intent",
  weight: "note",
  meaning: "Says of a pool whose volumes promise more than it gives to hosts, within the setting Promised limit, how many times as much.",
  check: (model) =>
    model.volumes.demands().flatMap(({ contents: { pool }, promised, promisedTimes: times }): Remark[] => {
      if (times === null || times <= 1 || times > model.settings.promisedLimit) return [];
      const sentence = `The volumes of ${pool.pool} promise ${formatTerabytes(promised)}, ${Number(times.toFixed(2))} times what it gives to hosts. Watch how far they are filled.`;
      return [remarkAt(model, "pools", pool, "pool", cutSentence(sentence))];
    }),
};
