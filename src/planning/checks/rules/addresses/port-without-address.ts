import { hostPortLabel, portLabel } from "../../../plan/model";
import { remarkAt, type Rule } from "../../finding";

export const portWithoutAddress: Rule = {
  name: "port-without-address",
  family: "addresses",
  weight: "warn",
  meaning: "Every row of the tables Ports and Host ports has an address.",
  check: (model) => [
    ...model
      .rows("ports")
      .filter(({ address }) => address === "")
      .map((row) => remarkAt(model, "ports", row, "address", `Port ${portLabel(row)} of ${row.array} has no address. Write one, or choose Assign addresses.`)),
    ...model
      .rows("hostPorts")
      .filter(({ address }) => address === "")
      .map((row) => remarkAt(model, "hostPorts", row, "address", `${hostPortLabel(row)} has no address. Write one, or its network and choose Assign addresses.`)),
  ],
};
