import type { OfficeTask } from "./office-task";
import { tasksOfCells } from "./tasks-of-cells";
import { tasksOfLines } from "./tasks-of-lines";
import { tasksOfLists } from "./tasks-of-lists";
import { tasksOfSheets } from "./tasks-of-sheets";

/** What people do in any spreadsheet, in an order in which each leaves the workbook as it was. */
export const officeTasks: readonly OfficeTask[] = [...tasksOfCells, ...tasksOfLines, ...tasksOfSheets, ...tasksOfLists];
