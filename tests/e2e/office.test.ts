import { grounds } from "./office/grounds";
import { officeTasks } from "./office/tasks";
import { tryTask } from "./office/try-task";
import { beginStory } from "./support/story";
import type { WorkbookPage } from "./support/workbook-page";

// The bench "office" does all of them, in both ways, on each workbook; here are those that most others lean on. Filters and notes have stories of their own.
const few = [
  ["keyboard", "types a text, a number and a formula along a row"],
  ["mouse", "copies cells and pastes them elsewhere"],
  ["keyboard", "chooses what a cell may hold from its list"],
  ["mouse", "deletes a row of a planning table, which shrinks"],
  ["keyboard", "jumps to cells of another sheet by the name box"],
  ["mouse", "makes text bold"],
  ["keyboard", "sets up how a sheet is printed"],
] as const;

let workbook: WorkbookPage;
const { at } = beginStory("office", (opened) => {
  workbook = opened;
});

describe.each(grounds)("in a workbook that is $name somebody", (ground) => {
  beforeAll(() => ground.lay(workbook, at("ground.xlsx")));

  test.each(few)("by %s %s", (way, does) => {
    const task = officeTasks.find((one) => one.does === does);
    if (task === undefined) throw new Error(`No task is to do what "${does}" says.`);
    return tryTask(workbook, task, way, at("saved.xlsx"));
  });
});
