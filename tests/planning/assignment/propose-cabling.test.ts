import fc from "fast-check";
import { proposeCabling } from "../../../src/planning/assignment";
import { checkPlan, rules } from "../../../src/planning/checks";
import { readPlan, rowsOf } from "../../../src/planning/plan/read";
import type { WorkbookSnapshot } from "../../../src/sheet";
import type { TableRow, TableRows } from "../../../src/planning/plan/schema";
import { planWorkbook } from "../../support/commissioning-plan";
import { withCell } from "../../support/plain-workbook";
import { cellOf, sample, workbookWith, type EditableRows } from "../../support/plan-rows";

function cabled(rows: EditableRows | WorkbookSnapshot): WorkbookSnapshot {
  const workbook = "jobs" in rows ? workbookWith(rows) : rows;
  return proposeCabling(workbook).writes.reduce((book, { sheet, row, column, value }) => withCell(book, sheet, row, column, value), workbook);
}

function written(rows: EditableRows): string[] {
  const workbook = workbookWith(rows);
  return proposeCabling(workbook).writes.map((write) => `${cellOf(workbook, write)}: ${String(write.value)}`);
}

function uncabled(): EditableRows {
  const rows = sample();
  for (const row of rows.ports) Object.assign(row, { switch: null, switchPort: null });
  return rows;
}

describe("proposing cables", () => {
  test("changes nothing where every port is cabled", () => {
    expect(written(sample())).toEqual([]);
  });

  test("cables the whole sample so that no rule has anything to say", () => {
    const findings = checkPlan(cabled(uncabled()), rules, "2026-06-01").filter(({ weight }) => weight !== "note");
    expect(findings.map(({ rule }) => rule)).toEqual([]);
  });

  test("crosses the two controllers: the same port of each goes to another switch where both carry its network", () => {
    const ports = rowsOf(readPlan(cabled(uncabled())), "ports").filter(({ array }) => array === "rr-array-1");
    const to = (controller: string, port: string): string => ports.find((row) => row.controller === controller && row.port === port)!.switch;
    for (const port of ["0", "1", "2"]) expect(new Set([to("A", port), to("B", port)])).toEqual(new Set(["rr-sw1", "rr-sw2"]));
  });

  test("gives both addresses of a dual-stack port one cable", () => {
    const ports = rowsOf(readPlan(cabled(uncabled())), "ports").filter(({ array, controller, port }) => array === "cs-array-1" && controller === "A" && port === "0");
    expect(ports).toHaveLength(2);
    expect(new Set(ports.map((row) => `${row.switch} ${row.switchPort}`)).size).toBe(1);
  });

  test("leaves what stands, and takes the lowest free port of a switch", () => {
    const rows = sample();
    Object.assign(rows.ports[1]!, { switch: null, switchPort: null });
    Object.assign(rows.ports[3]!, { switchPort: null });
    expect(written(rows)).toEqual(["Ports 6 Switch: rr-sw2", "Ports 6 Switch port: 1", "Ports 8 Switch port: 2"]);
  });

  test("names no port of a switch whose ports are not numbers", () => {
    const rows = sample();
    Object.assign(rows.switches[1]!, { ports: null, keptPorts: null });
    rows.ports[3]!.switchPort = "1/2";
    Object.assign(rows.ports[1]!, { switch: null, switchPort: null });
    expect(written(rows)).toEqual(["Ports 6 Switch: rr-sw2"]);
  });

  test("leaves a port open whose network no switch of the site carries", () => {
    const rows = uncabled();
    for (const row of rows.switches) if (row.site === "Bindery") row.networks = "bi-data-1, mgmt";
    const open = rowsOf(readPlan(cabled(rows)), "ports").filter((row) => row.switch === "");
    expect(new Set(open.map(({ network }) => network))).toEqual(new Set(["bi-data-2"]));
  });

  test("never cables against a network, and reaches two switches with every controller that can", () => {
    const carried = fc.array(fc.subarray(["n0", "n1", "n2"]), { minLength: 2, maxLength: 4 });
    const networks = fc.array(fc.constantFrom("n0", "n1", "n2"), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(carried, networks, networks, (switches, portsOfA, portsOfB) => {
        const plugs = [...portsOfA.map((network, port) => ({ controller: "A", port, network })), ...portsOfB.map((network, port) => ({ controller: "B", port, network }))];
        const workbook = planWorkbook({
          arrays: [{ array: "a", site: "Bindery", controllers: "A,B", ports: "5" }],
          switches: switches.map((names, at) => ({ switch: `sw${at}`, site: "Bindery", networks: names.join(", ") })),
          ports: plugs.map((plug) => ({ array: "a", ...plug, port: String(plug.port) })),
        });
        const done = rowsOf(readPlan(cabled(workbook)), "ports");
        const choices = (network: string): number[] => switches.flatMap((names, at) => (names.includes(network) ? [at] : []));
        for (const row of done) {
          if (row.switch === "") expect(choices(row.network)).toEqual([]);
          else expect(choices(row.network).map((at) => `sw${at}`)).toContain(row.switch);
        }
        for (const controller of ["A", "B"]) {
          const own = done.filter((row) => row.controller === controller && row.switch !== "");
          // Two switches can be reached when two cables may go to different ones: by trying every pair.
          const can = own.some((one, at) => own.some((other, place) => place > at && choices(one.network).some((x) => choices(other.network).some((y) => x !== y))));
          expect(new Set(own.map((row) => row.switch)).size > 1).toBe(can);
        }
      }),
      { seed: 6, numRuns: 300 },
    );
  });

  test("refuses a workbook without switches", () => {
    const { sheets } = workbookWith(sample());
    expect(() => proposeCabling({ sheets: sheets.filter(({ name }) => name !== "Switches") })).toThrow("no table Switches");
  });
});

