import { DataValidationType, type IStyleData, type Univer, WrapStrategy } from "@univerjs/core";
import { DataValidatorRegistryService } from "@univerjs/data-validation";
import { wrap } from "../../workbook/engine/engine-values";

/** Pixels at the right end of a cell that its arrow takes. */
const arrowRoom = 16;

/**
 * Lets cells with a list show their text as their neighbours do, and only adds the arrow.
 *
 * The engine draws such text itself: six pixels to the right and two lower than others, without the format of a number.
 */
export function drawListsAsText(univer: Univer): void {
  const validator = univer.__getInjector().get(DataValidatorRegistryService).getValidatorItem(DataValidationType.LIST);
  const arrow = validator?.canvasRender;
  if (!validator || !arrow) return;
  const draw = arrow.drawWith.bind(arrow);
  let isArrow = false;
  arrow.drawWith = (context, info, ...rest) => {
    isArrow = true;
    draw(context, { ...info, data: { ...info.data, v: "", p: null } }, ...rest);
    isArrow = false;
  };
  // The engine draws its arrow only where it draws the text too.
  validator.skipDefaultFontRender = () => isArrow;
  arrow.calcCellAutoHeight = () => undefined;
  const extraStyle = validator.getExtraStyle.bind(validator);
  validator.getExtraStyle = (rule, value, cell, ...place): IStyleData => ({
    ...extraStyle(rule, value, cell, ...place),
    tb: cell.style.tb === wrap ? wrap : WrapStrategy.CLIP,
    pd: { ...cell.style.pd, r: arrowRoom },
  });
}
