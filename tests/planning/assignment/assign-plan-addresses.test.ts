import fc from "fast-check";
import { assignPlanAddresses } from "../../../src/planning/assignment";
import { formatAddress, parseControllerNames, parsePortNames, parsePrefix, planPorts } from "../../../src/planning/addressing";
import { checkPlan, rules } from "../../../src/planning/checks";
import type { Changes } from "../../../src/planning/plan/changes";
import { showCell, type WorkbookSnapshot } from "../../../src/sheet";
import { withCell } from "../../support/plain-workbook";
import { cellOf, sample, workbookWith, type EditableRows } from "../../support/plan-rows";

/** Carries changes out as the host does: tables grow, cells are written. */
function carryOut(workbook: WorkbookSnapshot, { writes, growths }: Changes): WorkbookSnapshot {
  const written = writes.reduce((book, { sheet, row, column, value }) => withCell(book, sheet, row, column, value), workbook);
  return {
    sheets: written.sheets.map((one) => ({ ...one, tables: one.tables.map((table) => ({ ...table, area: growths.find((growth) => growth.table === table.name)?.area ?? table.area })) })),
  };
}

function listed(workbook: WorkbookSnapshot): string[] {
  const values = workbook.sheets.find(({ name }) => name === "Ports")!.values;
  return values.slice(4).filter((line) => line[0] !== null).map((line) => line.slice(0, 5).map(showCell).join(" "));
}

function written(rows: EditableRows): string[] {
  const workbook = workbookWith(rows);
  return assignPlanAddresses(workbook).writes.map((write) => `${cellOf(workbook, write)}: ${String(write.value)}`);
}

function assign(rows: EditableRows): string[] {
  const workbook = workbookWith(rows);
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
    const addresses = checkPlan(after, rules.filter(({ family }) => family === "addresses"));
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
    const array = fc.record({ controllers: fc.constantFrom("1", "2", "A,B,C"), ports: fc.constantFrom("1", "3", "x,y"), portSharing: fc.constantFrom("controller", "array", null) });
    fc.assert(
      fc.property(names, fc.array(array, { minLength: 5, maxLength: 5 }), fc.integer({ min: 1, max: 4 }), fc.boolean(), (chosen, shapes, count, v6) => {
        const rows = sample();
        const networks = Array.from({ length: count }, (_, at) => ({ network: `n${at}`, site: "Bindery", prefix: v6 && at % 2 === 1 ? `fd00:0:0:${at}::/64` : `10.9.${at}.0/24`, gateway: "none" }));
        Object.assign(rows, { networks, hosts: [], clusters: [], ports: [], procedures: [], steps: [], arrays: chosen.map((name, at) => ({ array: name, site: "Bindery", ...shapes[at] })) });
        const planned = planPorts(
          chosen.map((name, at) => {
            const { controllers, ports, portSharing } = shapes[at]!;
            return { name, controllers: parseControllerNames(controllers), ports: parsePortNames(ports), sharing: portSharing as "array" | null, row: at + 1 };
          }),
          networks.map(({ network, prefix }, at) => ({ name: network, prefix: parsePrefix(prefix), gateway: null, row: at + 1 })),
        );
        expect(assign(rows)).toEqual(planned.map((one) => `${one.array} ${one.controller} ${one.port} ${one.network.name} ${formatAddress(one.address)}`));
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
