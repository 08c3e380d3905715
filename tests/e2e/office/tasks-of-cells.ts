import { expect } from "expect";
import type { Hands } from "./hands";
import type { OfficeTask } from "./office-task";

/** Does the same by keyboard and by mouse but for how the hands do it. */
const bothWays = (work: (hands: Hands) => Promise<void>) => ({ keyboard: work, mouse: work });

/** Draws the little square at the corner of the selected cells to another cell. */
async function drawCorner(hands: Hands, from: string, to: string): Promise<void> {
  const [{ right, bottom }, target] = [await hands.edges(from), await hands.edges(to)];
  await hands.draw({ x: right - 1, y: bottom - 1 }, { x: target.right - 8, y: target.bottom - 5 });
  await hands.workbook.typed();
}

/** What is typed, moved about and taken away in cells. */
export const tasksOfCells: readonly OfficeTask[] = [
  {
    does: "types a text, a number and a formula along a row",
    async keyboard(hands) {
      await hands.select("Racks!E12");
      await hands.type("shelves", "Tab");
      await hands.type("3", "Tab");
      await hands.type("=F12*4");
    },
    async mouse(hands) {
      for (const [cell, text] of [["E12", "shelves"], ["F12", "3"], ["G12", "=F12*4"]] as const) {
        await hands.select(`Racks!${cell}`);
        await hands.page.keyboard.type(text);
      }
      await hands.select("Racks!A14");
      await hands.workbook.typed();
    },
    holds(after) {
      expect(after.values("Racks!E12:G12")).toEqual([["shelves", 3, 12]]);
      expect(after.cell("Racks!G12")?.formula).toBe("=F12*4");
    },
    undo: 3,
  },
  {
    does: "changes the end of a text in its cell",
    async keyboard(hands) {
      await hands.select("Sites!B6");
      await hands.page.keyboard.press("F2");
      await hands.type(" b");
    },
    async mouse(hands) {
      await hands.select("Sites!B6");
      const { x, y } = await hands.workbook.place(5, 1);
      await hands.page.mouse.dblclick(x, y);
      await hands.page.keyboard.press("End");
      await hands.type(" b");
    },
    holds(after) {
      expect(after.values("Sites!B6")).toEqual([["Ground floor, room 1.03 b"]]);
    },
    undo: 1,
  },
  {
    does: "begins to type over a cell and lets it be",
    ...bothWays(async (hands) => {
      await hands.select("Sites!B6");
      await hands.page.keyboard.type("slip");
      await hands.press("Escape");
    }),
    holds(after) {
      expect(after.values("Sites!B6")).toEqual([["Ground floor, room 1.03"]]);
    },
  },
  {
    does: "writes two lines in one cell",
    ...bothWays(async (hands) => {
      await hands.select("Sites!B12");
      await hands.page.keyboard.type("front");
      await hands.page.keyboard.press("Alt+Enter");
      await hands.type("back");
    }),
    holds(after) {
      expect(after.values("Sites!B12")).toEqual([["front\nback"]]);
    },
    undo: 1,
  },
  {
    does: "fills a cell down over the two below",
    async keyboard(hands) {
      await hands.select("Sites!E5:E7");
      await hands.press("Control+d");
    },
    async mouse(hands) {
      await hands.select("Sites!C5");
      await drawCorner(hands, "C5", "C7");
    },
    holds(after) {
      const column = after.hands.way === "keyboard" ? "E" : "C";
      const text = after.hands.way === "keyboard" ? "10.64.0.5" : "Duty librarian, front desk";
      expect(after.values(`Sites!${column}5:${column}7`)).toEqual([[text], [text], [text]]);
    },
    undo: 1,
  },
  {
    does: "fills a formula to the right, and it looks at the cells beside",
    async keyboard(hands) {
      await hands.select("Racks!E12");
      await hands.type("=E5*2");
      await hands.select("Racks!E12:F12");
      await hands.press("Control+r");
    },
    async mouse(hands) {
      await hands.select("Racks!E12");
      await hands.type("=E5*2");
      await hands.select("Racks!E12");
      await drawCorner(hands, "E12", "F12");
    },
    holds(after) {
      expect(after.cell("Racks!F12")?.formula).toBe("=F5*2");
      expect(after.values("Racks!E12:F12")).toEqual([[2000, 1600]]);
    },
    undo: 2,
  },
  {
    does: "copies cells and pastes them elsewhere",
    async keyboard(hands) {
      await hands.select("Sites!A5:B6");
      await hands.press("Control+c");
      await hands.copied("Basement");
      await hands.select("Sites!B12");
      await hands.press("Control+v");
      await hands.workbook.filled("Sites", 12, 2);
    },
    async mouse(hands) {
      await hands.select("Sites!A5:B6");
      await hands.choose("Sites!A5", "cell", "Copy");
      await hands.copied("Basement");
      await hands.select("Sites!B12");
      await hands.choose("Sites!B12", "cell", "Paste");
      await hands.workbook.filled("Sites", 12, 2);
    },
    holds(after) {
      expect(after.values("Sites!B12:C13")).toEqual([["Reading Room", "Basement, room 0.12"], ["Bindery", "Ground floor, room 1.03"]]);
      expect(after.values("Sites!A5:A6")).toEqual([["Reading Room"], ["Bindery"]]);
    },
    undo: 1,
  },
  {
    does: "cuts cells and pastes them elsewhere",
    async keyboard(hands) {
      await hands.select("Sites!B6:C6");
      await hands.press("Control+x");
      await hands.copied("foreman");
      await hands.select("Sites!B12");
      await hands.press("Control+v");
      await hands.workbook.filled("Sites", 11, 2);
    },
    async mouse(hands) {
      await hands.select("Sites!B6:C6");
      await hands.choose("Sites!B6", "cell", "Cut");
      await hands.copied("foreman");
      await hands.select("Sites!B12");
      await hands.choose("Sites!B12", "cell", "Paste");
      await hands.workbook.filled("Sites", 11, 2);
    },
    holds(after) {
      expect(after.values("Sites!B6:C6")).toEqual([[null, null]]);
      expect(after.values("Sites!B12:C12")).toEqual([["Ground floor, room 1.03", "Bindery foreman, workshop"]]);
    },
    undo: 1,
  },
  {
    does: "pastes a text from another program",
    async keyboard(hands) {
      await hands.copyElsewhere("10.64.0.9");
      await hands.select("Sites!E6");
      await hands.press("Control+v");
    },
    async mouse(hands) {
      await hands.copyElsewhere("10.64.0.9");
      await hands.select("Sites!E6");
      await hands.choose("Sites!E6", "cell", "Paste");
    },
    holds(after) {
      expect(after.values("Sites!E6")).toEqual([["10.64.0.9"]]);
    },
    undo: 1,
  },
  {
    does: "pastes a table from another program under the rows of a table",
    async keyboard(hands) {
      await hands.copyElsewhere("Gallery\tFirst floor\r\nArchive\tCellar\r\n");
      await hands.select("Sites!A8");
      await hands.press("Control+v");
      await hands.workbook.filled("Sites", 8, 1);
    },
    async mouse(hands) {
      await hands.copyElsewhere("Gallery\tFirst floor\r\nArchive\tCellar\r\n");
      await hands.select("Sites!A8");
      await hands.choose("Sites!A8", "cell", "Paste");
      await hands.workbook.filled("Sites", 8, 1);
    },
    holds(after) {
      expect(after.values("Sites!A8:B9")).toEqual([["Gallery", "First floor"], ["Archive", "Cellar"]]);
    },
    undo: 1,
  },
  {
    does: "pastes only the figure of a formula",
    async keyboard(hands) {
      await hands.select("Racks!E12");
      await hands.type("=6*7");
      await hands.select("Racks!E12");
      await hands.press("Control+c");
      await hands.copied("42");
      await hands.select("Racks!E14");
      await hands.press("Control+Shift+v");
      await hands.workbook.filled("Racks", 13, 4);
    },
    async mouse(hands) {
      await hands.select("Racks!E12");
      await hands.type("=6*7");
      await hands.select("Racks!E12");
      await hands.choose("Racks!E12", "cell", "Copy");
      await hands.copied("42");
      await hands.select("Racks!E14");
      await hands.choose("Racks!E14", "cell", "Paste Special", "Paste Value");
      await hands.workbook.filled("Racks", 13, 4);
    },
    holds(after) {
      expect(after.values("Racks!E14")).toEqual([[42]]);
      expect(after.cell("Racks!E14")?.formula).toBeUndefined();
    },
    undo: 2,
  },
  {
    does: "empties cells, and their looks stay",
    async keyboard(hands) {
      await hands.select("Sites!A4:B4");
      await hands.press("Delete");
    },
    async mouse(hands) {
      await hands.select("Sites!A4:B4");
      await hands.choose("Sites!A4", "cell", "Clear", "Clear Contents");
    },
    holds(after) {
      expect(after.values("Sites!A4:C4")).toEqual([[null, null, "Contact"]]);
      expect(after.look("Sites!A4").bold).toBe(true);
    },
    undo: 1,
  },
  {
    does: "chooses what a cell may hold from its list",
    async keyboard(hands) {
      await hands.select("Racks!B5");
      await hands.page.keyboard.press("Alt+ArrowDown");
      await hands.pick("Bindery");
    },
    async mouse(hands) {
      await hands.select("Racks!B5");
      const { right, bottom } = await hands.edges("B5");
      await hands.page.mouse.click(right - 8, bottom - 10);
      await hands.pick("Bindery");
    },
    holds(after) {
      expect(after.values("Racks!B5")).toEqual([["Bindery"]]);
    },
    undo: 1,
  },
];
