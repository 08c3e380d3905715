import { remarkAt, type Rule } from "../../finding";

export const portWithoutSwitch: Rule = {
  name: "port-without-switch",
  family: "resilience",
  weight: "warn",
  meaning: "Every port is cabled, where its site has switches.",
  check: (index) =>
    index.ports
      .filter(({ row, array }) => row.switch === "" && array !== null && index.rowsWith("switches", "site", array.site).length > 0)
      .map(({ row }) => remarkAt(index, "ports", row, "switch", `Port ${row.controller}${row.controller === "" ? "" : "/"}${row.port} of ${row.array} is cabled to no switch. Write one, or choose Propose cabling.`)),
};
