import fc from "fast-check";
import { assignPlanAddresses } from "../../../src/planning/assignment";
import { formatAddress, parseControllerNames, parsePortNames, parsePrefix, planPorts } from "../../../src/planning/addressing";
import { checkPlan, rules } from "../../../src/planning/checks";
import type { TableRow, TableRows } from "../../../src/planning/plan/schema";
import { showCell, type WorkbookSnapshot } from "../../../src/sheet";
import { problemOf } from "../../support/sentence";
import { carryOut } from "../../support/plan-changes";
import { planWorkbook } from "../../support/commissioning-plan";
import { cellOf, sample, workbookWith, type EditableRows } from "../../support/plan-rows";

function listed(workbook: WorkbookSnapshot): string[] {
  const values = workbook.sheets.find(({ name }) => name === "Ports")!.values;
  return values.slice(4).filter((line) => line[0] !== null).map((line) => line.slice(0, 5).map(showCell).join(" "));
}

function written(rows: EditableRows): string[] {
  const workbook = workbookWith(rows);
  return assignPlanAddresses(workbook).writes.map((write) => `${cellOf(workbook, write)}: ${String(write.value)}`);
}

function assign(rows: EditableRows | WorkbookSnapshot): string[] {
  const workbook = "jobs" in rows ? workbookWith(rows) : rows;
  return listed(carryOut(workbook, assignPlanAddresses(workbook)));
}

describe("assigning addresses", () => {
  test("changes nothing where every port and cluster has one", () => {
    expect(assignPlanAddresses(workbookWith(sample()))).toEqual({ writes: [], growths: [] });
  });

  test("fills an empty Ports table with the addresses that the sample has", () => {
    const rows = sample();
    const expected = rows.ports.map((row) => [row.array, row.controller, row.port, row.network, row.address].join(" "));
    rows.ports = [];
    expect(assign(rows)).toEqual(expected);
  });

  test("leaves a plan about whose addresses nothing is said", () => {
    const rows = sample();
    rows.ports = [];
    for (const cluster of rows.clusters) cluster.sharedAddress = null;
    const workbook = workbookWith(rows);
    const after = carryOut(workbook, assignPlanAddresses(workbook));
    const addresses = checkPlan(after, rules.filter(({ family }) => family === "addresses"), "2026-06-01");
    expect(addresses.map((finding) => `${finding.rule} ${cellOf(after, finding)}`)).toEqual([]);
  });

  test("gives clusters the lowest address left after the ports", () => {
    const rows = sample();
    for (const cluster of rows.clusters) cluster.sharedAddress = null;
    expect(written(rows)).toEqual(["Clusters 5 Shared address: 10.64.0.20", "Clusters 6 Shared address: 10.64.0.21"]);
  });

  test("moves nothing that stands, and fills the lowest gap", () => {
    const rows = sample();
    rows.ports[1]!.address = "10.64.12.200";
    rows.ports[4]!.address = null;
    expect(written(rows)).toEqual(["Ports 9 Address: 10.64.12.1"]);
  });

  test("gives a row that names another network than its turn an address of that", () => {
    const rows = sample();
    Object.assign(rows.ports[1]!, { network: "mgmt", address: null });
    expect(written(rows)).toEqual(["Ports 6 Address: 10.64.0.20"]);
  });

  test("gives the controllers of an array that shares its addresses one address a port number", () => {
    const rows = sample();
    for (const row of rows.ports.slice(24, 36)) row.address = null;
    const shared = assign(rows).slice(24, 36).map((line) => line.split(" "));
    const byPort = new Map<string, Set<string>>();
    for (const [, , port, network, address] of shared) byPort.set(`${port} ${network}`, (byPort.get(`${port} ${network}`) ?? new Set()).add(address!));
    expect([...byPort.values()].map(({ size }) => size)).toEqual([1, 1, 1, 1, 1, 1]);
  });

  test("passes over gateways, what is kept back, hosts and shared addresses", () => {
    const rows = sample();
    rows.networks[0] = { ...rows.networks[0]!, gateway: "10.64.11.1", reserved: "10.64.11.2-10.64.11.3" };
    rows.hosts[0]!.address = "10.64.11.4";
    rows.clusters[0] = { ...rows.clusters[0]!, network: "rr-data-1", sharedAddress: "10.64.11.5" };
    rows.ports = [];
    expect(assign(rows)[0]).toBe("rr-array-1 A 0 rr-data-1 10.64.11.6");
  });

  test("agrees with PORTPLAN on plans of one site", () => {
    const names = fc.uniqueArray(fc.constantFrom("a1", "a2", "a3", "a4", "a5"), { minLength: 1 });
    const array = fc.record({
      controllers: fc.constantFrom("1", "2", "A,B,C"), ports: fc.constantFrom("1", "3", "x,y"), portSharing: fc.constantFrom("controller" as const, "array" as const, null),
    });
    fc.assert(
      fc.property(names, fc.array(array, { minLength: 5, maxLength: 5 }), fc.integer({ min: 1, max: 4 }), fc.boolean(), (chosen, shapes, count, v6) => {
        const networks = Array.from({ length: count }, (_, at) => {
          const prefix = v6 && at % 2 === 1 ? `fd00:0:0:${at}::/64` : `10.9.${at}.0/24`;
          return { network: `n${at}`, site: "Bindery", prefix, gateway: "none" };
        });
        const arrays = chosen.map((name, at) => ({ array: name, site: "Bindery", ...shapes[at] }));
        const planned = planPorts(
          chosen.map((name, at) => {
            const { controllers, ports, portSharing } = shapes[at]!;
            return { name, controllers: parseControllerNames(controllers), ports: parsePortNames(ports), sharing: portSharing, row: at + 1 };
          }),
          networks.map(({ network, prefix }, at) => ({ name: network, prefix: parsePrefix(prefix), gateway: null, row: at + 1 })),
        );
        expect(assign(planWorkbook({ networks, arrays }))).toEqual(planned.map((one) => `${one.array} ${one.controller} ${one.port} ${one.network.name} ${formatAddress(one.address)}`));
      }),
      { seed: 6, numRuns: 100 },
    );
  });
});

