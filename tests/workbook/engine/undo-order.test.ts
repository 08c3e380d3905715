import { ICommandService, IUniverInstanceService } from "@univerjs/core";
import { bootEngine } from "../../../src/headless/open-headless";
import { createBrowserPort } from "../../../src/workbook/engine/browser-port";
import { LiveWorkbook } from "../../../src/workbook/engine/live-workbook";
import { emptyWorkbook } from "../../../src/workbook/engine/stored-sheet";
import type { SheetPlan } from "../../../src/sheet";

/** A sheet of its own, with a list and a format that a condition gives. */
const tab: SheetPlan = {
  name: "Tab",
  rows: [[{ value: "step" }, { value: "" }]],
  styles: { refused: { bold: true } },
  columnWidths: [],
  validations: [{ area: { row: 0, column: 1, rows: 1, columns: 1 }, rule: { kind: "list", items: ["yes", "no"] }, message: "Write yes or no.", strict: true }],
  conditionalFormats: [{ area: { row: 0, column: 1, rows: 1, columns: 1 }, formula: '=B1="no"', style: "refused" }],
};

test("a step that adds a sheet, writes into it and hides another is taken back whole, what was typed before it too, and comes again whole", async () => {
  const univer = bootEngine(emptyWorkbook());
  const live = new LiveWorkbook(univer);
  try {
    const port = createBrowserPort(univer, live);
    const commands = univer.__getInjector().get(ICommandService);
    // What goes back belongs to the workbook that has the keyboard.
    univer.__getInjector().get(IUniverInstanceService).focusUnit(live.workbook.getUnitId());
    const seen = async () => {
      const [{ sheets }, { data }] = [await port.read(), live.store()];
      const rules = (data.resources ?? []).flatMap(({ name, data: text }) => (/VALIDATION|CONDITIONAL/.test(name) ? [...text.matchAll(/"(?:uid|cfId)":/g)] : []));
      return { sheets: sheets.map(({ name, visible, values }) => [name, visible, values]), rules: rules.length };
    };
    const begin = await seen();
    await port.apply([{ kind: "write", sheet: "Sheet1", row: 0, column: 0, cells: [[{ value: "typed" }]] }]);
    const before = await seen();
    await port.apply([
      { kind: "add-sheet", plan: tab },
      { kind: "write", sheet: "Tab", row: 0, column: 1, cells: [[{ value: "yes" }]] },
      { kind: "write", sheet: "Tab", row: 0, column: 1, cells: [[{ value: "no" }]] },
      { kind: "hide-sheet", sheet: "Sheet1" },
    ]);
    const after = await seen();
    expect(after).toEqual({ sheets: [["Sheet1", false, [["typed"]]], ["Tab", true, [["step", "no"]]]], rules: 2 });
    for (let times = 0; times < 2; times += 1) {
      await commands.executeCommand("univer.command.undo");
      expect(await seen()).toEqual(before);
      await commands.executeCommand("univer.command.undo");
      expect(await seen()).toEqual(begin);
      for (let steps = 0; steps < 2; steps += 1) await commands.executeCommand("univer.command.redo");
      expect(await seen()).toEqual(after);
    }
  } finally {
    live.dispose();
  }
});
