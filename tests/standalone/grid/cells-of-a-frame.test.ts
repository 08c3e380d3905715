import { Scene } from "@univerjs/engine-render";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";
import { bootEngine } from "../../../src/headless/open-headless";
import { askOnceAFrame } from "../../../src/standalone/grid/cells-of-a-frame";
import { LiveWorkbook } from "../../../src/workbook/engine/live-workbook";
import { emptyWorkbook } from "../../../src/workbook/engine/stored-sheet";

/** Draws one frame of a scene that has nothing but this in it. */
function frame(draw: () => void): void {
  const heard = { next: () => undefined };
  Scene.prototype.render.call({ isDirty: () => true, getEngine: () => null, _layers: [{ render: draw }], _beforeRender$: heard, _afterRender$: heard } as never);
}

test("plug-ins are asked once a frame for a cell, and again in the next one, after whatever changed", () => {
  askOnceAFrame();
  const univer = bootEngine(emptyWorkbook());
  const live = new LiveWorkbook(univer);
  let asked = 0;
  univer.__getInjector().get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    handler: (cell, _place, next) => {
      asked += 1;
      return next({ ...cell, v: `${String(cell?.v ?? "nothing")} seen` });
    },
  });
  try {
    const sheet = live.workbook.getActiveSheet();
    const type = (v: string) => live.run("sheet.mutation.set-range-values", { subUnitId: sheet.getSheetId(), cellValue: { 0: { 1: { v, t: 1 } } } });
    const shown = () => [sheet.getCell(0, 1), sheet.getCell(1, 0), sheet.getCell(0, 1), sheet.getCell(-1, 0)].map((cell) => cell?.v);
    const seen: unknown[] = [];
    for (const text of ["first", "second"]) {
      type(text);
      asked = 0;
      frame(() => seen.push(shown()));
      seen.push(asked);
    }
    expect(seen).toEqual([["first seen", "nothing seen", "first seen", undefined], 2, ["second seen", "nothing seen", "second seen", undefined], 2]);
    asked = 0;
    expect(() => frame(() => {
      shown();
      throw new Error("The canvas is gone.");
    })).toThrow("The canvas is gone.");
    shown();
    expect(asked).toBe(2 + 3);
  } finally {
    live.dispose();
  }
});
