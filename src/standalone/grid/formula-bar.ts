import { DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY, DOCS_NORMAL_EDITOR_UNIT_ID_KEY, type Univer } from "@univerjs/core";
import { IEditorService } from "@univerjs/docs-ui";

/** How long after a press the engine may still give the keyboard elsewhere, in milliseconds. */
const unsettled = 1_000;

/**
 * Lets the line of the formula keep the keyboard once somebody has pressed into it.
 *
 * The engine opens the cell with the press, and the cell takes the keyboard last where the press is short, as a tap on a touchpad is: what is typed then
 * would stand nowhere.
 */
export function keepFormulaBar(univer: Univer, container: HTMLElement): void {
  const editors = univer.__getInjector().get(IEditorService);
  let pressedAt = -unsettled;
  container.addEventListener("pointerdown", ({ target }) => {
    pressedAt = (target as Element).closest("[data-u-comp=formula-bar] canvas") === null ? -unsettled : performance.now();
  }, { capture: true });
  container.addEventListener("focusin", ({ target }) => {
    if (performance.now() - pressedAt > unsettled || !(target as Element).id.endsWith(DOCS_NORMAL_EDITOR_UNIT_ID_KEY)) return;
    // To the service of the editors the line has the keyboard already, so that it would do nothing.
    // eslint-disable-next-line @typescript-eslint/no-deprecated
    editors.getEditor(DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY)?.focus();
  });
}
