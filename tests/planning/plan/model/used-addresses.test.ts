import { formatAddress, parseAddress } from "../../../../src/planning/addressing";
import { addressKey, clusterUse, userOf } from "../../../../src/planning/plan/model";
import { modelOf } from "../../../support/plan-model";

const model = modelOf({
  networks: [{ network: "n1", site: "Mill", prefix: "10.1.0.0/24" }, { network: "n2", site: "Yard", prefix: "10.1.0.0/16" }],
  arrays: [{ array: "a1", site: "Mill", portSharing: "array" }, { array: "a2", site: "Mill" }],
  ports: [
    { array: "a1", controller: "A", port: "0", network: "n2", address: "10.9.0.1" },
    { array: "a1", controller: "B", port: "0", address: "10.1.0.1" },
    { array: "a2", controller: "B", port: "0", address: "10.1.0.2" },
    { array: "stray", port: "7", address: "10.1.0.3" },
    { array: "a2", controller: "A", port: "1", address: "10.1" },
    { array: "a2", controller: "A", port: "2" },
  ],
  clusters: [{ cluster: "c1", network: "n1", sharedAddress: "10.1.0.9" }, { cluster: "c2", sharedAddress: "10.1" }, { cluster: "c3", network: "n1" }],
  hosts: [{ host: "h1", site: "Yard", address: "10.1.0.20" }, { host: "h2", address: "10.1.0.21" }, { host: "h3", address: "?" }, { host: "h4" }],
});

describe("the addresses in use", () => {
  test("are those that can be read: of ports, then clusters, then hosts, each with its cell and user", () => {
    expect(model.addresses.all().map((one) => [one.table, one.row.row, one.column, formatAddress(one.address), userOf(one)])).toEqual([
      ["ports", 4, "address", "10.9.0.1", "a1 port A/0"],
      ["ports", 5, "address", "10.1.0.1", "a1 port B/0"],
      ["ports", 6, "address", "10.1.0.2", "a2 port B/0"],
      ["ports", 7, "address", "10.1.0.3", "stray port 7"],
      ["clusters", 4, "sharedAddress", "10.1.0.9", "cluster c1"],
      ["hosts", 4, "address", "10.1.0.20", "host h1"],
      ["hosts", 5, "address", "10.1.0.21", "host h2"],
    ]);
  });

  test("are in the network that the row names, else in the one of the site in which they lie", () => {
    expect(model.addresses.all().map(({ network }) => network?.row.network ?? null)).toEqual(["n2", "n1", "n1", null, "n1", "n2", null]);
  });

  test("have one use where controllers share the address of a port number, and each its own elsewhere", () => {
    const uses = model.addresses.all().map(({ use }) => use);
    expect(uses[0]).toBe(uses[1]);
    expect(new Set(uses).size).toBe(uses.length - 1);
    expect(uses[4]).toBe(clusterUse(model.rows("clusters")[0]!));
  });
});

test("an address has one key a routing table, however it is spelt, and none alike in the other family", () => {
  const key = (text: string, routing = "") => addressKey(parseAddress(text), routing);
  expect(key("fd00:0::01")).toBe(key("FD00::1"));
  const keys = [key("10.0.0.1"), key("10.0.0.2"), key("10.0.0.1", "blue"), key("::10.0.0.1"), key("fd00::1"), key("fd00:0:0:1::1"), key("fd00:1::1"), key("1:fd00::1")];
  expect(new Set(keys).size).toBe(keys.length);
});
