import type { CellValue } from "../../../sheet";
import { canonicalText } from "../../text";
import { RowCodes, type RowCode } from "../seal";
import { tabColumnKeys, type TabColumn } from "./tab-columns";

/** Columns that have a code in the texts under Built and Digest, in their order, which never changes. Nothing is built under Digest, and a digest does not count itself. */
export const codedColumns: readonly TabColumn[] = tabColumnKeys.filter((key) => key !== "digest");

/** The codes of a tab's rows. */
export const rowCodes = new RowCodes(codedColumns);

const builtText = /^:([A-Z2-7.=~]*)$/;
const digestText = /^(\d+):([A-Z2-7.=~+]*)$/;

/** Reads what stands under Built: what the build wrote into the row. Null where it wrote nothing there. */
export function readBuilt(cell: CellValue | undefined): RowCode | null {
  const codes = builtText.exec(canonicalText(cell))?.[1];
  return codes === undefined ? null : rowCodes.read(codes);
}

/** Codes of a row as it was sealed, and where it stood then. */
export interface RowDigest {
  /** Row of the sheet, from 0. */
  readonly sealedRow: number;
  readonly code: RowCode;
}

/** Reads what stands under Digest: what the row held when the tab was sealed. Null where it was not there then. */
export function readDigest(cell: CellValue | undefined): RowDigest | null {
  const [, row, codes] = digestText.exec(canonicalText(cell)) ?? [];
  const code = codes === undefined ? null : rowCodes.read(codes);
  return code === null ? null : { sealedRow: Number(row) - 1, code };
}
