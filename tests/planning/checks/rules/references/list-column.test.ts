import { listColumn } from "../../../../../src/planning/checks/rules/references/list-column";
import { cells, found, sample } from "../../../../support/plan-rows";

test("finds a table that is none, and a column into which no list goes", () => {
  const rows = sample();
  rows.lists = [{ header: "Foo", table: "Servers", column: "Host" }, { header: "Serie", table: "Arrays", column: "Serials" }, { header: "Nr", table: "Arrays", column: "Id" }];
  expect(found(listColumn, rows)).toEqual([
    'Lists 5 Table: Table "Servers" of header "Foo" is none of the plan, so nothing follows from this row. Mend it, or delete the row.',
    'Lists 6 Column: No list goes into a column "Serials" of Arrays, so "Serie" would be left out. Mend it, or delete the row.',
    'Lists 7 Column: No list goes into a column "Id" of Arrays, so "Nr" would be left out. Mend it, or delete the row.',
  ]);
});

test("takes a column in any case, and a header that is left out on purpose", () => {
  const rows = sample();
  rows.lists = [{ header: "Serie", table: "arrays", column: "SERIAL" }, { header: "Notes", table: "Arrays" }];
  expect(cells(listColumn, rows)).toEqual([]);
});
