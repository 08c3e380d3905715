import { expect } from "expect";
import { conditionOf } from "../../../src/workbook/document/sheet-filter";
import type { FilterCondition } from "../../../src/workbook/document/workbook-document";
import { placeOf, type Hands } from "./hands";
import type { OfficeTask, Outcome } from "./office-task";

/** The array whose row is shown alone, and where its name stands. */
const [wanted, header] = ["bi-array-1", "Arrays!B4"] as const;
const onlyWanted: FilterCondition = { kind: "list", texts: [wanted], blank: false };

/** Opens the card of a filter: by Alt+Down on its header, or by a click on its arrow. */
async function openFilter(hands: Hands, text: string): Promise<void> {
  if (hands.way === "keyboard") {
    await hands.select(text);
    await hands.press("Alt+ArrowDown");
  } else {
    await hands.turnTo(placeOf(text).sheet);
    const { right, bottom } = await hands.edges(text);
    await hands.page.mouse.click(right - 9, bottom - 9);
  }
  await hands.page.getByRole("searchbox").waitFor();
}

/** Shows the rows with a value alone: by searching for it, or by ticking it alone. */
async function showOnly(hands: Hands, value: string): Promise<void> {
  if (hands.way === "keyboard") {
    await hands.page.keyboard.type(value);
    await hands.press("Enter");
  } else {
    await hands.page.getByLabel("All", { exact: true }).uncheck();
    await hands.page.getByLabel(value, { exact: true }).check();
    await hands.page.getByRole("button", { name: "Apply" }).click();
  }
  await isLeft(hands);
}

/** Waits until the card of a filter is gone, and the keys go to the cells. */
async function isLeft(hands: Hands): Promise<void> {
  await hands.page.locator(".filter-card").waitFor({ state: "hidden" });
  await hands.page.waitForFunction(() => document.activeElement?.closest("[data-u-comp=editor]") !== null);
}

/** The condition of a column of Arrays, counted from 0, and the rows out of sight of those that hold an array, counted from 1, as the file has them. */
function filtered(after: Outcome, column: number): { readonly condition: FilterCondition | undefined; readonly hidden: number[] } {
  const { filters = [], rows, tables } = after.sheet("Arrays");
  const filter = filters.find(({ table }) => table === tables[0]!.name);
  const hidden = rows.flatMap((line) => (line.hidden === true ? Array.from({ length: line.last - line.first + 1 }, (_, at) => line.first + at + 1) : []));
  return { condition: filter && conditionOf(filter, column), hidden: hidden.filter((row) => row <= 10) };
}

async function writeNote(hands: Hands, text: string, note: string): Promise<void> {
  await hands.select(text);
  if (hands.way === "keyboard") await hands.page.keyboard.press("Shift+F2");
  else await hands.choose(text, "cell", "Note \\(Shift\\+F2\\)");
  const field = hands.page.getByRole("textbox", { name: /^Note on / });
  await field.waitFor();
  await hands.page.keyboard.type(note);
  if (hands.way === "keyboard") await hands.page.keyboard.press("Escape");
  else await hands.page.getByRole("button", { name: "Done" }).click();
  await field.waitFor({ state: "hidden" });
  await hands.selected(text);
}

