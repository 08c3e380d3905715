import { noAnswer, Problem } from "../../planning/text";

/** What people are told about an error of the host, by its code (`OfficeExtension.Error.code`). */
const sentences: Readonly<Record<string, string>> = {
  AccessDenied: "The sheet is protected or this workbook may only be read. Unprotect it under Review, or save a copy, then try again.",
  ActivityLimitReached: "The spreadsheet program is busy with too many requests. Wait a minute, then try again.",
  Conflict: "Somebody else changed the same cells at the same time. Look at the sheet, then try again.",
  EditModeRejected: "A cell is being edited. Press Enter or Esc in the sheet, then try again.",
  InactiveWorkbook: "Another workbook is in front. Click into the workbook this pane belongs to, then try again.",
  InvalidOperationInCellEditMode: "A cell is being edited. Press Enter or Esc in the sheet, then try again.",
  InvalidSelection: "Several areas, or something that is not a cell, are selected. Select one cell or one area, then try again.",
  ItemAlreadyExists: "There is a sheet or table of that name already. Rename or delete it, then try again.",
  ItemNotFound: "A sheet or table is gone: renamed or deleted since it was read. Nothing more was changed; try again.",
  MergedRangeConflict: "Merged cells are in the way. Unmerge them in the sheet, then try again.",
  NonBlankCellOffSheet: "Cells would be pushed over the edge of the sheet. Make room below, then try again.",
  OperationCellsExceedLimit: "There are too many cells for one step. Split the table over smaller workbooks.",
  PivotTableRangeConflict: "A pivot table is in the way. Move it to another sheet, then try again.",
  RequestAborted: "The spreadsheet program broke the request off. Look at the sheet, then try again.",
  RequestPayloadSizeLimitExceeded: "There is too much to write in one step. Build fewer tabs at a time.",
  ResponsePayloadSizeLimitExceeded: "The workbook holds too much to read in one step. Delete sheets and rows that are not needed, or split it.",
  ServiceNotAvailable: "The spreadsheet program does not answer. Check the connection, then try again.",
  TableOverlap: "Another table is in the way. Move it, then try again.",
  TooManyRequests: "The spreadsheet program is busy with too many requests. Wait a minute, then try again.",
  UnsupportedOperation: "This version of the spreadsheet program cannot do that here. Update it, or use another one.",
};

/** Codes by which the client says that it is used wrongly: defects of ours, and nothing that a person can mend. */
const misuse: readonly string[] = ["CannotUpdateReadOnlyProperty", "InvalidObjectPath", "InvalidRequestContext", "PropertyNotLoaded", "RunMustReturnPromise", "ValueNotLoaded"];

/**
 * Turns what the host threw into a problem with a sentence.
 *
 * An error without a sentence of its own is named by its code, so that somebody who is asked for help can look it up. What is no error
 * of the host (a defect of ours, misuse of its client among them, or a `Problem`) comes back as it is.
 */
export function hostProblem(thrown: unknown): unknown {
  if (thrown instanceof Problem || !isHostError(thrown) || misuse.includes(thrown.code)) return thrown;
  const sentence = sentences[thrown.code] ?? `The spreadsheet program refused (${thrown.code.slice(0, 40)}). Look at the sheet, save the workbook, then try again.`;
  return noAnswer("workbook", thrown.code, sentence);
}

/** Tells an error of the host by its shape: its class is not reachable from every realm. */
function isHostError(thrown: unknown): thrown is Error & { readonly code: string } {
  return thrown instanceof Error && "code" in thrown && typeof thrown.code === "string";
}
