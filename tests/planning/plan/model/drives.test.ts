import type { TableRows } from "../../../../src/planning/plan/schema";
import { modelOf } from "../../../support/plan-model";

const rows = {
  models: [{ model: "Elm", bays: 12 }, { model: "Oak" }],
  arrays: [{ array: "a1", model: "Elm", drives: 6 }, { array: "a2", model: "Oak", drives: 2 }, { array: "a3" }],
  shelves: [{ array: "A1", shelf: "S1", bays: 4 }, { array: "a1", shelf: "S2", bays: 8 }, { array: "a2", shelf: "S1", bays: 4 }],
} satisfies TableRows;

const modelWith = (drives: TableRows["drives"] = []) => modelOf({ ...rows, drives });

/** Lists the bays in which the first array is expected to have drives, each with its serial number. */
function expected(drives: TableRows["drives"]): string[] {
  const model = modelWith(drives);
  return model.drives.expectedIn(model.rows("arrays")[0]!).map(({ shelf, bay, row }) => `${shelf}${shelf && " "}${bay}${row === null ? "" : ` ${row.serial}`}`);
}

describe("the bays of an array", () => {
  test("are those of its chassis by its model, and those of its shelves", () => {
    const model = modelWith();
    expect(model.rows("arrays").map((row) => [model.drives.chassisBays(row), model.drives.baysOf(row)])).toEqual([[12, 24], [null, null], [null, null]]);
  });

  test("are not known where one shelf does not say", () => {
    const model = modelOf({ ...rows, shelves: [...rows.shelves, { array: "a1", shelf: "S3" }] });
    expect(model.drives.baysOf(model.rows("arrays")[0]!)).toBeNull();
  });
});

describe("the drives that are expected in an array", () => {
  test("are the lowest bays, as many as it has drives, where the plan has no row a drive", () => {
    expect(expected([])).toEqual(["1", "2", "3", "4", "5", "6"]);
  });

  test("are those in place, by bay, the chassis before its shelves; one that was taken out is none", () => {
    const drives = [
      { array: "a1", shelf: "S1", bay: 2, serial: "E" }, { array: "a1", bay: 12, serial: "C" }, { array: "a1", bay: 3, serial: "old", takenOut: "2026-05-01" },
      { array: "A1", bay: 3, serial: "B" }, { array: "a1", shelf: "s1", bay: 1, serial: "D" }, { array: "a1", bay: 1, serial: "A" }, { array: "a1", shelf: "S2", bay: 1, serial: "F" },
    ];
    expect(expected(drives)).toEqual(["1 A", "3 B", "12 C", "s1 1 D", "S1 2 E", "S2 1 F"]);
  });

  test("are filled up with the lowest bays that no row names, where rows are fewer than drives", () => {
    expect(expected([{ array: "a1", bay: 2, serial: "B" }, { array: "a1", shelf: "S1", bay: 1, serial: "S" }])).toEqual(["1", "2 B", "3", "4", "5", "S1 1 S"]);
  });

  test("leave out a drive whose bay is not known, which still counts", () => {
    expect(expected([{ array: "a1", serial: "?" }])).toEqual(["1", "2", "3", "4", "5"]);
  });
});

test("a shelf is found at its own array alone, without case", () => {
  const { drives } = modelWith();
  expect([drives.shelfNamed("A1", "s2")?.bays, drives.shelfNamed("a2", "S2"), drives.shelfNamed("a1", "")]).toEqual([8, null, null]);
});