describe("proposing cables in a small plan", () => {
  const site = { site: "Mill" };
  const sw = (name: string, networks = "n, m"): TableRow<"switches"> => ({ switch: name, ...site, networks });
  /** Ports of array a, written `A0 n`, or `A0 n s1 7` where the cable stands. */
  const port = (text: string): TableRow<"ports"> => {
    const [name = "", network = "", to = "", at = ""] = text.split(" ");
    return { array: "a", controller: name[0] ?? "", port: name.slice(1), network, switch: to, switchPort: at };
  };

  function cables(switches: TableRows["switches"], ...texts: string[]): string[] {
    const workbook = planWorkbook({ arrays: [{ array: "a", ...site }], switches, ports: texts.map(port) });
    const done = proposeCabling(workbook).writes.reduce((book, { sheet, row, column, value }) => withCell(book, sheet, row, column, value), workbook);
    return rowsOf(readPlan(done), "ports").map((row) => `${row.controller}${row.port} ${row.switch} ${row.switchPort}`.trim());
  }

  test("takes the switch with the fewest cables, the first of two alike, and its lowest free port", () => {
    expect(cables([sw("s1"), sw("s2")], "A0 n")).toEqual(["A0 s1 1"]);
    expect(cables([sw("s1"), sw("s2")], "A0 n", "B1 n", "A2 n")).toEqual(["A0 s1 1", "B1 s2 1", "A2 s2 2"]);
  });

  test("counts the cables of arrays before, and those that stand", () => {
    const workbook = planWorkbook({
      arrays: [{ array: "a", ...site }, { array: "b", ...site }], switches: [sw("s1"), sw("s2")],
      ports: [port("A0 n"), { ...port("A0 n"), array: "b" }, { ...port("A5 n s2 9"), array: "b" }],
    });
    expect(proposeCabling(workbook).writes.map(({ row, value }) => [row, value])).toEqual([[4, "s1"], [4, "1"], [5, "s1"], [5, "2"]]);
  });

  /** Names the switch that each open port gets, array by array. */
  function chosen(arrays: Readonly<Record<string, readonly string[]>>): string[] {
    const names = Object.keys(arrays);
    const ports = names.flatMap((array) => arrays[array]!.map((text) => ({ ...port(text), array })));
    const workbook = planWorkbook({ arrays: names.map((array) => ({ array, ...site })), switches: [sw("s1"), sw("s2")], ports });
    return proposeCabling(workbook).writes.flatMap(({ value }) => (value === "s1" || value === "s2" ? [value] : []));
  }

  test("counts each cable that stands once", () => {
    expect(chosen({ a: ["A0 n s1 1"], b: ["A0 n"], c: ["A0 n"] })).toEqual(["s2", "s1"]);
  });

  test("counts a cable that was moved where it went, and no longer where it was", () => {
    // Array a ends with three cables on s1 and one on s2, after its A0 was moved from s2 to s1.
    const moved = ["B0 n s1 1", "B1 n s1 2", "A0 n", "A1 n"];
    expect(chosen({ a: moved, b: ["A5 n s2 5", "B7 n"] })).toEqual(["s1", "s2", "s2"]);
    expect(chosen({ a: moved, b: ["A5 n s2 5", "A6 n s2 6", "B7 n"] })).toEqual(["s1", "s2", "s1"]);
  });

  test("sends the same port of two controllers to different switches before it counts cables", () => {
    expect(cables([sw("s1"), sw("s2")], "A0 n", "B0 n", "A1 m", "B1 m")).toEqual(["A0 s1 1", "B0 s2 1", "A1 s2 2", "B1 s1 2"]);
    expect(cables([sw("s1"), sw("s2")], "A0 n s1 5", "B0 n", "A1 n")).toEqual(["A0 s1 5", "B0 s2 1", "A1 s2 2"]);
  });

  test("spreads the cables of a controller before it counts those of all", () => {
    expect(cables([sw("s1"), sw("s2")], "A0 n s1 1", "B5 n s2 1", "B6 n s2 2", "A1 n")).toEqual(["A0 s1 1", "B5 s2 1", "B6 s2 2", "A1 s2 3"]);
  });

  test("lays the cables with the least choice first", () => {
    expect(cables([sw("s1", "n, m"), sw("s2", "n")], "A0 n", "A1 m")).toEqual(["A0 s2 1", "A1 s1 1"]);
    expect(cables([sw("s1", "n, m"), sw("s2", "n")], "A0 n", "B1 m")).toEqual(["A0 s2 1", "B1 s1 1"]);
  });

  test("moves a cable whose controller would reach one switch only, even onto the switch of the other's same port", () => {
    expect(cables([sw("s1", "n"), sw("s2", "n, m")], "A0 n", "B0 m", "A1 m")).toEqual(["A0 s1 1", "B0 s2 1", "A1 s2 2"]);
    expect(cables([sw("s1", "n"), sw("s2", "n, m")], "B0 m", "A0 n s2 7", "A1 n")).toEqual(["B0 s2 1", "A0 s2 7", "A1 s1 1"]);
    expect(cables([sw("s1"), sw("s2")], "B0 n s1 1", "B1 n s1 2", "A0 n", "A1 n")).toEqual(["B0 s1 1", "B1 s1 2", "A0 s1 3", "A1 s2 1"]);
  });

  test("leaves a controller of one cable, and one without a second switch, where they are", () => {
    expect(cables([sw("s1")], "A0 n", "A1 n")).toEqual(["A0 s1 1", "A1 s1 2"]);
    expect(cables([sw("s1"), sw("s2")], "A0 n", "B0 n s1 3")).toEqual(["A0 s2 1", "B0 s1 3"]);
  });

  test("asks that a switch carries every network of a cable, by name without case", () => {
    expect(cables([sw("s1", "n"), sw("s2", " M , N")], "A0 n", "a0 m")).toEqual(["A0 s2 1", "a0 s2 1"]);
    expect(cables([sw("s1", "n"), sw("s2", "m")], "A0 n", "A0 m")).toEqual(["A0", "A0"]);
    expect(cables([sw("s1")], "A0")).toEqual(["A0"]);
    expect(cables([sw("s1"), { ...sw("s2"), site: "Yard" }], "A0 n", "B0 n")).toEqual(["A0 s1 1", "B0 s1 2"]);
  });

  test("keeps a switch that has no row, and gives the other rows of its cable the same", () => {
    expect(cables([sw("s1")], "A0 n gone 4", "A0 m", "A1 n")).toEqual(["A0 gone 4", "A0 gone 4", "A1 s1 1"]);
    expect(cables([sw("s1")], "A0 n", "A0 m S1")).toEqual(["A0 s1 1", "A0 S1 1"]);
  });

  test("numbers ports on from those that are taken, also where they stand in other arrays", () => {
    expect(cables([sw("s1")], "A0 n s1 1", "A1 n s1", "A2 n S1 3", "A3 n", "A4 n")).toEqual(["A0 s1 1", "A1 s1 2", "A2 S1 3", "A3 s1 4", "A4 s1 5"]);
  });

  test("names no port of a switch where one is named by more than a number, and no others", () => {
    expect(cables([sw("s1")], "A0 n s1 xe-1", "A1 n")).toEqual(["A0 s1 xe-1", "A1 s1"]);
    expect(cables([sw("s1")], "A0 n s1 1a", "A1 n")).toEqual(["A0 s1 1a", "A1 s1"]);
    expect(cables([sw("s1"), sw("s2")], "A0 n s1 eth1", "A1 n s2", "A2 n")).toEqual(["A0 s1 eth1", "A1 s2 1", "A2 s1"]);
  });

  test("keeps the port that one row of a cable names", () => {
    expect(cables([sw("s1")], "A0 n s1", "A0 m s1 8")).toEqual(["A0 s1 8", "A0 s1 8"]);
    expect(cables([sw("s1")], "A0 n  8")).toEqual(["A0 s1 8"]);
  });
});

