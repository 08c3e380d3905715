import { gather } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const arrayWithoutData: Rule = {
  name: "array-without-data",
  family: "intent",
  weight: "stop",
  meaning: "An array with planned ports has one in a data network, where its site has data networks.",
  check: (model) =>
    gather(model.rows("arrays"), (array): Remark[] => {
      const ports = model.ports.of(array);
      const data = array.site === "" ? undefined : model.networks.ofSite(array.site).find(({ roles }) => roles.has("data"));
      const mayBeData = ports.some(({ network }) => network === null || network.roles.size === 0 || network.roles.has("data"));
      if (data === undefined || ports.length === 0 || mayBeData) return [];
      return [remarkAt(model, "arrays", array, "ports", `No port of ${array.array} is in a data network, so no host reaches its data. Give it one in ${data.row.network}.`)];
    }),
};
