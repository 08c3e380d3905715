import { keepPlannedPorts } from "../../../src/planning/assignment";
import type { CellValue, WorkbookSnapshot } from "../../../src/sheet";
import { cellOf, sample, workbookWith, type EditableRows } from "../../support/plan-rows";
import { workbookOf } from "../../support/plain-workbook";

const header = ["Array", "Controller", "Port", "Network", "Address", "Mask", "Gateway"];
const place = { sheet: "Quick", area: { row: 1, column: 1, rows: 3, columns: 7 } };

function withSpill(rows: EditableRows, lines: readonly (readonly CellValue[])[], titles: readonly string[] = header): WorkbookSnapshot {
  const quick = workbookOf({ Quick: [[], ...[titles, ...lines].map((line) => [null, ...line])] });
  return { sheets: [...workbookWith(rows).sheets, ...quick.sheets] };
}

function written(workbook: WorkbookSnapshot): string[] {
  return keepPlannedPorts(workbook, place).writes.map((write) => `${cellOf(workbook, write)}: ${String(write.value)}`);
}

const planned = [
  ["rr-array-1", "A", "0", "rr-data-1", "10.64.11.1", "255.255.255.0", "none"],
  ["rr-array-1", "A", "1", "rr-data-2", "10.64.12.1", "255.255.255.0", "none"],
] as const;

describe("keeping the addresses of a PORTPLAN table", () => {
  test("adds rows for ports that have none", () => {
    const rows = sample();
    rows.ports = rows.ports.slice(2);
    expect(written(withSpill(rows, planned))).toEqual([
      "Ports 51 Array: rr-array-1", "Ports 51 Controller: A", "Ports 51 Port: 0", "Ports 51 Network: rr-data-1", "Ports 51 Address: 10.64.11.1",
      "Ports 52 Array: rr-array-1", "Ports 52 Controller: A", "Ports 52 Port: 1", "Ports 52 Network: rr-data-2", "Ports 52 Address: 10.64.12.1",
    ]);
  });

  test("passes over ports that have the address, however spelt, and fills a row that lacks it", () => {
    const rows = sample();
    rows.ports[1]!.address = null;
    expect(written(withSpill(rows, planned))).toEqual(["Ports 6 Address: 10.64.12.1"]);
  });

  test("fills the row of the family that its network says, where a port has one of each", () => {
    const rows = sample();
    for (const row of rows.ports) if (row.array === "cs-array-1" && row.controller === "A" && row.port === "0") row.address = null;
    const both = [
      ["cs-array-1", "A", "0", "cs-data-1-v6", "fd6b:41c2:9e07:31::1", "", "none"],
      ["cs-array-1", "A", "0", "cs-data-1", "10.64.31.1", "255.255.255.0", "none"],
    ];
    expect(written(withSpill(rows, both))).toEqual(["Ports 30 Address: fd6b:41c2:9e07:31::1", "Ports 29 Address: 10.64.31.1"]);
  });

  test("fills network and address of a row that names the port alone", () => {
    const rows = sample();
    Object.assign(rows.ports[1]!, { address: null, network: null });
    expect(written(withSpill(rows, planned))).toEqual(["Ports 6 Address: 10.64.12.1", "Ports 6 Network: rr-data-2"]);
  });

  test("takes array and controller for two names, not for one text", () => {
    const rows = sample();
    rows.ports = [{ array: "x1", controller: "1", port: "0", network: "rr-data-1", address: "10.64.11.9" }];
    expect(written(withSpill(rows, [["x", "11", "0", "rr-data-1", "10.64.11.1", "", ""]]))[0]).toBe("Ports 6 Array: x");
  });

  test("refuses a port whose address in the plan cannot be read, by its row", () => {
    const rows = sample();
    rows.ports[1]!.address = "10.64";
    expect(() => written(withSpill(rows, planned))).toThrow("Ports row 6 address");
  });

  test("refuses a workbook without the table Ports", () => {
    const { sheets } = withSpill(sample(), planned);
    expect(() => keepPlannedPorts({ sheets: sheets.filter(({ name }) => name !== "Ports") }, place)).toThrow("The workbook has no table Ports.");
  });

  test("refuses an address other than the one that a port has, and writes nothing", () => {
    const rows = sample();
    rows.ports[1]!.address = "10.64.12.99";
    expect(() => written(withSpill(rows, planned))).toThrow("Ports row 6 has 10.64.12.99 for rr-array-1 A/1, the table says 10.64.12.1");
  });

  test.each([
    ["a table with other headers", planned, ["Name", "Address"], "no columns array, controller, port, network and address"],
    ["an error in the table", [planned[0], [{ error: "#N/A" }, "", "", "", "", "", ""]], header, "Quick row 4 shows"],
    ["a row without an address", [planned[0], ["rr-array-1", "A", "1", "rr-data-2", "", "", ""]], header, "Quick row 4 address"],
  ] as [string, readonly (readonly CellValue[])[], readonly string[], string][])("refuses %s", (_, lines, titles, sentence) => {
    expect(() => keepPlannedPorts(withSpill(sample(), lines, titles), place)).toThrow(sentence);
  });

  test("refuses a sheet that is gone", () => {
    expect(() => keepPlannedPorts(workbookWith(sample()), place)).toThrow("Select the table of a BAY.PORTPLAN formula");
  });
});