describe("cables by intent", () => {
  const site = "Mill";
  const networks = [
    { network: "mgmt", site, role: "management" },
    { network: "d1", site, role: "data", side: "A" },
    { network: "d2", site, role: "data", side: "B" },
  ] as const satisfies TableRow<"networks">[];
  const port = (controller: string, name: string, network: string): TableRow<"ports"> => ({ array: "a", controller, port: name, network });
  const of = (some: TableRow<"switches">[], ports: TableRow<"ports">[], nets: TableRow<"networks">[] = [...networks]): string[] => {
    const switches = some.map((one) => ({ site, networks: "mgmt, d1, d2", ...one }));
    const plan = planWorkbook({ networks: nets, switches, arrays: [{ array: "a", site, controllers: "A,B", ports: "3" }], ports });
    return rowsOf(readPlan(cabled(plan)), "ports").map((row) => `${row.controller}${row.port} ${row.network} ${row.switch} ${row.switchPort}`.trim());
  };

  test("keep the two sides on different switches, where switches have no side", () => {
    const lines = of([{ switch: "s1" }, { switch: "s2" }], [port("A", "0", "mgmt"), port("A", "1", "d1"), port("A", "2", "d2"), port("B", "0", "mgmt"), port("B", "1", "d1"), port("B", "2", "d2")]);
    const to = (network: string) => new Set(lines.filter((line) => line.includes(` ${network} `)).map((line) => line.split(" ")[2]));
    expect([to("d1").size, to("d2").size]).toEqual([1, 1]);
    expect(to("d1")).not.toEqual(to("d2"));
    expect(to("mgmt").size).toBe(2);
  });

  test("go to the switch of their side", () => {
    expect(of([{ switch: "s1", side: "B" }, { switch: "s2", side: "A" }], [port("A", "0", "d1"), port("B", "0", "d1"), port("A", "1", "d2")])).toEqual(["A0 d1 s2 1", "B0 d1 s2 2", "A1 d2 s1 1"]);
  });

  test("spread data ports before others, where no sides are named", () => {
    const plain = networks.map(({ network, role }) => ({ network, site, role }));
    const lines = of([{ switch: "s1" }, { switch: "s2" }], [port("A", "0", "mgmt"), port("A", "1", "d1"), port("A", "2", "d2")], plain);
    expect(new Set(lines.slice(1).map((line) => line.split(" ")[2])).size).toBe(2);
  });

  test("take the first free port that a switch has and does not keep, and another switch once one is full", () => {
    expect(of([{ switch: "s1", ports: "3", keptPorts: "1" }], [port("A", "0", "d1"), port("A", "1", "d1"), port("A", "2", "d1")])).toEqual(["A0 d1 s1 2", "A1 d1 s1 3", "A2 d1 s1"]);
    const three = [port("A", "0", "mgmt"), port("A", "1", "mgmt"), port("A", "2", "mgmt")];
    expect(of([{ switch: "s1", ports: "x1, x2" }, { switch: "s2", ports: "1" }], three)).toEqual(["A0 mgmt s1 x1", "A1 mgmt s2 1", "A2 mgmt s1 x2"]);
  });

  test("pass over kept ports of a switch that does not say how many it has", () => {
    expect(of([{ switch: "s1", keptPorts: "1-2" }], [port("A", "0", "mgmt")])).toEqual(["A0 mgmt s1 3"]);
  });
});

