import { sameSheetName } from "../../sheet";
import { checkEdits, type SheetState } from "../check-edits";
import type { Edit } from "../port";
import { cellInput, holdsMore, safeFormat } from "./cell-input";
import type { OfficeHost } from "./host";
import { rangeOf } from "./range-of";
import { sheetSteps, unfinishedName } from "./sheet-steps";
import { packSteps, rowBlocks, stepBytes, WorkbookRequest, type Step } from "./step";

/**
 * Carries out edits in order.
 *
 * Where cells or sheets are written a sync comes first, or several for more than 100,000 cells: it learns the names of the sheets, which of
 * them are protected, and where "@" would turn a formula or a number into text, and refuses the whole list where one edit could not be done.
 * Then all goes in one request, or in several under the host's limit. When a request fails a sheet that is not finished is taken away again.
 */
export async function applyEdits(host: OfficeHost, context: Excel.RequestContext, asked: readonly Edit[]): Promise<void> {
  checkEdits(asked, null);
  const edits = asked.flatMap((edit): readonly Edit[] => (edit.kind === "write" ? writtenRows(edit) : [edit]));
  const look = asked.some(({ kind }) => kind === "write" || kind === "add-sheet" || kind === "resize-table") ? await lookAround(context, edits) : null;
  if (look !== null) checkEdits(asked, look.sheets);
  try {
    for (const request of packSteps(editSteps(host, edits, look))) {
      context.application.suspendApiCalculationUntilNextSync();
      context.application.suspendScreenUpdatingUntilNextSync();
      const queued = new WorkbookRequest(context.workbook);
      for (const step of request) step.queue(queued);
      // One sync a request is the point: each is as large as the host takes.
      // eslint-disable-next-line office-addins/no-context-sync-in-loop
      await context.sync();
    }
  } catch (failure) {
    if (edits.some(({ kind }) => kind === "add-sheet")) await clearUnfinished(host);
    throw failure;
  }
}

interface Look {
  readonly sheets: readonly SheetState[];
  /** Number formats now in the area of an edit that writes formulas, numbers or truth values. */
  readonly formats: ReadonlyMap<Edit, readonly (readonly unknown[])[]>;
}

async function lookAround(context: Excel.RequestContext, edits: readonly Edit[]): Promise<Look> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name,items/visibility,items/protection/protected");
  const ranges: { readonly edit: Edit; readonly range: Excel.Range }[] = [];
  let cells = 0;
  for (const edit of edits) {
    if (edit.kind !== "write" || !edit.cells.some((line) => line.some((cell) => cell !== null && holdsMore(cell)))) continue;
    const area = { row: edit.row, column: edit.column, rows: edit.cells.length, columns: widthOf(edit) };
    cells += area.rows * area.columns;
    if (cells > formatsAtOnce) {
      // One sync an answer is the point: each is as large as the host gives.
      // eslint-disable-next-line office-addins/no-context-sync-in-loop
      await context.sync();
      cells = area.rows * area.columns;
    }
    ranges.push({ edit, range: rangeOf(worksheets.getItemOrNullObject(edit.sheet), area).load("numberFormat") });
  }
  await context.sync();
  return {
    sheets: worksheets.items.map((sheet) => ({ name: sheet.name, visible: sheet.visibility === "Visible", protected: sheet.protection.protected })),
    formats: new Map(ranges.flatMap(({ edit, range }) => (range.isNullObject ? [] : [[edit, range.numberFormat]]))),
  };
}

type WriteEdit = Extract<Edit, { kind: "write" }>;

/** Most cells of which one request asks the number formats, at some ten bytes each, and most that are written as one piece. */
const [formatsAtOnce, pieceCells] = [100_000, 20_000];

function widthOf({ cells }: Pick<WriteEdit, "cells">): number {
  return cells.reduce((most, line) => Math.max(most, line.length), 0);
}

/** Leaves out the rows of a block in which nothing is written, as scattered cells come in blocks, and cuts the others into pieces. */
function writtenRows(edit: WriteEdit): WriteEdit[] {
  const pieces: { row: number; cells: WriteEdit["cells"][number][] }[] = [];
  const mostRows = Math.max(1, Math.floor(pieceCells / Math.max(1, widthOf(edit))));
  for (const [index, line] of edit.cells.entries()) {
    if (line.every((cell) => cell === null)) continue;
    const last = pieces.at(-1);
    if (last !== undefined && last.row + last.cells.length === edit.row + index && last.cells.length < mostRows) last.cells.push(line);
    else pieces.push({ row: edit.row + index, cells: [line] });
  }
  return pieces.map((piece) => ({ ...edit, ...piece }));
}

