import type { TableRows } from "../../../../src/planning/plan/schema";
import { modelOf } from "../../../support/plan-model";

const site = "Mill";
const second = { host: "h2", site, address: "10.0.1.8, 10.0.2.8, 10.0.0.8" };
const rows = {
  networks: [
    { network: "d1", site, prefix: "10.0.1.0/24", role: "data" },
    { network: "d2", site, prefix: "10.0.2.0/24", role: "data" },
    { network: "m", site, prefix: "10.0.0.0/24", role: "management" },
  ],
  arrays: [{ array: "a", site, controllers: "A,B" }],
  hosts: [{ host: "h1", site, address: "10.0.1.9" }, second],
  ports: ["A", "B"].flatMap((controller, at) => ["1", "2", "0"].map((net) => ({ array: "a", controller, port: net, network: net === "0" ? "m" : `d${net}`, address: `10.0.${net}.${at + 1}` }))),
} satisfies TableRows;

function pathsOf(more: TableRows = {}): string {
  const { hostPaths, ...model } = modelOf({ ...rows, ...more });
  const array = model.plan.arrays!.rows[0]!;
  return [...hostPaths.to(array).map(({ host, paths }) => `${host.host} ${paths ?? "?"}`), `fewest ${hostPaths.fewestTo(array) ?? "?"}`].join(", ");
}

describe("the paths of the hosts of a site to an array", () => {
  test("are pairs of addresses in one data network, management left out: 1 x 2, and 1 x 2 + 1 x 2", () => {
    expect(pathsOf()).toBe("h1 2, h2 4, fewest 2");
  });

  test("are one for two controllers that share the address of a port", () => {
    expect(pathsOf({ ports: rows.ports.map((port) => ({ ...port, address: port.address.replace(/\d+$/, "1") })) })).toBe("h1 1, h2 2, fewest 1");
  });

  test("are none for a host in management alone, which is known", () => {
    expect(pathsOf({ hosts: [{ host: "h1", site, address: "10.0.0.9" }] })).toBe("h1 0, fewest 0");
  });

  test.each<[string, TableRows]>([
    ["a host without an address", { hosts: [{ host: "h1", site }, second] }],
    ["a host in none of its site's networks", { hosts: [{ host: "h1", site, address: "10.9.0.1" }, second] }],
  ])("are not known of %s, and then no fewest is", (_, more) => {
    expect(pathsOf(more)).toBe("h1 ?, h2 4, fewest ?");
  });

  test.each<[string, TableRows]>([
    ["a network has no role", { networks: rows.networks.map(({ network, prefix }) => ({ network, site, prefix })) }],
    ["a port has no network", { ports: rows.ports.map((port, at) => (at === 0 ? { ...port, network: null } : port)) }],
    ["a port of a shared network has no address", { ports: rows.ports.map((port, at) => (at === 0 ? { ...port, address: null } : port)) }],
    ["an array has no port", { ports: [] }],
  ])("are not known where %s", (_, more) => {
    expect(pathsOf(more)).toBe("h1 ?, h2 ?, fewest ?");
  });

  test("have no fewest without a host", () => {
    expect(pathsOf({ hosts: [] })).toBe("fewest ?");
  });
});

test("in a network that is none of IP, ports count as they are: two of the host, two of the array, four paths", () => {
  const fabric = { network: "f", site, role: "data", kind: "other" } as const;
  const ports = ["A", "B"].map((controller) => ({ array: "a", controller, port: "1", network: "f" }));
  const hostPorts = ["f1", "f2"].map((card) => ({ host: "h1", card, network: "f" }));
  expect(pathsOf({ networks: [fabric], hosts: [{ host: "h1", site }], ports, hostPorts })).toBe("h1 4, fewest 4");
});