describe("assigning addresses refuses", () => {
  const refusal = (change: (rows: EditableRows) => void): string => {
    const rows = sample();
    change(rows);
    try {
      assignPlanAddresses(workbookWith(rows));
    } catch (thrown) {
      return (thrown as Error).message;
    }
    return "";
  };

  test("a network that is full, and says for whom", () => {
    const sentence = refusal((rows) => {
      rows.ports = [];
      Object.assign(rows.networks[1]!, { prefix: "10.64.12.0/30", reserved: null });
    });
    expect(sentence).toBe("Network rr-data-2 (10.64.12.0/30) has no address left for rr-array-2 port A/1. Give it a larger prefix.");
  });

  test.each([
    ["an address that cannot be read", (rows: EditableRows) => (rows.ports[3]!.address = "10.64.11"), "Ports row 8 address"],
    ["a prefix with host bits set", (rows: EditableRows) => (rows.networks[0]!.prefix = "10.64.11.1/24"), "Networks row 5 prefix"],
    ["a reserved range that runs backwards", (rows: EditableRows) => (rows.networks[0]!.reserved = "10.64.11.9-10.64.11.2"), "Networks row 5 reserved"],
  ])("%s", (_, change, place) => {
    expect(refusal(change)).toContain(place);
  });

  test("a workbook without the tables", () => {
    expect(() => assignPlanAddresses({ sheets: [] })).toThrow("no table Arrays");
  });
});