export const tasksOfLists: readonly OfficeTask[] = [
  {
    does: "shows the rows of a table with one value alone",
    async keyboard(hands) {
      await openFilter(hands, header);
      await showOnly(hands, wanted);
    },
    async mouse(hands) {
      await openFilter(hands, header);
      await showOnly(hands, wanted);
    },
    holds(after) {
      expect(filtered(after, 1)).toEqual({ condition: onlyWanted, hidden: [5, 6, 8, 9, 10] });
      // What is out of sight is read by the plan all the same.
      expect(after.values("Arrays!B5:B10")).not.toContainEqual([null]);
    },
    undo: 1,
  },
  {
    does: "shows the rows of a table whose text contains another",
    async keyboard(hands) {
      await openFilter(hands, header);
      await hands.page.keyboard.press("Shift+Tab");
      await hands.page.keyboard.press("ArrowDown");
      await hands.page.keyboard.press("Tab");
      await hands.page.keyboard.type("rr-");
      await hands.press("Enter");
      await isLeft(hands);
    },
    async mouse(hands) {
      await openFilter(hands, header);
      await hands.page.getByLabel("Show rows whose value").selectOption("contains");
      await hands.page.getByLabel("Value", { exact: true }).fill("rr-");
      await hands.page.getByRole("button", { name: "Apply" }).click();
      await isLeft(hands);
    },
    holds(after) {
      expect(filtered(after, 1)).toEqual({ condition: { kind: "compare", joins: false, comparisons: [{ operator: "equal", value: "*rr-*" }] }, hidden: [7, 8, 9, 10] });
    },
    undo: 1,
  },
  {
    does: "shows all rows of a filtered table again, and then another one alone",
    async keyboard(hands) {
      await openFilter(hands, header);
      await showOnly(hands, "rr-array-2");
      await hands.choose(header, "cell", "Show all rows");
      await openFilter(hands, header);
      await showOnly(hands, wanted);
    },
    async mouse(hands) {
      await openFilter(hands, header);
      await showOnly(hands, "rr-array-2");
      await hands.page.getByRole("button", { name: "Show all rows" }).click();
      await openFilter(hands, header);
      await showOnly(hands, wanted);
    },
    holds(after) {
      expect(filtered(after, 1)).toEqual({ condition: onlyWanted, hidden: [5, 6, 8, 9, 10] });
    },
    undo: 3,
  },
  {
    does: "takes the arrows of a table away",
    async keyboard(hands) {
      await hands.select("Racks!A6");
      await hands.press("Control+Shift+l");
    },
    async mouse(hands) {
      await hands.select("Racks!A6");
      await hands.choose("Racks!A6", "cell", "Filter arrows \\(Ctrl\\+Shift\\+L\\)");
    },
    holds(after) {
      expect(after.sheet("Racks").filters).toEqual([]);
    },
    undo: 1,
  },
  {
    does: "empties cells of a filtered table, and none out of sight",
    async keyboard(hands) {
      await openFilter(hands, header);
      await showOnly(hands, wanted);
      await hands.select("Arrays!E5:E10");
      await hands.press("Delete");
    },
    async mouse(hands) {
      await openFilter(hands, header);
      await showOnly(hands, wanted);
      await hands.select("Arrays!E7");
      await hands.choose("Arrays!E7", "cell", "Clear", "Clear Contents");
    },
    holds(after) {
      expect(after.values("Arrays!E5:E10").flat().map((value) => value !== null)).toEqual([true, true, false, true, true, true]);
    },
    undo: 2,
  },
  {
    does: "writes a note on a cell",
    keyboard: (hands) => writeNote(hands, "Sites!B5", "counted twice"),
    mouse: (hands) => writeNote(hands, "Sites!B5", "counted twice"),
    holds(after) {
      expect(after.sheet("Sites").notes.map(({ row, column, text }) => [row, column, text])).toEqual([[4, 1, "counted twice"]]);
    },
    undo: 1,
  },
  {
    does: "deletes a note and writes another",
    async keyboard(hands) {
      await writeNote(hands, "Sites!B5", "as of March");
      await hands.choose("Sites!B5", "cell", "Delete the note");
      await writeNote(hands, "Sites!B6", "as of April");
    },
    async mouse(hands) {
      await writeNote(hands, "Sites!B5", "as of March");
      await hands.choose("Sites!B5", "cell", "Delete the note");
      await writeNote(hands, "Sites!B6", "as of April");
    },
    holds(after) {
      expect(after.sheet("Sites").notes.map(({ row, column, text }) => [row, column, text])).toEqual([[5, 1, "as of April"]]);
    },
    undo: 3,
  },
];