function* editSteps(host: OfficeHost, edits: readonly Edit[], look: Look | null): Generator<Step> {
  if (look?.sheets.some(({ name }) => sameSheetName(name, unfinishedName)) === true) {
    yield once((request) => {
      request.sheet(unfinishedName).delete();
      request.forgetSheets();
    });
  }
  const sheets = (look?.sheets ?? []).filter(({ name }) => !sameSheetName(name, unfinishedName));
  for (const [index, edit] of edits.entries()) {
    if (edit.kind === "add-sheet") {
      const names = checkEdits(edits.slice(0, index + 1), sheets);
      yield* sheetSteps(edit.plan, names.findIndex((name) => sameSheetName(name, edit.plan.name)));
    } else if (edit.kind === "write") {
      yield* writeSteps(edit, look?.formats.get(edit));
    } else {
      yield once((request) => {
        queueEdit(host, request.sheet(edit.sheet), edit);
        if (edit.kind === "rename-sheet" || edit.kind === "delete-sheet") request.forgetSheets();
      });
    }
  }
}

function once(queue: Step["queue"]): Step {
  return { bytes: stepBytes({ objects: 5, calls: 4 }), queue };
}

function* writeSteps({ sheet, row, column, cells }: WriteEdit, formats: readonly (readonly unknown[])[] | undefined): Generator<Step> {
  const width = widthOf({ cells });
  // A null leaves the cell, and its format, as it is.
  const grid = cells.map((line) => Array.from({ length: width }, (_, at) => line[at] ?? null));
  const inputs = grid.map((line) => line.map((cell) => (cell === null ? null : cellInput(cell))));
  const keeps = grid.map((line, index) =>
    line.map((cell, at) => {
      if (cell === null) return null;
      const now = formats?.[index]?.[at];
      const safe = safeFormat(cell, typeof now === "string" ? now : "");
      return safe === "" || safe === now ? null : safe;
    }),
  );
  for (const { from, to, bytes } of rowBlocks(inputs)) {
    const block = keeps.slice(from, to);
    yield {
      bytes: stepBytes({ objects: 2, calls: 2, sent: block }) + bytes,
      queue: (request) => {
        const range = request.range(sheet, { row: row + from, column, rows: to - from, columns: width });
        if (block.some((line) => line.some((one) => one !== null))) range.numberFormat = block;
        range.formulas = inputs.slice(from, to);
      },
    };
  }
}

function queueEdit(host: OfficeHost, sheet: Excel.Worksheet, edit: Exclude<Edit, { kind: "add-sheet" | "write" }>): void {
  switch (edit.kind) {
    case "resize-table": {
      const table = sheet.tables.getItem(edit.table);
      if (host.supports("1.13") && "resize" in table) table.resize(rangeOf(sheet, edit.area));
      else {
        // Before 1.13 a table cannot be resized: its cells stay, and a new table of its name is laid over them.
        table.convertToRange();
        const again = sheet.tables.add(rangeOf(sheet, edit.area), true);
        again.name = edit.table;
        again.style = "TableStyleLight1";
      }
      return;
    }
    case "rename-sheet":
      sheet.name = edit.name;
      return;
    case "show-sheet":
      sheet.visibility = "Visible";
      return;
    case "hide-sheet":
      sheet.visibility = "Hidden";
      return;
    case "delete-sheet":
      sheet.delete();
      return;
    case "select":
      sheet.activate();
      rangeOf(sheet, edit.area).select();
  }
}

/** Takes an unfinished sheet away. Where that fails too it stays under its own name, and the next build takes it away first. */
async function clearUnfinished(host: OfficeHost): Promise<void> {
  try {
    await host.run(async (context) => {
      context.workbook.worksheets.getItemOrNullObject(unfinishedName).delete();
      await context.sync();
    });
  } catch {
    // The failure that brought us here is the one to tell.
  }
}
