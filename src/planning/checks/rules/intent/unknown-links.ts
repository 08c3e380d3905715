import { remarkAt, type Remark, type Rule } from "../../finding";

export const unknownLinks: Rule = {
  name: "unknown-links",
  family: "intent",
  weight: "warn",
  meaning: "Links says how hosts are cabled, where the plan has hosts and switches: without it nothing is known of their paths, single points included.",
  check: (model) => {
    // Where some links stand, each host without one is told of by a rule of its own.
    if (model.rows("links").length > 0) return [];
    return [...model.groupBy("hosts", "site")].flatMap(([site, hosts]): Remark[] => {
      const [first, ...more] = hosts;
      if (first === undefined || model.rowsWith("switches", "site", site).length === 0) return [];
      const who = more.length === 0 ? first.host : `${first.host} and ${more.length} more`;
      return [remarkAt(model, "hosts", first, "host", `How ${who} ${more.length === 0 ? "is" : "are"} cabled is not known, so single points are not looked for. Fill Links.`)];
    });
  },
};
