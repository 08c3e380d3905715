import { Worksheet } from "@univerjs/core";
import { Scene } from "@univerjs/engine-render";
import { sheetSize } from "../../sheet";

let isMended = false;

/**
 * Lets the grid work out once a frame what a cell looks like.
 *
 * Borders, fills, texts, marks and lists each ask for it, and so does what measures: up to eight times a frame the engine asks every plug-in, which looks
 * whether texts could be numbers, which conditional formats hold and what may be typed. While one frame is drawn nothing of this changes. Applies to every
 * grid of the page; calling it again does nothing.
 */
export function askOnceAFrame(): void {
  if (isMended) return;
  isMended = true;
  let known: WeakMap<Worksheet, Map<number, ReturnType<Worksheet["getCell"]>>> | null = null;
  const [scene, sheet] = [Scene.prototype, Worksheet.prototype];
  // What is called is the engine's own, with the scene and the sheet it is called on.
  // eslint-disable-next-line @typescript-eslint/unbound-method
  const [draw, ask] = [scene.render, sheet.getCell];
  scene.render = function (...within) {
    const around = known;
    known ??= new WeakMap();
    try {
      draw.apply(this, within);
    } finally {
      known = around;
    }
  };
  sheet.getCell = function (row, column) {
    if (known === null || row < 0 || column < 0) return ask.call(this, row, column);
    const cells = known.get(this) ?? new Map<number, ReturnType<Worksheet["getCell"]>>();
    known.set(this, cells);
    const place = row * sheetSize.columns + column;
    if (!cells.has(place)) cells.set(place, ask.call(this, row, column));
    return cells.get(place);
  };
}
