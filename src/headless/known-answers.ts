import { answersOfTab } from "../planning/commissioning/tab";
import { answerSheets } from "../workbook/document/answer-sheets";
import { lacksResult } from "../workbook/document/formula-kind";
import type { WorkbookDocument } from "../workbook/document/workbook-document";

/** Gives formulas of tabs whose results another program left out the answers that follow from what was typed; the very document where there are none. */
export function withKnownAnswers(document: WorkbookDocument): WorkbookDocument {
  const { document: answered, cells } = answerSheets(document, answersOfTab, lacksResult);
  return cells.length === 0 ? document : answered;
}
