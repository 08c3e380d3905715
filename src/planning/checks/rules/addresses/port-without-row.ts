import { gather, portLabel } from "../../../plan/model";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const portWithoutRow: Rule = {
  name: "port-without-row",
  family: "addresses",
  weight: "warn",
  meaning: "Every port of every controller of an array has a row in the Ports table, one for each address family of its site.",
  check: (model) =>
    gather(model.rows("arrays"), (row): Remark[] => {
      const missing = model.ports.missing(row);
      const first = missing[0];
      if (first === undefined) return [];
      const more = missing.length === 1 ? "has" : `and ${missing.length - 1} more have`;
      const sentence = `Port ${portLabel(first)} of ${row.array} ${more} no row in Ports for ${first.network.row.network}. Choose Assign addresses.`;
      return [remarkAt(model, "arrays", row, "ports", sentence)];
    }),
};
