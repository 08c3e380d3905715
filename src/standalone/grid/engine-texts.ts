import { LocaleType, mergeLocales, type LocaleService } from "@univerjs/core";
import conditionalFormattingEnglish from "@univerjs/preset-sheets-conditional-formatting/locales/en-US";
import coreEnglish from "@univerjs/preset-sheets-core/locales/en-US";
import dataValidationEnglish from "@univerjs/preset-sheets-data-validation/locales/en-US";
import findReplaceEnglish from "@univerjs/preset-sheets-find-replace/locales/en-US";
import sortEnglish from "@univerjs/preset-sheets-sort/locales/en-US";

/** Texts that the engine asks for by these keys and has no English for, or only the name of the key, which it would show; and a few that mislead. */
const missingEnglish = {
  "sheets-formula": {
    // Said while it computes for longer than a second.
    progress: { analyzing: "Looking at formulas", calculating: "Computing", "array-analysis": "Looking at tables", "array-calculation": "Computing tables", done: "Computed" },
    functionList: {
      LET: {
        functionParameter: {
          name1: { name: "name1", detail: "The first name. It begins with a letter." },
          nameValue1: { name: "name_value1", detail: "What the first name stands for." },
          calculationOrName2: { name: "calculation_or_name2", detail: "What is to be computed with the names so far, or a second name." },
          nameValue2: { name: "name_value2", detail: "What the second name stands for." },
          calculationOrName3: { name: "calculation_or_name3", detail: "What is to be computed with the names so far, or a further name." },
        },
      },
    },
  },
  "sheets-ui": {
    borderLine: {
      borderTop: "Top",
      borderBottom: "Bottom",
      borderLeft: "Left",
      borderRight: "Right",
      borderNone: "None",
      borderAll: "All",
      borderOutside: "Outside",
      borderInside: "Inside",
      borderHorizontal: "Between rows",
      borderVertical: "Between columns",
      borderTlbr: "Falling diagonal",
      borderBlTr: "Rising diagonal",
      borderTlbcTlmr: "Two falling lines",
      borderTlbrTlbcTlmr: "Three falling lines",
      borderMltrBctr: "Two rising lines",
      borderColor: "Colour of borders",
      borderSize: "Width of borders",
      borderType: "Kind of borders",
    },
    merge: { confirm: { warning: "Merged cells", dismantleMergeCellWarning: "Merged cells are in the way. Go on, and they are taken apart." } },
    filter: { confirm: { error: "Filtered rows", notAllowedToInsertRange: "Cells cannot be moved where rows are filtered. Take the filter away first." } },
    info: { error: "Error", forceStringInfo: "This number is kept as text." },
  },
  // Words that run into one another, or say something else than is kept.
  "sheets-conditional-formatting-ui": { iconSet: { rule: "Rule: ", when: "when ", and: "and" } },
  "sheets-data-validation-ui": { panel: { options: "More options", messageInfo: "Message", showInfo: "Show words of your own where an entry is wrong" } },
  "sheets-numfmt-ui": { generalDes: "Numbers are shown as they are typed." },
  "find-replace": { replace: { "partial-success": "{0} replaced, {1} could not be." } },
};

/** Gives the engine its English. The missing texts come by themselves: put together with the others, the last part of a plug-in's texts would stand for all of them. */
export function loadEnglish(texts: LocaleService): void {
  texts.load({ [LocaleType.EN_US]: mergeLocales(coreEnglish, dataValidationEnglish, conditionalFormattingEnglish, findReplaceEnglish, sortEnglish) });
  texts.load({ [LocaleType.EN_US]: missingEnglish });
}
