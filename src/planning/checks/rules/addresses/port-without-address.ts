import { portLabel } from "../../../plan/model";
import { remarkAt, type Rule } from "../../finding";

export const portWithoutAddress: Rule = {
  name: "port-without-address",
  family: "addresses",
  weight: "warn",
  meaning: "Every row of the Ports table has an address.",
  check: (model) =>
    model
      .rows("ports")
      .filter(({ address }) => address === "")
      .map((row) => remarkAt(model, "ports", row, "address", `Port ${portLabel(row)} of ${row.array} has no address. Write one, or choose Assign addresses.`)),
};
