import { writeCables } from "../../../../../src/planning/assignment";
import { cableWithoutRow } from "../../../../../src/planning/checks/rules/references/cable-without-row";
import { carryOut } from "../../../../support/plan-changes";
import { cells, found, sample, workbookWith } from "../../../../support/plan-rows";

// 36 cables of ports, 9 links and two cords for each of six arrays and six switches.
test("notes once how many cables have no row, where Cables has some", () => {
  const rows = sample();
  expect(cells(cableWithoutRow, rows)).toEqual([]);
  rows.cables = [{ id: "C0001", from: "rr-array-1 port A/1", to: "rr-sw2 port 1" }];
  expect(found(cableWithoutRow, rows)).toEqual(["Cables 5 Id: The cable from rr-array-1 port A/0 to rr-sw1 port 1 and 67 more have no row here. Choose Write cables."]);
});

test("says so of the last one too, and nothing once all have one", () => {
  const rows = sample();
  rows.cables = [{ id: "C0001", from: "rr-array-1 port A/1", to: "rr-sw2 port 1" }];
  const book = workbookWith(rows);
  const written = carryOut(book, writeCables(book));
  expect(cells(cableWithoutRow, written)).toEqual([]);
  const other = { ...sample(), cables: rows.cables, ports: rows.ports.slice(0, 2), links: [], arrays: rows.arrays.map((row) => ({ ...row, feedA: null, feedB: null })) };
  other.switches = rows.switches.map((row) => ({ ...row, feedA: null, feedB: null }));
  expect(found(cableWithoutRow, other)).toEqual(["Cables 5 Id: The cable from rr-array-1 port A/0 to rr-sw1 port 1 has no row here. Choose Write cables."]);
});
