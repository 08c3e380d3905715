import { comparePlans } from "../../../../src/planning/plan/compare";
import { readPlan } from "../../../../src/planning/plan/read";
import type { CellValue } from "../../../../src/sheet";
import { workbookOf } from "../../../support/plain-workbook";

type Lines = readonly (readonly CellValue[])[];

/** A plan out of tables, each by its name with its header and rows. */
const planOf = (sheets: Readonly<Record<string, Lines>>) =>
  readPlan(workbookOf(Object.fromEntries(Object.entries(sheets).map(([name, lines]) => [name, [[`Table: ${name}`], ...lines]]))));

const racks = (...lines: Lines) => planOf({ Racks: [["Rack", "Site", "Units", "Own"], ...lines] });

/** What is different, as one line a row and cell. */
const told = (before: ReturnType<typeof planOf>, now: ReturnType<typeof planOf>) =>
  comparePlans(before, now).flatMap(({ table, rows }) =>
    rows.flatMap(({ kind, row, cells }) => (cells.length === 0 ? [`${table} ${row}: ${kind}`] : cells.map(({ header, before: was, now: is }) => `${table} ${row} ${header}: ${was} > ${is}`))),
  );

test("a plan against itself has no difference, wherever its rows and columns stand", () => {
  const before = racks(["R1", "Mill", 42, "a"], ["R2", "Mill", 24, "b"]);
  const now = planOf({ Racks: [["OWN", "Units", "Rack", "Site"], ["b", 24, "R2", "Mill"], [null, null, null, null], ["a", 42, "r1", "Mill"]] });
  expect(comparePlans(before, before)).toEqual([]);
  expect(told(before, now)).toEqual(["Racks r1 Rack: R1 > r1"]);
});

test("rows that are new, gone or changed are told, the user's own columns included", () => {
  const before = racks(["R1", "Mill", 42, "a"], ["R2", "Mill", 24, "b"], ["R4", "Mill", 24, ""]);
  const now = racks(["R1", "Mill", 47, "a"], ["R3", "Mill", 24, ""], ["R4", "Mill", 24, "mine"]);
  expect(told(before, now)).toEqual(["Racks R1 Units: 42 > 47", "Racks R3: added", "Racks R4 Own:  > mine", "Racks R2: gone"]);
  const { rows } = comparePlans(before, now)[0]!;
  expect([rows[0]!.at, rows[0]!.cells[0]!.column]).toEqual([{ sheet: "Racks", row: 2 }, 2]);
  expect(rows[2]!.cells[0]!.column).toBeNull();
});

test("an array or a job with an id keeps it under another name, and without one goes by its name", () => {
  const arrays = (...lines: Lines) => planOf({ Arrays: [["Id", "Array", "Model"], ...lines] });
  expect(told(arrays(["A0001", "mill-1", "M"], ["A0002", "mill-2", "M"]), arrays(["A0002", "mill-9", "M"], ["A0001", "mill-1", "M"]))).toEqual(["Arrays mill-9 Array: mill-2 > mill-9"]);
  expect(told(arrays([null, "mill-1", "M"]), arrays(["A0001", "mill-1", "N"]))).toEqual(["Arrays mill-1 Id:  > A0001", "Arrays mill-1 Model: M > N"]);
});

test("a port that moves to another network is changed, and of two that share a number each keeps its own", () => {
  const ports = (...lines: Lines) => planOf({ Ports: [["Array", "Controller", "Port", "Network", "Address"], ...lines] });
  expect(told(ports(["mill-1", "A", "0", "data-1", "10.0.0.1"]), ports(["mill-1", "A", "0", "data-2", "10.0.0.1"]))).toEqual(["Ports mill-1, A, 0 Network: data-1 > data-2"]);
  const dual = ports(["mill-1", "A", "0", "v4", "10.0.0.1"], ["mill-1", "A", "0", "v6", "fd00::1"]);
  expect(told(dual, ports(["mill-1", "A", "0", "v6", "fd00::2"], ["mill-1", "A", "0", "v4", "10.0.0.1"]))).toEqual(["Ports mill-1, A, 0 Address: fd00::1 > fd00::2"]);
});

test("rows of one name are taken in their order, so that none is lost", () => {
  const now = racks(["R1", "Mill", 42, ""], ["R1", "Mill", 30, ""], ["R1", "Mill", 9, ""]);
  expect(told(racks(["R1", "Mill", 42, ""], ["R1", "Mill", 24, ""]), now)).toEqual(["Racks R1 Units: 24 > 30", "Racks R1: added"]);
});

test("formulas are left out, and a table or a column that one plan lacks is blank there", () => {
  const pools = (...lines: Lines) => planOf({ Pools: lines });
  expect(told(pools(["Pool", "Cluster"], ["p", "c"]), pools(["Pool", "Fill limit"], ["p", 0.8]))).toEqual(["Pools p Fill limit:  > 0.8", "Pools p Cluster: c > "]);
  expect(told(planOf({ Arrays: [["Array", "Usable"], ["a", 1]] }), planOf({ Arrays: [["Array", "Usable"], ["a", 2]] }))).toEqual([]);
  expect(told(planOf({}), racks(["R1"]))).toEqual(["Racks R1: added"]);
  expect(told(racks(["R1"]), planOf({}))).toEqual(["Racks R1: gone"]);
});

test("rows that have a name only together are found by all of it: sets of an array, ports of a model and of a host", () => {
  const sets = (...lines: Lines) => planOf({ "Drive sets": [["Array", "Set", "Drives"], ...lines] });
  expect(told(sets(["a", "fast", 4], ["a", "bulk", 8]), sets(["a", "bulk", 9], ["a", "fast", 4]))).toEqual(["Drive sets a, bulk Drives: 8 > 9"]);
  const modelPorts = (...lines: Lines) => planOf({ "Model ports": [["Model", "Controller", "Port", "Role"], ...lines] });
  const ports = modelPorts(["M", null, "0", "data"], ["M", "B", "0", "data"]);
  expect(told(ports, modelPorts(["M", "B", "0", "management"], ["M", null, "0", "data"]))).toEqual(["Model ports M, B, 0 Role: data > management"]);
  const hostPorts = (...lines: Lines) => planOf({ "Host ports": [["Host", "Card", "Network", "Switch"], ...lines] });
  expect(told(hostPorts(["h", "c1", "n1", "s1"], ["h", "c2", "n2", "s2"]), hostPorts(["h", "c2", "n2", "s3"], ["h", "c1", "n1", "s1"]))).toEqual(["Host ports h, c2 Switch: s2 > s3"]);
});
