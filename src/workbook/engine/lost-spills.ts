import { ICommandService, type IRange, type Univer } from "@univerjs/core";
import { BaseFunction, FormulaDataModel, RangeReferenceObject, SetTriggerFormulaCalculationStartMutation, type BaseReferenceObject } from "@univerjs/engine-formula";
import { numbered } from "./stored-sheet";

/** What the engine's class of references to one cell makes of two of them: the range from one to the other. */
interface CellReferences {
  _createRange: (this: BaseReferenceObject, range: IRange) => BaseReferenceObject;
}

let isMended = false;

/**
 * Lets a formula over a range see that a table which filled part of it is there no more.
 *
 * What single formulas have filled is told to the reference of a cell; the engine forgets to tell the range that it makes of two cells, which then
 * goes on reading the figures of a table whose formula shows #SPILL! or less than before. Applies to every engine of the page or process; calling it
 * again does nothing.
 */
export function readRangesWithoutLostSpills(): void {
  if (isMended) return;
  isMended = true;
  const cells = Object.getPrototypeOf(new Maker("").makeCell()) as CellReferences;
  const makeRange = cells._createRange;
  cells._createRange = function (range) {
    const made = makeRange.call(this, range);
    made.setArrayFormulaRange(this.getArrayFormulaRange());
    made.setRuntimeArrayFormulaRange(this.getRuntimeArrayFormulaRange());
    return made;
  };
}

/**
 * Computes what looks at the cells that a formula had filled once somebody takes that formula away; the engine computes what looks at the formula's own
 * cell alone.
 */
export function computeBehindLostSpills(univer: Univer): void {
  const injector = univer.__getInjector();
  const [model, commands] = [injector.get(FormulaDataModel), injector.get(ICommandService)];
  const forget = model.updateArrayFormulaRange.bind(model);
  model.updateArrayFormulaRange = (unitId, sheetId, cells) => {
    const ranges = model.getArrayFormulaRange()[unitId]?.[sheetId] ?? {};
    // A cell that is cleared stands there as null.
    const lost = numbered(cells).flatMap(([row, line]) => Object.keys(line).flatMap((column) => ranges[row]?.[Number(column)] ?? []));
    if (lost.length > 0) {
      const dirtyRanges = lost.map((range) => ({ unitId, sheetId, range }));
      commands.syncExecuteCommand(SetTriggerFormulaCalculationStartMutation.id, { dirtyRanges, forceCalculation: false }, { onlyLocal: true });
    }
    return forget(unitId, sheetId, cells);
  };
}

/** Makes a reference to one cell, whose class the engine does not hand out otherwise. */
class Maker extends BaseFunction {
  makeCell(): BaseReferenceObject {
    this.setRefInfo("unit", "sheet", 0, 0);
    const range = { startRow: 0, startColumn: 0, endRow: 0, endColumn: 0 };
    return this.createReferenceObject(new RangeReferenceObject(range), range) as BaseReferenceObject;
  }
}
