import { andMore, cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const unknownLinks: Rule = {
  name: "unknown-links",
  family: "intent",
  weight: "warn",
  meaning: "Links or Host ports says how hosts are cabled, at every site with hosts and switches: without it nothing is known of their paths, single points included.",
  check: (model) =>
    [...model.groupBy("hosts", "site")].flatMap(([site, hosts]): Remark[] => {
      const [first, ...more] = hosts.filter(({ host }) => host !== "");
      // Where some host of the site has links, one without is told of by a rule of its own.
      if (first === undefined || model.rowsWith("switches", "site", site).length === 0 || hosts.some((host) => model.paths.switchesOf(host).length > 0)) return [];
      const who = andMore(first.host, more.length);
      const sentence = `How ${who} ${more.length === 0 ? "is" : "are"} cabled is not known, so single points are not looked for. Fill Links or Host ports.`;
      return [remarkAt(model, "hosts", first, "host", cutSentence(sentence))];
    }),
};
