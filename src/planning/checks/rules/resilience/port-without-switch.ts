import { hostPortLabel, portLabel } from "../../../plan/model";
import { remarkAt, type Rule } from "../../finding";

export const portWithoutSwitch: Rule = {
  name: "port-without-switch",
  family: "resilience",
  weight: "warn",
  meaning: "Every port of an array or a host is cabled, where its site has switches.",
  check: (model) => [
    ...model.ports
      .all()
      .filter(({ row, array }) => row.switch === "" && array !== null && model.rowsWith("switches", "site", array.site).length > 0)
      .map(({ row }) => remarkAt(model, "ports", row, "switch", `Port ${portLabel(row)} of ${row.array} is cabled to no switch. Write one, or choose Propose cabling.`)),
    ...model.hostPorts
      .all()
      .filter(({ row, host }) => row.switch === "" && host !== null && model.rowsWith("switches", "site", host.site).length > 0)
      .map(({ row }) => remarkAt(model, "hostPorts", row, "switch", `${hostPortLabel(row)} is cabled to no switch. Write one, or choose Propose cabling.`)),
  ],
};