describe("assigning addresses in a small plan", () => {
  const network = { network: "n", site: "Mill", prefix: "10.1.0.0/28" };
  const array = { array: "a", site: "Mill", controllers: "1", ports: "2" };

  function changes(rows: TableRows): string[] {
    const workbook = planWorkbook(rows);
    return assignPlanAddresses(workbook).writes.map((write) => `${cellOf(workbook, write)}: ${showCell(write.value)}`);
  }
  /** Addresses that are handed out, in the order of the rows. */
  const addresses = (rows: TableRows): string[] => changes(rows).flatMap((text) => /ddress: (.*)$/.exec(text)?.[1] ?? []);

  test("makes a row for every port that has none, in the order of arrays and ports, with all that is known of it", () => {
    const rows: TableRows = {
      networks: [network, { ...network, network: "m", prefix: "10.2.0.0/28" }],
      arrays: [{ ...array, ports: "1" }, { ...array, array: "b", ports: "1" }], ports: [{ array: "a", controller: "A", port: "0" }],
    };
    expect(changes(rows)).toEqual([
      "Ports 5 Address: 10.1.0.1", "Ports 5 Network: n",
      "Ports 6 Array: b", "Ports 6 Controller: A", "Ports 6 Port: 0", "Ports 6 Network: n", "Ports 6 Address: 10.1.0.2",
    ]);
  });

  test("leaves the network of a row that names one, even one that cannot be read", () => {
    const rows: TableRows = { networks: [network, { network: "broken", site: "Mill" }], arrays: [{ ...array, ports: "1" }], ports: [{ array: "a", controller: "A", port: "0", network: "broken" }] };
    expect(changes(rows)).toEqual(["Ports 5 Address: 10.1.0.1"]);
  });

  test.each<[string, TableRow<"networks">, TableRows, readonly string[]]>([
    ["the gateway", { gateway: "10.1.0.1" }, {}, ["10.1.0.2", "10.1.0.3"]],
    ["a gateway elsewhere", { gateway: "none" }, {}, ["10.1.0.1", "10.1.0.2"]],
    ["what is kept back, of the same family", { reserved: "fd00::1, 10.1.0.0/30" }, {}, ["10.1.0.4", "10.1.0.5"]],
    ["a host of the site", {}, { hosts: [{ host: "h", site: "Mill", address: "10.1.0.2" }] }, ["10.1.0.1", "10.1.0.3"]],
    ["a shared address", {}, { clusters: [{ cluster: "c", network: "n", sharedAddress: "10.1.0.1" }] }, ["10.1.0.2", "10.1.0.3"]],
    ["a shared address of the other family", {}, { clusters: [{ cluster: "c", network: "n", sharedAddress: "fd00::1" }] }, ["10.1.0.1", "10.1.0.2"]],
    ["a port of another array", {}, { ports: [{ array: "other", port: "0", network: "n", address: "10.1.0.1" }] }, ["10.1.0.2", "10.1.0.3"]],
    ["an IPv6 gateway", { prefix: "fd00::/64", gateway: "fd00::1" }, {}, ["fd00::2", "fd00::3"]],
    ["a gateway of the other family", { gateway: "fd00::1" }, {}, ["10.1.0.1", "10.1.0.2"]],
  ])("passes over %s", (_, own, more, expected) => {
    expect(addresses({ networks: [{ ...network, ...own }], arrays: [array], ...more })).toEqual(expected);
  });

  test("gives a shared port number the address that one of its controllers has already", () => {
    const rows: TableRows = {
      networks: [network], arrays: [{ ...array, controllers: "2", portSharing: "array" }],
      ports: [{ array: "a", controller: "B", port: "1", network: "n", address: "10.1.0.9" }],
    };
    expect(addresses(rows)).toEqual(["10.1.0.1", "10.1.0.9", "10.1.0.1"]);
  });

  test("gives each controller its own address where the array says nothing of sharing", () => {
    expect(addresses({ networks: [network], arrays: [{ ...array, controllers: "2", ports: "1" }] })).toEqual(["10.1.0.1", "10.1.0.2"]);
  });

  test("gives clusters theirs after all ports, and none without a network that can be read", () => {
    const rows: TableRows = {
      networks: [network, { network: "open" }], arrays: [array],
      clusters: [{ cluster: "c", network: "N" }, { cluster: "d" }, { cluster: "e", network: "open" }, { cluster: "f", network: "n" }],
    };
    expect(changes(rows).filter((text) => text.startsWith("Clusters"))).toEqual(["Clusters 5 Shared address: 10.1.0.3", "Clusters 8 Shared address: 10.1.0.4"]);
  });

  test.each<[string, TableRows, string]>([
    ["for whom: a port", { arrays: [{ ...array, ports: "3" }] }, "a port A/2"],
    ["for whom: a cluster", { arrays: [array], clusters: [{ cluster: "c", network: "n" }] }, "cluster c"],
  ])("says that a network is full, and %s", (_, more, who) => {
    expect(problemOf(() => changes({ networks: [{ ...network, prefix: "10.1.0.0/30" }], ...more }))).toMatchObject({
      kind: "no-answer", argument: "Networks", received: "n", sentence: `Network n (10.1.0.0/30) has no address left for ${who}. Give it a larger prefix.`,
    });
  });

  test.each<[string, TableRows]>([
    ["Networks row 5 prefix", { networks: [{ network: "n", prefix: "10.1" }] }],
    ["Networks row 5 gateway", { networks: [{ network: "n", gateway: "10.1" }] }],
    ["Networks row 5 reserved", { networks: [{ network: "n", reserved: "10.1" }] }],
    ["Ports row 5 address", { ports: [{ array: "a", address: "10.1" }] }],
    ["Clusters row 5 shared address", { clusters: [{ cluster: "c", sharedAddress: "10.1" }] }],
    ["Hosts row 5 address", { hosts: [{ host: "h", address: "10.1" }] }],
  ])("refuses %s that cannot be read, before anything is written", (argument, rows) => {
    expect(problemOf(() => changes(rows))).toMatchObject({ kind: "invalid", argument });
  });

  test("takes cells that may stay blank, and a gateway of none, for read", () => {
    expect(changes({ networks: [{ network: "n", gateway: "none" }, { network: "m" }], ports: [{ array: "a" }], clusters: [{ cluster: "c" }], hosts: [{ host: "h" }] })).toEqual([]);
  });
});

