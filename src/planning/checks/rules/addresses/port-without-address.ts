import { remarkAt, type Rule } from "../../finding";

export const portWithoutAddress: Rule = {
  name: "port-without-address",
  family: "addresses",
  weight: "warn",
  meaning: "Every row of the Ports table has an address.",
  check: (index) =>
    index
      .rows("ports")
      .filter(({ address }) => address === "")
      .map((row) => remarkAt(index, "ports", row, "address", `Port ${row.controller}${row.controller === "" ? "" : "/"}${row.port} of ${row.array} has no address. Write one, or choose Assign addresses.`)),
};
