import fc from "fast-check";
import { formatAddress } from "../../../../src/planning/addressing";
import type { TableRow, TableRows } from "../../../../src/planning/plan/schema";
import { modelOf } from "../../../support/plan-model";

const site = "Mill";
const rows = {
  networks: [
    { network: "d1", site, prefix: "10.0.1.0/24", role: "data", side: "A" },
    { network: "d2", site, prefix: "10.0.2.0/24", role: "data", side: "B" },
    { network: "m", site, prefix: "10.0.0.0/24", role: "management" },
  ],
  switches: [{ switch: "s1", site, networks: "d1, m" }, { switch: "s2", site, networks: "d2, m" }],
  arrays: [{ array: "a", site, controllers: "A,B", ports: "1,2" }],
  hosts: [{ host: "h", site, address: "10.0.1.9", initiatorName: "iqn.2024-05.example.mill:h" }],
  ports: ["A", "B"].flatMap((controller, at) => ["1", "2"].map((net) => ({ array: "a", controller, port: net, network: `d${net}`, address: `10.0.${net}.${at + 1}` }))),
} satisfies TableRows;

function paths(hostPorts: readonly TableRow<"hostPorts">[], more: TableRows = {}): number | null {
  const model = modelOf({ ...rows, ...more, hostPorts });
  return model.hostPaths.to(model.rows("arrays")[0]!)[0]!.paths;
}

function switches(hostPorts: readonly TableRow<"hostPorts">[], links: readonly TableRow<"links">[] = []): readonly string[] {
  const model = modelOf({ ...rows, hostPorts, links });
  return model.paths.switchesOf(model.rows("hosts")[0]!);
}

describe("the ports of a host", () => {
  test("count for its paths in the place of the addresses in Hosts: 1 x 2, with two of them 1 x 2 + 1 x 2", () => {
    expect(paths([])).toBe(2);
    expect(paths([{ host: "H", card: "1", address: "10.0.1.9" }, { host: "h", card: "2", network: "d2", address: "10.0.2.9" }])).toBe(4);
    expect(paths([{ host: "h", network: "m", address: "10.0.0.9" }])).toBe(0);
  });

  test("leave the paths unknown where one of a data network, or of none, has no address; one in management may lack it", () => {
    const first = { host: "h", network: "d1", address: "10.0.1.9" };
    expect(paths([first, { host: "h", network: "d2" }])).toBeNull();
    expect(paths([first, { host: "h" }])).toBeNull();
    expect(paths([first, { host: "h", network: "m" }])).toBe(2);
  });

  test("are as many paths as the shorthand of the same addresses", () => {
    const some = fc.uniqueArray(fc.constantFrom("10.0.1.9", "10.0.1.10", "10.0.2.9", "10.0.0.9"), { minLength: 1 });
    fc.assert(fc.property(some, (addresses) => {
      const shorthand = paths([], { hosts: [{ host: "h", site, address: addresses.join(", ") }] });
      expect(paths(addresses.map((address) => ({ host: "h", address })))).toBe(shorthand);
    }));
  });

  test("say the switches of the host, one a cable: rows of one card share it, one in management carries no path", () => {
    const c1 = { host: "h", card: "1", network: "d1", switch: "s1" };
    expect(switches([c1, { ...c1, card: "1" }])).toEqual(["s1"]);
    expect(switches([c1, { ...c1, card: "2" }])).toEqual(["s1", "s1"]);
    expect(switches([c1, { host: "h", card: "3", network: "m", switch: "s2" }])).toEqual(["s1"]);
  });

  test("say the switches in the place of Links as soon as one is cabled, and not before", () => {
    const links = [{ from: "h", to: "s1" }, { from: "s2", to: "h" }];
    expect(switches([{ host: "h", card: "1", network: "d1" }], links)).toEqual(["s1", "s2"]);
    expect(switches([{ host: "h", card: "1", network: "d1", switch: "s1" }], links)).toEqual(["s1"]);
  });

  test("use their addresses, and those that only Hosts has are in use all the same", () => {
    const model = modelOf({ ...rows, ports: [], hostPorts: [{ host: "h", address: "10.0.2.9" }, { host: "nobody", address: "10.0.2.8" }] });
    expect(model.addresses.all().map(({ table, address, network }) => `${table} ${formatAddress(address)} ${network?.row.network ?? "-"}`)).toEqual([
      "hostPorts 10.0.2.9 d2", "hostPorts 10.0.2.8 -", "hosts 10.0.1.9 d1",
    ]);
  });

  test("have initiator names of their own, each once, before that of the host", () => {
    const model = modelOf({ ...rows, hostPorts: ["b", "B", ""].map((initiatorName) => ({ host: "h", initiatorName })) });
    expect(model.hostPorts.initiatorNamesOf(model.rows("hosts")[0]!)).toEqual(["b", "iqn.2024-05.example.mill:h"]);
  });
});
