import { remarkAt, type Remark, type Rule } from "../../finding";
import { missingPorts } from "../../../plan/model";

export const portWithoutRow: Rule = {
  name: "port-without-row",
  family: "addresses",
  weight: "warn",
  meaning: "Every port of every controller of an array has a row in the Ports table, one for each address family of its site.",
  check: (index) =>
    index.rows("arrays").flatMap((row): Remark[] => {
      const missing = missingPorts(index, row);
      const first = missing[0];
      if (first === undefined) return [];
      const more = missing.length === 1 ? "has" : `and ${missing.length - 1} more have`;
      return [remarkAt(index, "arrays", row, "ports", `Port ${first.controller}/${first.port} of ${row.array} ${more} no row in Ports for ${first.network.row.network}. Choose Assign addresses.`)];
    }),
};
