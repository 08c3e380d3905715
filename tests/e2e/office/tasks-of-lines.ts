import { expect } from "expect";
import type { Hands } from "./hands";
import type { OfficeTask, Outcome } from "./office-task";

/** Chooses an entry of the menu of a whole row or column. */
const ofWhole = (cell: string, of: "row" | "column", ...entries: string[]) => {
  const work = async (hands: Hands) => {
    await hands.selectWhole(cell, of);
    await hands.choose(cell, of, ...entries);
  };
  return { keyboard: work, mouse: work };
};

/** Types a number over the one in the menu of a whole row or column, and presses Enter. */
const sizeOfWhole = (cell: string, of: "row" | "column", label: string, size: string) => async (hands: Hands) => {
  await hands.selectWhole(cell, of);
  await hands.openMenu(cell, of);
  await hands.downToInput(label);
  await hands.page.keyboard.press("ControlOrMeta+a");
  await hands.page.keyboard.type(size);
  await hands.press("Enter");
};

const widthOf = (after: Outcome, sheet: string, column: number) => after.sheet(sheet).columns.find(({ first, last }) => first <= column && column <= last)?.size;
const heightOf = (after: Outcome, sheet: string, row: number) => after.sheet(sheet).rows.find(({ first, last }) => first <= row && row <= last)?.size;

