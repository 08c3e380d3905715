import { DataValidationRenderMode, DataValidationType, ICommandService, type Univer, WrapStrategy } from "@univerjs/core";
import { type DataValidatorRegistryScope, DataValidatorRegistryService } from "@univerjs/data-validation";
import { SetTextWrapCommand } from "@univerjs/sheets";
import { AddCfCommand, iconGroup, type IConditionFormattingRule, SetCfCommand } from "@univerjs/sheets-conditional-formatting";
import { IMenuManagerService, RibbonPosition } from "@univerjs/ui";
import { formatOf } from "../../workbook/engine/engine-formats";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";

/** Rules for typing that no file has: a box to tick, and several choices in one cell. */
const ownRules: ReadonlySet<string> = new Set([DataValidationType.CHECKBOX, DataValidationType.LIST_MULTIPLE]);

/** Sets of icons that files do not have: ECMA-376 part 1, section 18.18.42 lists the others. */
const ownIcons: ReadonlySet<string> = new Set(["3Triangles", "3Stars", "5Boxes", "_5Felling"]);

/** A choice in the menu of a tool. */
interface MenuEntry {
  readonly item?: { readonly id: string; readonly selections?: unknown };
  readonly children?: readonly MenuEntry[];
}

/**
 * Takes what no workbook file keeps out of what the engine offers, so that nothing is chosen that is gone once a plan was saved: to cut text off at the end of its
 * cell, ticks and several choices in a cell, colours of single choices, and sets of icons of its own.
 */
export function offerWhatFilesKeep(univer: Univer, live: LiveWorkbook): void {
  const injector = univer.__getInjector();
  const wraps = entries(injector.get(IMenuManagerService).getMenuByPositionKey(RibbonPosition.START)).find(({ item }) => item?.id === SetTextWrapCommand.id)?.item?.selections;
  // One list serves every time that the menu is made.
  const cutOff = Array.isArray(wraps) ? (wraps as { value?: unknown }[]).findIndex(({ value }) => value === WrapStrategy.CLIP) : -1;
  if (cutOff >= 0) (wraps as unknown[]).splice(cutOff, 1);
  for (const { group } of iconGroup) group.splice(0, group.length, ...group.filter(({ name }) => !ownIcons.has(name)));
  const rules = injector.get(DataValidatorRegistryService);
  const listed = rules.getValidatorsByScope.bind(rules);
  rules.getValidatorsByScope = (scope: string | DataValidatorRegistryScope) => listed(scope)?.filter(({ id }) => !ownRules.has(id));
  const list = rules.getValidatorItem(DataValidationType.LIST);
  if (list) list.optionsInput = undefined;
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (live.isOurs || !id.startsWith("data-validation.mutation.")) return;
    // As a list comes out of a file: an arrow beside the text, no colours.
    for (const rule of rulesIn(params)) if (rule.type === DataValidationType.LIST) Object.assign(rule, { renderMode: DataValidationRenderMode.ARROW, formula2: undefined });
  });
}

function entries(menu: readonly MenuEntry[]): MenuEntry[] {
  return menu.flatMap((entry) => [entry, ...entries(entry.children ?? [])]);
}

function rulesIn(params: unknown): { type?: string }[] {
  const { rule = [], payload } = params as { rule?: object | object[]; payload?: { payload?: object } };
  return [rule, payload?.payload ?? []].flat();
}

/** Tells why a command of a person would make what no file keeps; null where it would not. */
export function whyNotKept(id: string, params: unknown): string | null {
  if (id === AddCfCommand.id || id === SetCfCommand.id) {
    const { rule } = params as { rule: IConditionFormattingRule };
    return formatOf(rule).length > 0 ? null : "A workbook file keeps icons of one set, in its order or turned round. Choose a whole set.";
  }
  return null;
}
