import { hostPortLabel, portLabel } from "../../../plan/model";
import { remarkAt, type Rule } from "../../finding";

export const portWithoutAddress: Rule = {
  name: "port-without-address",
  family: "addresses",
  weight: "warn",
  meaning: "Every row of the tables Ports and Host ports has an address, but for those in a network of another kind than IP.",
  check: (model) => [
    ...model.ports
      .all()
      .filter(({ row, network }) => row.address === "" && network?.isIp !== false)
      .map(({ row }) => remarkAt(model, "ports", row, "address", `Port ${portLabel(row)} of ${row.array} has no address. Write one, or choose Assign addresses.`)),
    ...model.hostPorts
      .all()
      .filter(({ row, network }) => row.address === "" && network?.isIp !== false)
      .map(({ row }) => remarkAt(model, "hostPorts", row, "address", `${hostPortLabel(row)} has no address. Write one, or its network and choose Assign addresses.`)),
  ],
};
