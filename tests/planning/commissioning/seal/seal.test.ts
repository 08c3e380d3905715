import { readFileSync } from "node:fs";
import { join } from "node:path";
import { cellToken, checkSeal, RowCodes, sealOf, sealVersion, type SealedRow, type SealedTab } from "../../../../src/planning/commissioning/seal";
import { digestByHand } from "../../../support/job-records";

const names = ["no", "found", "note"];
const codes = new RowCodes(names);
const columns = [...names, "+Mine"].map((name, column) => ({ column, name, label: name.replace("+", "") }));

/** A row as it was sealed. */
function row(at: number, cells: Readonly<Record<string, string>>): SealedRow {
  return { row: at, label: `row ${at + 1}`, cells: new Map(Object.entries(cells)), sealed: { sealedRow: at, code: codes.read(codes.write(new Map(Object.entries(cells))))! } };
}

const [one, two] = [row(3, { no: "n1", found: "t4" }), row(5, { no: "n2", "+Mine": "tx" })];
const note = { sealed: "2026-03-09 14:20", by: "AB" };
const tab: Parameters<typeof checkSeal>[0] = { rows: [one, two], note, code: sealOf([one, two], note), isReopened: false, scope: { version: "1", rows: [3, 5] }, row: 9, columns };
const withCells = (sealed: SealedRow, cells: Readonly<Record<string, string>>): SealedRow => ({ ...sealed, cells: new Map(Object.entries(cells)) });

interface Vector extends Pick<Parameters<typeof sealOf>[1], "sealed" | "by"> {
  readonly rows: readonly Readonly<Record<string, string>>[];
  readonly code: string;
}
const { vectors } = JSON.parse(readFileSync(join(__dirname, "seal-vectors-1.json"), "utf8")) as { vectors: readonly Vector[] };

describe("the code of a seal", () => {
  test("is, in version 1, that of the vectors, which other code worked out from its definition: they are pinned for good", () => {
    expect(sealVersion).toBe("1");
    expect(vectors.map(({ rows, ...made }) => sealOf(rows.map((cells) => ({ cells: new Map(Object.entries(cells)) })), made))).toEqual(vectors.map(({ code }) => code));
  });

  test("says of a cell what kind it is before its text: text in NFC without spaces around it, a number at 15 digits, of a formula at 12", () => {
    const cells: [Parameters<typeof cellToken>[0], boolean, string][] = [
      ["4", false, "t4"], [4, false, "n4"], [true, false, "bTRUE"], [null, false, ""], ["  a\r\nb ", false, "ta\nb"], ["Re\u0301", false, "tR\u00e9"],
      [0.1 + 0.2, false, "n0.3"], [1 / 3, true, "fn0.333333333333"], ["", true, "f"],
    ];
    expect(cells.map(([value, hasFormula]) => cellToken(value, hasFormula))).toEqual(cells.map(([, , token]) => token));
  });

  test("is 20 characters in fours over version, time, name and every row, columns and rows in the order of their texts", () => {
    const code = digestByHand(["1", "2026-03-09 14:20", "AB", "2:no2:n1\n5:found2:t4", "2:no2:n2\n5:+Mine2:tx"], 20);
    expect(sealOf([one, two], note)).toBe(code.match(/.{4}/g)!.join("-"));
    expect(sealOf([two, one], note)).toBe(sealOf([one, two], note));
    expect(sealOf([withCells(one, { found: "t4", no: "n1" }), two], note)).toBe(sealOf([one, two], note));
  });

  test.each([
    ["the day", [one, two], { ...note, sealed: "2026-03-10 14:20" }],
    ["the time", [one, two], { ...note, sealed: "2026-03-09 14:21" }],
    ["the name", [one, two], { ...note, by: "AC" }],
    ["a cell", [withCells(one, { no: "n1", found: "t5" }), two], note],
    ["the kind of a cell", [withCells(one, { no: "n1", found: "n4" }), two], note],
    ["the column of a cell", [withCells(one, { no: "n1", note: "t4" }), two], note],
    ["a row", [one], note],
    ["a row more", [one, two, two], note],
    ["a cell that went to another row", [withCells(one, { no: "n1", found: "t4", "+Mine": "tx" }), withCells(two, { no: "n2" })], note],
  ])("depends on %s", (_, rows, other) => {
    expect(sealOf(rows, other)).not.toBe(tab.code);
  });
});

describe("checking a seal", () => {
  const changed = (more: Partial<SealedTab>): unknown[] => checkSeal({ ...tab, ...more }).changed.map((cell) => [cell.row, cell.column, cell.label]);

  test("answers that it holds while nothing has changed, sorted, moved or not", () => {
    const holds = { code: tab.code, reopened: false, holds: true, changed: [] };
    expect(checkSeal(tab)).toEqual(holds);
    expect(checkSeal({ ...tab, rows: [{ ...two, row: 3 }, { ...one, row: 8 }] })).toEqual(holds);
    expect(checkSeal({ ...tab, isReopened: true })).toEqual({ ...holds, reopened: true });
  });

  test("names every cell that changed by its column and row, one that is new or gone too", () => {
    expect(changed({ rows: [withCells(one, { no: "n1", found: "t5" }), two] })).toEqual([[3, 1, "found of row 4"]]);
    expect(changed({ rows: [withCells(one, { no: "n1", note: "t4" }), two] })).toEqual([[3, 1, "found of row 4"], [3, 2, "note of row 4"]]);
    expect(changed({ rows: [one, withCells(two, { no: "n2", "+Mine": "ty" })] })).toEqual([[5, 3, "Mine of row 6"]]);
    expect(changed({ rows: [one, withCells(two, { no: "n2" })] })).toEqual([[5, 3, "Mine of row 6"]]);
    // A column that is gone altogether has no name any more.
    expect(changed({ rows: [one, withCells(two, { no: "n2" })], columns: columns.slice(0, 3) })).toEqual([[5, 0, "Row 6 has lost a cell beside it"]]);
  });

  test("names a row that is new by its cells, one that stands twice, and one that is gone by where it stood", () => {
    expect(changed({ rows: [one, two, { ...withCells(one, { note: "ta" }), row: 7, label: "row 8", sealed: null }] })).toEqual([[7, 2, "note of row 8 is new"]]);
    expect(changed({ rows: [one, two, { ...one, row: 7, label: "row 8" }] })).toEqual([[7, 0, "Row 8 stands twice"]]);
    expect(changed({ rows: [two] })).toEqual([[3, 0, "Row 4, as it was sealed, is gone"]]);
    expect(changed({ rows: [withCells(one, {}), two] })).toEqual([[3, 0, "no of row 4"], [3, 1, "found of row 4"]]);
  });

  test("names the line of the seal where every row is as it was and the code is not, and a version it does not know", () => {
    for (const more of [{ code: "AAAA" }, { code: "" }, { note: { ...note, by: "AC" } }]) expect(changed(more)).toEqual([[9, 0, "Day, name or code of the seal"]]);
    expect(changed({ scope: { version: "7", rows: [3, 5] } })).toEqual([[9, 0, "The seal is of version 7, this program reads version 1"]]);
    expect(changed({ scope: null })).toEqual([[9, 0, "Hidden cells of the seal"]]);
  });
});
