import type { IWorkbookData } from "@univerjs/core";
import type { StoredWorkbook } from "../browser/stored-sheet";

export async function readWorkbook(_bytes: Uint8Array): Promise<Partial<IWorkbookData>> { throw new Error("x"); }
export async function writeWorkbook(_workbook: StoredWorkbook, _original?: Uint8Array): Promise<Uint8Array> { throw new Error("x"); }
