import fc from "fast-check";
import { proposeCabling } from "../../../src/planning/assignment";
import { checkPlan, rules } from "../../../src/planning/checks";
import { readPlan, rowsOf } from "../../../src/planning/plan/read";
import type { WorkbookSnapshot } from "../../../src/sheet";
import { withCell } from "../../support/plain-workbook";
import { cellOf, sample, workbookWith, type EditableRows } from "../../support/plan-rows";

function cabled(rows: EditableRows): WorkbookSnapshot {
  const workbook = workbookWith(rows);
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
    const findings = checkPlan(cabled(uncabled()), rules).filter(({ weight }) => weight !== "note");
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
        const rows = sample();
        const plugs = [...portsOfA.map((network, port) => ({ controller: "A", port, network })), ...portsOfB.map((network, port) => ({ controller: "B", port, network }))];
        Object.assign(rows, {
          procedures: [], steps: [], links: [], hosts: [],
          arrays: [{ array: "a", site: "Bindery", controllers: "A,B", ports: "5" }],
          switches: switches.map((names, at) => ({ switch: `sw${at}`, site: "Bindery", networks: names.join(", ") })),
          ports: plugs.map((plug) => ({ array: "a", ...plug, port: String(plug.port) })),
        });
        const done = rowsOf(readPlan(cabled(rows)), "ports");
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