/** What happens to whole rows and columns, and how cells look. */
export const tasksOfLines: readonly OfficeTask[] = [
  {
    does: "inserts a row inside a planning table, which grows",
    ...ofWhole("Sites!A6", "row", "Insert\\+-rows above"),
    holds(after) {
      expect(after.values("Sites!A5:A8")).toEqual([["Reading Room"], [null], ["Bindery"], ["Cold Store"]]);
      expect(after.sheet("Sites").tables[0]!.area).toMatchObject({ row: 3, rows: 42 });
    },
    undo: 1,
  },
  {
    does: "deletes a row of a planning table, which shrinks",
    ...ofWhole("Sites!A6", "row", "Delete Selected Row"),
    holds(after) {
      expect(after.values("Sites!A5:A7")).toEqual([["Reading Room"], ["Cold Store"], [null]]);
      expect(after.sheet("Sites").tables[0]!.area).toMatchObject({ row: 3, rows: 40 });
    },
    undo: 1,
  },
  {
    does: "inserts a column inside a planning table",
    ...ofWhole("Sites!C5", "column", "Insert\\+-cols left"),
    holds(after) {
      expect(after.values("Sites!B4:D4")).toEqual([["Room", null, "Contact"]]);
    },
    undo: 1,
  },
  {
    does: "deletes a column of a planning table",
    ...ofWhole("Sites!C5", "column", "Delete Selected Column"),
    holds(after) {
      expect(after.values("Sites!B4:C4")).toEqual([["Room", "Time servers"]]);
    },
    undo: 1,
  },
  {
    does: "hides a row",
    ...ofWhole("Sites!A6", "row", "Hide Selected Row"),
    holds(after) {
      expect(after.sheet("Sites").rows.filter(({ hidden }) => hidden)).toMatchObject([{ first: 5, last: 5 }]);
    },
    undo: 1,
  },
  {
    does: "makes a column wider",
    keyboard: sizeOfWhole("Sites!B5", "column", "Column Width", "260"),
    async mouse(hands) {
      await hands.turnTo("Sites");
      const { right } = await hands.edges("B5");
      const { y } = await hands.head("B5", "column");
      await hands.draw({ x: right, y }, { x: right + 40, y });
    },
    holds(after) {
      expect(widthOf(after, "Sites", 1)).toBeGreaterThan(29);
    },
    undo: 1,
  },
  {
    does: "fits a column to what stands in it",
    keyboard: ofWhole("Racks!H5", "column", "Fit for data").keyboard,
    async mouse(hands) {
      await hands.turnTo("Racks");
      const { right } = await hands.edges("H5");
      const { y } = await hands.head("H5", "column");
      await hands.page.mouse.dblclick(right, y);
    },
    holds(after) {
      // Text of 19 characters in a column that was 21 wide or so.
      expect(widthOf(after, "Racks", 7)).toBeGreaterThan(12);
      expect(widthOf(after, "Racks", 7)).toBeLessThan(21);
    },
    undo: 1,
  },
  {
    does: "makes a row higher",
    keyboard: sizeOfWhole("Racks!A6", "row", "Row Height", "60"),
    async mouse(hands) {
      await hands.turnTo("Racks");
      const { bottom } = await hands.edges("A6");
      const { x } = await hands.head("A6", "row");
      await hands.draw({ x, y: bottom }, { x, y: bottom + 36 });
    },
    holds(after) {
      expect(heightOf(after, "Racks", 5)).toBeGreaterThanOrEqual(36);
    },
    undo: 1,
  },
  {
    does: "freezes the rows and columns before a cell",
    async keyboard(hands) {
      await hands.select("Sites!B6");
      await hands.choose("Sites!B6", "cell", "Freeze", "Freeze to active cell.*");
    },
    async mouse(hands) {
      await hands.select("Sites!B6");
      await hands.choose("Sites!B6", "cell", "Freeze", "Freeze to active cell.*");
    },
    holds(after) {
      expect(after.sheet("Sites").frozen).toEqual({ rows: 5, columns: 1 });
    },
    undo: 1,
  },
  {
    does: "sorts the rows of a table by a column",
    ...(() => {
      const work = async (hands: Hands) => {
        await hands.select("Sites!A5:E7");
        await hands.choose("Sites!A5", "cell", "Sort", "Ascending");
      };
      return { keyboard: work, mouse: work };
    })(),
    holds(after) {
      expect(after.values("Sites!A5:B7")).toEqual([["Bindery", "Ground floor, room 1.03"], ["Cold Store", "Annex, room C.2"], ["Reading Room", "Basement, room 0.12"]]);
    },
    undo: 1,
  },
  {
    does: "makes text bold",
    async keyboard(hands) {
      await hands.select("Sites!B5:B6");
      await hands.press("Control+b");
    },
    async mouse(hands) {
      await hands.select("Sites!B5:B6");
      await hands.tool("sheet.command.set-range-bold");
    },
    holds(after) {
      expect([after.look("Sites!B5").bold, after.look("Sites!B6").bold, after.look("Sites!B7").bold]).toEqual([true, true, undefined]);
    },
    undo: 1,
  },
  ...([
    ["shows a number as a percentage", "Racks!E6", "sheet.command.numfmt.set.percent", undefined, (after) => { expect(after.look("Racks!E6").format).toMatch(/%$/); }],
    ["puts text in the middle of its cell", "Sites!B6", "sheet.command.set-horizontal-text-align", 1, (after) => { expect(after.look("Sites!B6").across).toBe("center"); }],
    ["lets text go on in a second line", "Sites!B6", "sheet.command.set-text-wrap", 1, (after) => { expect(after.look("Sites!B6").wrap).toBe(true); }],
    ["joins cells", "Sites!B12:C13", "sheet.command.add-worksheet-merge", 0, (after) => { expect(after.sheet("Sites").merges).toContainEqual({ row: 11, column: 1, rows: 2, columns: 2 }); }],
  ] as const satisfies readonly (readonly [string, string, string, number | undefined, (after: Outcome) => void])[]).map(([does, cells, command, entry, holds]): OfficeTask => {
    const work = async (hands: Hands) => {
      await hands.select(cells);
      await hands.tool(command, entry);
    };
    return { does, keyboard: work, mouse: work, holds, undo: 1 };
  }),
  {
    does: "draws lines round cells",
    ...(() => {
      const work = async (hands: Hands) => {
        await hands.select("Sites!B12:C13");
        await hands.borders(5);
      };
      return { keyboard: work, mouse: work };
    })(),
    holds(after) {
      for (const side of ["top", "left", "bottom", "right"] as const) expect(after.look("Sites!C13")[side]?.line).toBe("thin");
    },
    undo: 1,
  },
];
