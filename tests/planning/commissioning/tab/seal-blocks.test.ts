import { sealOf } from "../../../../src/planning/commissioning/seal";
import { reopenBlocks, sealBlocks } from "../../../../src/planning/commissioning/tab";
import { at } from "../../../../src/planning/commissioning/tab/tab-columns";
import { sealLine, snagOf, stepRecord } from "../../../support/job-records";
import { tabReading } from "../../../support/tab-reading";

const tab = tabReading({ steps: [stepRecord({ row: 10 }), stepRecord({ key: "J1/S-2/A1", no: "2", row: 12 })], snags: [snagOf({ row: 22 })] });

/** Lists the cells of a block that write something, as column and value. */
const written = ({ cells }: { readonly cells: readonly (readonly ({ readonly value?: unknown } | null)[])[] }) =>
  cells[0]!.flatMap((cell, column) => (cell === null ? [] : [[column, cell.value]]));

describe("sealing a tab", () => {
  test("writes the digests of all rows first, in one block, and leaves the rows between alone", () => {
    const { rows } = sealOf(tab);
    const [digests] = sealBlocks(tab, { by: "AB", date: "2026-03-09" });
    expect(digests).toMatchObject({ row: 10, column: at.digest });
    expect(digests!.cells).toHaveLength(13);
    expect(digests!.cells.map((line) => line.map((cell) => cell?.value ?? null))).toEqual(
      Array.from({ length: 13 }, (_, index) => [rows.find(({ row }) => row === 10 + index)?.digest ?? null]),
    );
    expect(rows.map(({ row }) => row)).toEqual([10, 12, 22]);
  });

  test("writes then the line with day, code, name and the number of steps, below the labels or the last line", () => {
    const line = (seals: ReturnType<typeof sealLine>[]) => sealBlocks({ ...tab, seals }, { by: "AB", date: "2026-03-09" })[1]!;
    const first = line([]);
    expect([first.row, first.column]).toEqual([43, 0]);
    expect(written(first)).toEqual([[at.stepId, "2026-03-09"], [at.step, sealOf(tab).code], [at.subject, "AB"], [at.key, "#seal"], [at.digest, "2"]]);
    expect(line([sealLine({ row: 43 }), sealLine({ row: 47 })]).row).toBe(48);
  });

  test("goes by the columns as they stand, and writes nothing where one is gone", () => {
    const sealed = (columns: Partial<typeof tab.places.columns>) => sealBlocks({ ...tab, places: { ...tab.places, columns } }, { by: "AB", date: "2026-03-09" });
    const [digests, line] = sealed({ ...at, step: 30, digest: 31 });
    expect(digests!.column).toBe(31);
    expect(written(line!)).toContainEqual([30, sealOf(tab).code]);
    expect(() => sealed({ ...at, digest: undefined })).toThrow('The header "Digest" of "North hall" is gone. Undo that, or write it back over its column.');
  });
});

describe("reopening a tab", () => {
  test("writes day, name and reason into its last seal, which stays", () => {
    const [line, ...more] = reopenBlocks({ ...tab, seals: [sealLine({ row: 43 }), sealLine({ row: 44 })] }, { by: "EF", date: "2026-03-10", reason: "why" });
    expect(more).toEqual([]);
    expect([line!.row, line!.column]).toEqual([44, 0]);
    expect(written(line!)).toEqual([[at.expected, "2026-03-10"], [at.found, "EF"], [at.note, "why"]]);
  });

  test("writes nothing where there is no seal", () => {
    expect(reopenBlocks(tab, { by: "EF", date: "2026-03-10", reason: "why" })).toEqual([]);
  });
});