describe("addresses by intent", () => {
  const site = "Mill";
  const plan = (networks: TableRow<"networks">[], more: TableRows = {}): WorkbookSnapshot =>
    planWorkbook({ sites: [{ site }], networks: networks.map((one) => ({ site, ...one })), arrays: [{ array: "a", site, controllers: "A,B", ports: "2" }], ports: [], ...more });
  const net = (network: string, at: number, role: string, side: "A" | "B" | null = null): TableRow<"networks"> => ({ network, prefix: `10.1.${at}.0/24`, gateway: "none", role, side });

  test("gives data networks first, side A before B, wherever management stands", () => {
    const networks = [net("mgmt", 0, "management"), net("data-2", 2, "data", "B"), net("data-1", 1, "data", "A")];
    expect(assign(plan(networks)).map((line) => line.split(" ").slice(1, 4).join(" "))).toEqual(["A 0 data-1", "A 1 data-2", "B 0 data-1", "B 1 data-2"]);
  });

  test("keeps the order of the rows where no role is named", () => {
    expect(assign(plan([{ ...net("mgmt", 0, ""), role: null }, { ...net("data-1", 1, ""), role: null }])).map((line) => line.split(" ")[3])).toEqual(["mgmt", "data-1", "mgmt", "data-1"]);
  });

  test("hands out no server, receiver of alerts, gateway of another row, host or address of a port in whatever network its row names", () => {
    const workbook = plan([net("mgmt", 0, "management"), { network: "far", prefix: "10.9.0.0/24", gateway: "10.1.0.6", site: "Barn" }], {
      sites: [{ site, timeServers: "10.1.0.1, time.example", nameServers: "10.1.0.2", alertsTo: "10.1.0.3" }],
      hosts: [{ host: "h", site, address: "10.8.0.1, 10.1.0.4" }],
      arrays: [{ array: "a", site, controllers: "A", ports: "1" }, { array: "b", site: "Barn" }],
      ports: [{ array: "b", controller: "A", port: "0", network: "far", address: "10.1.0.5" }],
    });
    expect(assign(workbook).at(-1)).toBe("a A 0 mgmt 10.1.0.7");
  });

  test("hands out what another routing table uses", () => {
    const workbook = plan([{ ...net("mgmt", 0, "management"), routing: "own" }], {
      sites: [{ site: "Barn", timeServers: "10.1.0.1" }, { site }], arrays: [{ array: "a", site, controllers: "A", ports: "1" }],
    });
    expect(assign(workbook)).toEqual(["a A 0 mgmt 10.1.0.1"]);
  });

  test("writes the MTU of the network beside the address, where the network says one and the row none", () => {
    const rows = sample();
    const [first, second] = rows.ports.slice(0, 2);
    Object.assign(first!, { address: null, mtu: null });
    Object.assign(second!, { address: null, mtu: 1400 });
    expect(written(rows)).toEqual(["Ports 5 Address: 10.64.11.1", "Ports 5 MTU: 9000", "Ports 6 Address: 10.64.12.1"]);
    rows.networks[0]!.mtu = null;
    expect(written(rows)).toEqual(["Ports 5 Address: 10.64.11.1", "Ports 6 Address: 10.64.12.1"]);
  });
});

test("gives a host port that names its network the lowest free address of it, and leaves one that has an address or no network", () => {
  const workbook = planWorkbook({
    networks: [{ network: "d", site: "Mill", prefix: "10.0.1.0/24", gateway: "10.0.1.1", role: "data" }],
    hosts: [{ host: "h", site: "Mill", address: "10.0.1.2" }],
    hostPorts: [{ host: "h", card: "1", network: "d" }, { host: "h", card: "2", network: "d", address: "10.0.1.3" }, { host: "h", card: "3" }],
  });
  expect(assignPlanAddresses(workbook).writes.map(({ sheet, row, value }) => `${sheet} ${row + 1} ${String(value)}`)).toEqual(["Host ports 5 10.0.1.4"]);
});

test("refuses an address of a host port that cannot be read, as it might be given away again", () => {
  const workbook = planWorkbook({ hosts: [{ host: "h" }], hostPorts: [{ host: "h", address: "10.0.1" }] });
  expect(() => assignPlanAddresses(workbook)).toThrow("Host ports row 5 address");
});

test("gives a port of a network that is none of IP its row, and no address or MTU", () => {
  const site = "Mill";
  const workbook = planWorkbook({
    networks: [{ network: "f", site, role: "data", kind: "other", prefix: "no prefix", gateway: "no gateway", mtu: 2112, reserved: "x" },
      { network: "m", site, prefix: "10.0.0.0/24", role: "management" }],
    arrays: [{ array: "a", site, controllers: "A", ports: "0,1" }], hosts: [{ host: "h", site }], hostPorts: [{ host: "h", card: "f1", network: "f" }], ports: [],
  });
  const after = carryOut(workbook, assignPlanAddresses(workbook));
  expect(after.sheets.find(({ name }) => name === "Ports")!.values.slice(4)).toEqual([["a", "A", "0", "f"], ["a", "A", "1", "m", "10.0.0.1"]]);
  expect(assignPlanAddresses(after)).toEqual({ writes: [], growths: [] });
});
