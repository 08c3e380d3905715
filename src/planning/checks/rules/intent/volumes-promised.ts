import { cutSentence, formatTerabytes } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const volumesPromised: Rule = {
  name: "volumes-promised",
  family: "intent",
  weight: "warn",
  meaning: "Thin volumes promise no more than the setting Promised limit for each byte that their pool gives to hosts, and somebody is told before it is full (Alerts to).",
  check: (model) =>
    model.volumes.demands().flatMap(({ contents: { pool, arrays }, promised, promisedTimes: times }): Remark[] => {
      if (times === null || times <= 1) return [];
      const limit = model.settings.promisedLimit;
      const unheard = arrays.find(({ site }) => model.find("sites", site)?.alertsTo === "");
      if (times <= limit && unheard === undefined) return [];
      const promises = `The volumes of ${pool.pool} promise ${formatTerabytes(promised)}, ${Number(times.toFixed(2))} times what it gives to hosts`;
      const sentence = times > limit ? `${promises}; ${limit} is the limit. Add capacity.` : `${promises}, and nobody is told before it is full. Fill Alerts to of ${unheard!.site}.`;
      return [remarkAt(model, "pools", pool, "pool", cutSentence(sentence))];
    }),
};