describe("proposing cables of hosts", () => {
  const withPorts = (more: EditableRows["hostPorts"]): EditableRows => ({ ...sample(), hostPorts: more });
  const port = { host: "scan-1", network: "rr-data-1" };

  test("takes free ports of switches that carry the network, two switches for two ports, and fills the MTU of the network", () => {
    expect(written(withPorts([{ ...port, card: "1" }, { ...port, card: "2", network: "rr-data-2", mtu: 1500 }]))).toEqual([
      "Host ports 5 Switch: rr-sw1", "Host ports 5 Switch port: 7", "Host ports 6 Switch: rr-sw2", "Host ports 6 Switch port: 7", "Host ports 5 MTU: 9000",
    ]);
  });

  test("goes to the switch of its side, by its network or its own word", () => {
    const archive = (network: string, side: string | null) => written(withPorts([{ host: "archive-1", card: "1", network, side, mtu: 1500 }]))[0];
    expect(archive("cs-data-2", null)).toBe("Host ports 5 Switch: cs-sw2");
    expect(archive("cs-mgmt-v6", "B")).toBe("Host ports 5 Switch: cs-sw2");
    expect(archive("cs-mgmt-v6", "A")).toBe("Host ports 5 Switch: cs-sw1");
  });

  test("gives no port of a switch to an array that a host has, and none that is kept", () => {
    const rows = withPorts([{ ...port, card: "1", mtu: 9000, switch: "rr-sw2", switchPort: "1" }]);
    Object.assign(rows.ports[1]!, { switch: null, switchPort: null });
    expect(written(rows)).toEqual(["Ports 6 Switch: rr-sw2", "Ports 6 Switch port: 7"]);
    rows.switches[1]!.keptPorts = "7-8";
    expect(written(rows)).toEqual(["Ports 6 Switch: rr-sw2", "Ports 6 Switch port: 9"]);
  });

  test("leaves a port without a network, and one of a host that the plan does not have", () => {
    expect(written(withPorts([{ host: "scan-1", card: "1" }, { ...port, host: "nobody", mtu: 9000 }]))).toEqual([]);
  });

  test("cables any hosts so that no port of a switch is taken twice, and what it proposes is not proposed again", () => {
    const ports = fc.array(fc.record({ host: fc.constantFrom("scan-1", "scan-2"), card: fc.constantFrom("1", "2", "3", ""), net: fc.constantFrom("1", "2") }), { maxLength: 8 });
    fc.assert(fc.property(ports, (some) => {
      const all = uncabled();
      all.hostPorts = some.map(({ host, card, net }) => ({ host, card, network: `${host === "scan-1" ? "rr" : "bi"}-data-${net}` }));
      const book = cabled(all);
      const told = new Set(checkPlan(book, rules, "2026-06-01").map(({ rule }) => rule));
      expect(["switch-port-twice", "switch-port-kept", "switch-without-network", "port-mtu"].filter((rule) => told.has(rule))).toEqual([]);
      expect(proposeCabling(book).writes).toEqual([]);
    }), { numRuns: 15 });
  });
});
