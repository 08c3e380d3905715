import { CellValueType, type ICellData, type Univer } from "@univerjs/core";
import { ConditionalFormattingRuleModel, ConditionalFormattingViewModel, compareWithNumber, type IConditionFormattingRule } from "@univerjs/sheets-conditional-formatting";

/** What works out where a conditional format holds. */
interface FormatUnit {
  getCellResult: (row: number, column: number, before: unknown, context: { readonly rule: IConditionFormattingRule; readonly getCellValue: (row: number, column: number) => ICellData }) => unknown;
}

/** What the engine keeps to itself of its conditional formats: how it makes a unit, and those it has, by workbook, sheet and format. */
interface FormatModel {
  _createRuleCalculateUnitInstance: (unit: string, sheet: string, rule: IConditionFormattingRule) => FormatUnit | undefined;
  readonly _calculateUnitManagers: Map<string, ReadonlyMap<string, ReadonlyMap<string, FormatUnit>>>;
  readonly _rTreeManager: { removeById(unit: string): void };
  readonly _cellCache: { clear(): void };
}

/**
 * Lets conditional formats hold where they hold once the file is open in another program: texts are compared without regard to case, an empty cell is 0, and a text is
 * more than any number. The engine goes by case and passes over what is no number, so that a cell would look one way here and another way there.
 */
export function formatAsFilesDo(univer: Univer): void {
  const view = univer.__getInjector().get(ConditionalFormattingViewModel);
  const model = view as unknown as FormatModel;
  const create = model._createRuleCalculateUnitInstance.bind(model);
  model._createRuleCalculateUnitInstance = (...of) => {
    const unit = create(...of);
    if (unit !== undefined) mend(unit);
    return unit;
  };
  // A workbook that is closed takes only its own along; the engine would forget those of the one that was opened in its place.
  const formats = univer.__getInjector().get(ConditionalFormattingRuleModel);
  view.clearCache = () => {
    model._cellCache.clear();
    for (const unitId of [...model._calculateUnitManagers.keys()].filter((id) => formats.getUnitRules(id) === null)) {
      model._calculateUnitManagers.delete(unitId);
      model._rTreeManager.removeById(unitId);
    }
  };
  // Those of the workbook that is open by now.
  for (const [unitId, sheets] of model._calculateUnitManagers) {
    for (const [sheetId, units] of sheets) {
      for (const [id, unit] of units) {
        mend(unit);
        view.markRuleDirty(unitId, sheetId, id);
      }
    }
  }
}

function mend(unit: FormatUnit): void {
  const result = unit.getCellResult.bind(unit);
  unit.getCellResult = (row, column, before, context) => {
    const { rule } = context.rule as { rule: { type: string; subType?: string; operator?: string; value?: unknown; style?: object } };
    if (rule.type !== "highlightCell") return result(row, column, before, context);
    const cell = context.getCellValue(row, column);
    if (rule.subType === "number") return holdsForNumber(rule, cell) ? rule.style : {};
    if (rule.subType !== "text" || typeof rule.value !== "string") return result(row, column, before, context);
    const folded = (text: unknown) => (typeof text === "string" ? text.toLowerCase() : text);
    const asked = { ...context, rule: { ...context.rule, rule: { ...rule, value: folded(rule.value) } }, getCellValue: () => ({ ...cell, v: folded(cell.v) }) };
    return result(row, column, before, asked as unknown as typeof context);
  };
}

function holdsForNumber({ operator = "", value }: { readonly operator?: string; readonly value?: unknown }, cell: ICellData): boolean {
  const isText = cell.t !== CellValueType.NUMBER && cell.v !== null && cell.v !== undefined && cell.v !== "";
  if (isText) return ["greaterThan", "greaterThanOrEqual", "notEqual", "notBetween"].includes(operator);
  const compare = compareWithNumber as (asked: { readonly operator: string; readonly value: unknown }, cell: number) => boolean | undefined;
  return compare({ operator, value: value ?? 0 }, Number(cell.v ?? 0)) === true;
}
