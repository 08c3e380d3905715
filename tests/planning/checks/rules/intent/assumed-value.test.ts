import { assumedAndReliedOn } from "../../../../../src/planning/checks/rules/intent/assumed-and-relied-on";
import { assumedValue } from "../../../../../src/planning/checks/rules/intent/assumed-value";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

/** The sample plan with one value of it marked as assumed. */
function assuming(named: string, table: string, column: string, value: string, settled?: string): EditableRows {
  const rows = sample();
  rows.assumptions.push({ named, table, column, value, ...(settled !== undefined && { settled }) });
  return rows;
}

test("warns of a value that was assumed, at its cell", () => {
  expect(found(assumedValue, assuming("RR-R1", "Racks", "Units", "42"))).toEqual(["Racks 5 Units: Units of RR-R1 is assumed: 42. Write what is so, or tick Settled in Assumptions."]);
});

test.each([["another value", "47", undefined], ["a tick", "42", "yes"]])("is silent once the cell has %s", (_, value, settled) => {
  expect(found(assumedValue, assuming("RR-R1", "Racks", "Units", value, settled))).toEqual([]);
});

test("reads names of tables, rows and columns without case", () => {
  expect(cells(assumedValue, assuming("rr-r1", "racks", "units", "42"))).toEqual(["Racks 5 Units"]);
});

test("warns of an assumption about a cell that the plan does not have", () => {
  expect(found(assumedValue, assuming("RR-R9", "Racks", "Units", "42"))).toEqual(["Assumptions 5 Row: Racks has no row RR-R9 with a column Units. Correct it, or delete this row."]);
  expect(cells(assumedValue, assuming("RR-R1", "Shelving", "Units", "42"))).toEqual(["Assumptions 5 Row"]);
  expect(cells(assumedValue, assuming("RR-R1", "Racks", "Colour", "red"))).toEqual(["Assumptions 5 Row"]);
});

test.each([
  ["RR-A", "Feeds", "Volts", "230", "Feeds 5 Volts"],
  ["RR-A", "Feeds", "Breaker A", "16", "Feeds 5 Breaker A"],
  ["rr-data-1", "Networks", "Prefix", "10.64.11.0/24", "Networks 5 Prefix"],
  // A network without a site reaches every site.
  ["mgmt", "Networks", "Gateway", "10.64.0.1", "Networks 11 Gateway"],
])("stops where an installation that is not closed relies on it: %s of %s, %s", (named, table, column, value, cell) => {
  const rows = assuming(named, table, column, value);
  expect(cells(assumedAndReliedOn, rows)).toEqual([cell]);
  expect(cells(assumedValue, rows)).toEqual([]);
  rows.jobs.forEach((job) => void (job.state = "closed"));
  expect([cells(assumedAndReliedOn, rows), cells(assumedValue, rows)]).toEqual([[], [cell]]);
});

test("does not stop for a site at which nothing is installed", () => {
  const rows = assuming("BI-A", "Feeds", "Volts", "230");
  rows.jobs = rows.jobs.filter(({ site }) => site !== "Bindery");
  expect([cells(assumedAndReliedOn, rows), cells(assumedValue, rows)]).toEqual([[], ["Feeds 7 Volts"]]);
});
