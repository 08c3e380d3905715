import { expect } from "expect";
import { cellAddress } from "../../../src/sheet";
import type { Hands } from "./hands";
import type { OfficeTask } from "./office-task";

/** Does the same by keyboard and by mouse but for how the hands do it. */
const bothWays = (work: (hands: Hands) => Promise<void>) => ({ keyboard: work, mouse: work });

/** Brings a sheet to the front and chooses an entry of the menu of its tab. */
const ofTab = (sheet: string, ...entries: string[]) =>
  bothWays(async (hands) => {
    await hands.select(`${sheet}!A5`);
    await hands.chooseOfTab(sheet, ...entries);
  });

/** The first cell of the sheet in front that is not frozen: in a file saved by LibreOffice without its screen nothing is. */
const beginOf = async (hands: Hands) => {
  const { name, rows, columns } = await hands.page.evaluate(() => {
    const sheet = globalThis.baywright.live.workbook.getActiveSheet();
    return { name: sheet.getName(), rows: sheet.getFreeze().ySplit, columns: sheet.getFreeze().xSplit };
  });
  return `${name}!${cellAddress({ row: rows, column: columns })}`;
};

const names = (after: { file: { sheets: readonly { name: string }[] } }) => after.file.sheets.map(({ name }) => name);

/** What happens to sheets, where one is, and to the file. */
export const tasksOfSheets: readonly OfficeTask[] = [
  {
    does: "goes to the begin of a sheet, its last filled cell, and the edge of what is filled",
    async keyboard(hands) {
      await hands.select("Racks!C7");
      await hands.press("Control+ArrowDown");
      await hands.selected("Racks!C9");
      await hands.press("Control+ArrowUp");
      await hands.selected("Racks!C4");
      await hands.press("Control+End");
      // The table goes on below its filled rows.
      await hands.selected("Racks!H44");
      await hands.press("Control+Home");
      await hands.selected(await beginOf(hands));
    },
    async mouse(hands) {
      await hands.turnTo("Racks");
      await hands.page.mouse.move(400, 500);
      await hands.page.mouse.wheel(0, 2_000);
      await hands.page.mouse.wheel(0, -4_000);
      await hands.workbook.click(8, 7);
      await hands.selected("Racks!H9");
      await hands.workbook.click(4, 0);
      await hands.selected("Racks!A5");
    },
    holds(after) {
      expect(after.values("Racks!H9")).toEqual([["12 x C13, 4 x C19"]]);
    },
  },
  {
    does: "jumps to cells of another sheet by the name box",
    async keyboard(hands) {
      await hands.select("Sites!B6");
      await hands.select("Racks!B6:C7");
    },
    async mouse(hands) {
      await hands.select("Sites!B6");
      const box = hands.page.locator("[data-u-comp=defined-name] input");
      await box.click({ clickCount: 3 });
      await hands.page.keyboard.type("Racks!B6:C7");
      await hands.page.keyboard.press("Enter");
    },
    async holds({ hands }) {
      await hands.selected("Racks!B6:C7");
    },
  },
  {
    does: "selects all that is connected, and empties nothing",
    async keyboard(hands) {
      await hands.select("Sites!B6");
      await hands.press("Control+a");
    },
    async mouse(hands) {
      await hands.select("Sites!A4:D7");
    },
    async holds({ hands }) {
      const { area } = await hands.page.evaluate(() => globalThis.baywright.port.selection());
      expect(area.row).toBeLessThanOrEqual(3);
      expect(area.row + area.rows).toBeGreaterThanOrEqual(7);
    },
  },
  {
    does: "goes to the pane and back, and what is typed then stands in the cell",
    async keyboard(hands) {
      await hands.select("Sites!B12");
      for (let presses = 0; presses < 8 && !(await hands.page.evaluate(() => document.activeElement?.closest("#pane") !== null)); presses += 1) await hands.page.keyboard.press("F6");
      await hands.page.keyboard.press("Escape");
      await hands.type("back again");
    },
    async mouse(hands) {
      await hands.select("Sites!B12");
      await hands.page.locator("#pane").getByText("Tables", { exact: true }).click();
      await hands.select("Sites!B12");
      await hands.type("back again");
    },
    holds(after) {
      expect(after.values("Sites!B12")).toEqual([["back again"]]);
    },
    undo: 1,
  },
  {
    does: "finds a text",
    ...bothWays(async (hands) => {
      await hands.select("Sites!A5");
      await hands.openFind("find");
      await hands.page.keyboard.type("foreman");
      await hands.page.keyboard.press("Enter");
      await hands.page.getByText("1/1").waitFor();
      await hands.page.keyboard.press("Escape");
    }),
    async holds({ hands }) {
      await hands.selected("Sites!C6");
    },
  },
  {
    does: "replaces a text wherever it stands on a sheet",
    ...bothWays(async (hands) => {
      await hands.select("Racks!A5");
      await hands.openFind("replace");
      await hands.page.keyboard.type("C19");
      await hands.page.keyboard.press("Enter");
      await hands.page.waitForFunction(() => /\d+\/\d+/.test(document.body.innerText));
      // Behind the two arrows that lead from one place to the next stands what is written instead.
      for (const key of ["Tab", "Tab", "Tab"]) await hands.page.keyboard.press(key);
      await hands.page.keyboard.type("C21");
      await hands.pressButton("Replace All");
      await hands.pressButton("OK");
      await hands.workbook.settle();
      await hands.workbook.until(async () => (await globalThis.baywright.port.read(["Racks"])).sheets.find(({ name }) => name === "Racks")!.values[4]![7] === "12 x C13, 4 x C21", null);
      await hands.page.keyboard.press("Escape");
    }),
    holds(after) {
      expect(after.values("Racks!H5:H9").flat()).toEqual(new Array(5).fill("12 x C13, 4 x C21"));
    },
    undo: 1,
  },
  {
    does: "gives a sheet another name, which formulas follow",
    ...bothWays(async (hands) => {
      await hands.select("Sites!A5");
      if (hands.way === "keyboard") await hands.chooseOfTab("Sites", "Rename");
      else await hands.tab("Sites").dblclick();
      // The engine selects the name a moment after it can be typed over.
      await hands.page.waitForFunction(() => document.activeElement?.closest("[data-u-comp=slide-tab-item]") !== null && document.getSelection()?.toString() === "Sites");
      await hands.type("Places");
    }),
    holds(after) {
      expect(names(after)).toContain("Places");
      expect(names(after)).not.toContain("Sites");
    },
    undo: 1,
  },
  {
    does: "makes a copy of a sheet",
    ...ofTab("Sites", "Copy"),
    holds(after) {
      expect(names(after).slice(1, 4)).toEqual(["Sites", "Sites (Copy)", "Racks"]);
      expect(after.values("Sites (Copy)!A5:A7")).toEqual([["Reading Room"], ["Bindery"], ["Cold Store"]]);
    },
    undo: 1,
  },
  {
    does: "moves a sheet to the right",
    keyboard: ofTab("Sites", "Move right").keyboard,
    async mouse(hands) {
      await hands.turnTo("Sites");
      await hands.apart("Sites");
      const [from, to] = [(await hands.tab("Sites").boundingBox())!, (await hands.tab("Racks").boundingBox())!];
      const y = from.y + from.height / 2;
      await hands.draw({ x: from.x + from.width / 2, y }, { x: to.x + to.width - 8, y }, () =>
        // A tab lets itself be drawn once it was held for a moment.
        hands.page.waitForFunction(() => [...document.querySelectorAll<HTMLElement>("[data-u-comp=slide-tab-item]")].some(({ style }) => style.cursor === "move")),
      );
    },
    holds(after) {
      expect(names(after).slice(0, 4)).toEqual(["Settings", "Racks", "Sites", "Feeds"]);
    },
    undo: 1,
  },
  {
    does: "deletes a sheet",
    ...bothWays(async (hands) => {
      await hands.select("Sites!A5");
      await hands.chooseOfTab("Sites", "Delete");
      await hands.pressButton("OK");
      await hands.workbook.until(async () => !(await globalThis.baywright.port.read([])).sheets.some(({ name }) => name === "Sites"), null, 10_000);
    }),
    holds(after) {
      expect(names(after)).not.toContain("Sites");
    },
    undo: 1,
  },
  {
    does: "hides a sheet and shows it again",
    ...bothWays(async (hands) => {
      await hands.select("Sites!A5");
      await hands.chooseOfTab("Sites", "Hide");
      await hands.workbook.until(async () => (await globalThis.baywright.port.read([])).sheets.some(({ name, visible }) => name === "Sites" && !visible), null, 10_000);
      const front = await hands.page.evaluate(async () => (await globalThis.baywright.port.selection()).sheet);
      await hands.chooseOfTab(front, "Unhide");
      const hidden = hands.page.getByRole("menuitem", { name: "Sites" });
      await hidden.waitFor();
      if (hands.way === "mouse") await hidden.click();
      else {
        for (let presses = 0; presses < 30 && !(await hidden.evaluate((item) => item === document.activeElement)); presses += 1) await hands.page.keyboard.press("ArrowDown");
        await hands.page.keyboard.press("Enter");
      }
      await hands.workbook.until(async () => (await globalThis.baywright.port.read([])).sheets.some(({ name, visible }) => name === "Sites" && visible), null, 10_000);
    }),
    holds(after) {
      expect(after.sheet("Sites").state).toBe("visible");
    },
  },
  {
    does: "sets up how a sheet is printed",
    ...bothWays(async (hands) => {
      await hands.select("Sites!A5");
      if (hands.way === "keyboard") await hands.page.keyboard.press("Control+p");
      else await hands.chooseOfTab("Sites", "Print set-up …");
      const dialog = hands.page.getByRole("dialog", { name: "Print set-up of Sites" });
      await dialog.waitFor();
      if (hands.way === "keyboard") {
        await hands.page.keyboard.type("Lett");
        await hands.page.keyboard.press("Tab");
        await hands.page.keyboard.type("Land");
        await hands.page.keyboard.press("Tab");
        await hands.page.keyboard.press("Tab");
        await hands.page.keyboard.press("ControlOrMeta+a");
        await hands.page.keyboard.type("3:4");
        await hands.page.keyboard.press("Enter");
      } else {
        await dialog.getByLabel("Paper").selectOption("Letter");
        await dialog.getByLabel("Orientation").selectOption("landscape");
        await dialog.getByLabel("Rows that stand again").fill("3:4");
        await dialog.getByRole("button", { name: "Keep" }).click();
      }
      await dialog.waitFor({ state: "detached" });
      await hands.selected("Sites!A5");
    }),
    holds(after) {
      expect(after.sheet("Sites").print).toMatchObject({ paper: "Letter", orientation: "landscape", titleRows: { row: 2, rows: 2 } });
    },
    undo: 1,
  },
];
