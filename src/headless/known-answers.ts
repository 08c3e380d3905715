import { readTab, tabAnswers } from "../planning/commissioning/tab";
import type { SheetSnapshot } from "../sheet";
import { answerSheets, type AnswersOf } from "../workbook/document/answer-sheets";
import { lacksResult } from "../workbook/document/formula-kind";
import type { WorkbookDocument } from "../workbook/document/workbook-document";

/** Says what formulas of ours on a commissioning tab answer; nothing of another sheet. */
export const answersOfTab: AnswersOf = (sheet: SheetSnapshot) => {
  const tab = readTab(sheet);
  return tab === null ? [] : tabAnswers(sheet, tab);
};

/** Gives formulas of tabs whose results another program left out the answers that follow from what was typed; the very document where there are none. */
export function withKnownAnswers(document: WorkbookDocument): WorkbookDocument {
  const { document: answered, cells } = answerSheets(document, answersOfTab, lacksResult);
  return cells.length === 0 ? document : answered;
}
