import type { CellValue, WorkbookSnapshot } from "../../../src/sheet";
import { settledReader } from "../../../src/workbook/office/settled-reader";

const busy = { error: "#BUSY!" };

/** A workbook of two sheets, of which one shows one cell after the other, a look each, and the last one from then on. */
function looks(...cells: readonly CellValue[]): () => Promise<WorkbookSnapshot> {
  let look = 0;
  const sheet = (name: string, cell: CellValue) => ({ name, visible: true, protected: false, values: [[1, cell]], formulas: [], tables: [], attachments: 0 });
  return () => Promise.resolve({ sheets: [sheet("Plain", { error: "#N/A" }), sheet("Slow", cells[Math.min(look++, cells.length - 1)]!)] });
}

function reader() {
  const waited: number[] = [];
  const read = settledReader((milliseconds) => Promise.resolve(void waited.push(milliseconds)));
  return { waited, read: async (look: () => Promise<WorkbookSnapshot>) => (await read(look)).sheets[1]!.values[0]![1] };
}

test("what is computed is read at once, other errors too", async () => {
  const { waited, read } = reader();
  expect(await read(looks({ error: "#NAME?" }))).toEqual({ error: "#NAME?" });
  expect(await read(looks("#BUSY!"))).toBe("#BUSY!");
  expect(waited).toEqual([]);
});

test("what is still being computed is looked at again, ever later", async () => {
  const { waited, read } = reader();
  expect(await read(looks(busy, { error: "#GETTING_DATA" }, busy, 48))).toBe(48);
  expect(waited).toEqual([250, 500, 1000]);
});

test("a cell that stays busy is answered as it is, and waited for again only once it has shown something else", async () => {
  const { waited, read } = reader();
  expect(await read(looks(busy))).toEqual(busy);
  expect(waited).toEqual([250, 500, 1000, 2000, 4000]);
  expect(await read(looks(busy))).toEqual(busy);
  expect(waited).toHaveLength(5);
  expect(await read(looks(48))).toBe(48);
  expect(await read(looks(busy, 49))).toBe(49);
  expect(waited).toHaveLength(6);
});
