import { digestOf } from "../../text";
import type { RowCode, RowTokens } from "./row-code";

/** A row of a sealed tab, as it stands now. */
export interface SealedRow {
  /** Row of the sheet, from 0. */
  readonly row: number;
  /** Names it in a sentence. */
  readonly label: string;
  /** Names its columns by their name where they are called otherwise than in the other rows. */
  readonly headers?: ReadonlyMap<string, string> | undefined;
  /** What stands in its cells, by the name of their column. */
  readonly cells: RowTokens;
  /** What stood there when the tab was sealed, and in which row; null where the row was not there then. */
  readonly sealed: { readonly sealedRow: number; readonly code: RowCode } | null;
}

/** The line of a seal: who set it, when, and over which rows of the sheet, from 0. */
export interface SealNote {
  readonly sealed: string;
  readonly by: string;
}

/** Version of the canonical text. Vectors pin the codes of version 1: whatever changes one of them is version 2. */
export const sealVersion = "1";

const codeLength = 20;

/**
 * Computes the code of a seal: SHA-256 (FIPS 180-4) over version, name and time of the sealing and every row of the sheet, of which 100 bits are
 * shown as base32 (RFC 4648) in fours.
 *
 * A row is the names of its columns with what their cells hold, each behind its length. Rows are sorted by their text, so that sorting them on
 * the sheet does no harm; so does moving a column, or adding an empty one.
 */
export function sealOf(rows: readonly Pick<SealedRow, "cells">[], { sealed, by }: SealNote): string {
  const texts = rows.map(({ cells }) => [...cells].map(([name, token]) => `${name.length}:${name}${token.length}:${token}`).sort().join("\n"));
  return digestOf([sealVersion, sealed, by, ...texts.sort()], codeLength).match(/.{4}/g)!.join("-");
}

/** Something that is not as it was sealed, in words, and where to look. */
export interface ChangedCell {
  readonly row: number;
  readonly column: number;
  readonly label: string;
}

/** What checking a seal has found. */
export interface SealCheck {
  /** Code that stands in the tab; "" where it was never sealed, or its code is gone. */
  readonly code: string;
  readonly reopened: boolean;
  readonly holds: boolean;
  readonly changed: readonly ChangedCell[];
}

/** A sealed tab as it stands now. */
export interface SealedTab {
  readonly rows: readonly SealedRow[];
  readonly note: SealNote;
  readonly code: string;
  readonly isReopened: boolean;
  /** Version and rows that the seal covers; null where they cannot be read. */
  readonly scope: { readonly version: string; readonly rows: readonly number[] } | null;
  /** Row of the seal itself. */
  readonly row: number;
  readonly columns: readonly { readonly column: number; readonly name: string; readonly label: string }[];
}

/** Holds a tab against its last seal and names the cells that changed, and the rows that are new, there twice or gone. */
export function checkSeal({ rows, note, code, isReopened, scope, row, columns }: SealedTab): SealCheck {
  const at = (label: string, column = 0): ChangedCell => ({ row, column, label });
  if (scope !== null && scope.version !== sealVersion) {
    return { code, reopened: isReopened, holds: false, changed: [at(`The seal is of version ${scope.version}, this program reads version ${sealVersion}`)] };
  }
  const changed = [...changedCells(rows, columns), ...goneRows(rows, scope?.rows ?? []).map((gone) => ({ row: gone, column: 0, label: `Row ${gone + 1}, as it was sealed, is gone` }))];
  if (scope === null) changed.push(at("Hidden cells of the seal"));
  const filled = rows.filter(({ cells }) => cells.size > 0);
  const holds = changed.length === 0 && sealOf(filled, note) === code;
  // Every row is as it was: what is left is the line of the seal.
  if (!holds && changed.length === 0) changed.push(at("Day, name or code of the seal"));
  return { code, reopened: isReopened, holds, changed };
}

function changedCells(rows: readonly SealedRow[], columns: SealedTab["columns"]): ChangedCell[] {
  const seen = new Set<number>();
  return rows.flatMap(({ row, label, headers, cells, sealed }): ChangedCell[] => {
    const whole = (what: string): ChangedCell[] => [{ row, column: 0, label: `${label} ${what}`.replace(/^./, (first) => first.toUpperCase()) }];
    if (sealed === null) return columns.flatMap(({ column, name, label: header }) => (cells.has(name) ? [{ row, column, label: `${header} of ${label} is new` }] : []));
    if (seen.has(sealed.sealedRow)) return whole("stands twice");
    seen.add(sealed.sealedRow);
    const { code } = sealed;
    const changed = columns.filter(({ name }) => !code.holds(name, cells.get(name) ?? ""));
    const lost = code.others - [...cells.keys()].filter(isOwn).length;
    // A column that is empty now has no name: those without a header to its right have taken theirs from it.
    const isLostUnnamed = lost > changed.filter(({ name }) => isOwn(name) && !cells.has(name)).length;
    const named = isLostUnnamed ? changed.filter(({ name }) => !isNameless(name)) : changed;
    return [...named.map(({ column, name, label: header }) => ({ row, column, label: `${headers?.get(name) ?? header} of ${label}` })), ...(isLostUnnamed ? whole("has lost a cell beside it") : [])];
  });
}

/** Tells a column of people's own, and one of these without a header, by its name. */
function isOwn(name: string): boolean {
  return name.startsWith("+");
}

function isNameless(name: string): boolean {
  return /^\+( \d+)?$/.test(name);
}

/** Lists the rows that were sealed and that none of the rows now was. */
function goneRows(rows: readonly SealedRow[], sealed: readonly number[]): number[] {
  const there = new Set(rows.map((row) => row.sealed?.sealedRow));
  return sealed.filter((row) => !there.has(row));
}
