import type { Cell, Scalar, SheetSnapshot } from "../../../sheet";
import { canonicalText } from "../../text";
import { hidden } from "./tab-cells";
import { at, tabColumnKeys, type TabColumn } from "./tab-columns";
import type { TabPlaces } from "./tab-reading";

/** Text of the hidden cell by which a tab is recognised. */
export const tabMarker = "Commissioning tab";

/** What stands to the right of the marker, and how many cells away. */
const markPlaces = { jobId: 1, build: 2, born: 3, state: 4, snagIds: 5, seals: 6 } as const;
type MarkPlace = keyof typeof markPlaces;

/** Lays the marker and what stands beside it into the columns of a tab as it is built: it stands at the head of the keys. */
export function markCells(marks: Readonly<Record<MarkPlace, Scalar>>): ReadonlyMap<number, Cell> {
  const places = (Object.keys(markPlaces) as MarkPlace[]).map((place): [number, Cell] => [at.key + markPlaces[place], hidden(marks[place])]);
  return new Map([[at.key, hidden(tabMarker)], ...places]);
}

/** What stands in the state of a tab: only a whole one counts. */
export const tabStates = { whole: "whole", unfinished: "unfinished" } as const;

function markColumn(place: MarkPlace): TabColumn {
  return tabColumnKeys[at.key + markPlaces[place]]!;
}

/** Where the state stands on a tab as it is built, and under which header. */
export const stateColumn = markColumn("state");
export const stateCell = { row: 0, column: at.key + markPlaces.state } as const;

/** Under which header a tab says how many lines its seals have: a line that is gone is missed. */
export const sealCountColumn = markColumn("seals");

/** What identifies a tab, whatever its sheet is called. */
export interface TabMark {
  readonly jobId: string;
  readonly build: number;
  /** When the job's tab was first built, which tells plans apart that use the same ids. */
  readonly born: string;
  /** False while its build has not come to its end. */
  readonly whole: boolean;
  /** How many ids its build gave to rows for snags: S-1 up to this number. */
  readonly snagIds: number;
  /** How many lines of seals it says it has; 0 where it says nothing. */
  readonly sealCount: number;
}

/** Rows at the top of a sheet among which the marker is looked for: people may have put some above it. */
const rowsSearched = 20;

/** Rows below the marker among which the headers are looked for. */
export const headerWithin = 20;

/** Rows at the top of a sheet that tell whether it is a tab, and whose. */
export const headRows = rowsSearched + headerWithin;

/** Finds the cell of a sheet that marks it as a tab; null where it is none. */
export function findMarker(sheet: SheetSnapshot): { readonly row: number; readonly column: number } | null {
  for (let row = 0; row < Math.min(sheet.values.length, rowsSearched); row += 1) {
    const column = sheet.values[row]!.findIndex((cell) => typeof cell === "string" && cell.trim() === tabMarker);
    if (column >= 0) return { row, column };
  }
  return null;
}

/** Tells whether a sheet is a commissioning tab. */
export function isTab(sheet: SheetSnapshot): boolean {
  return findMarker(sheet) !== null;
}

/** Reads what stands to the right of the marker, under the headers of its columns: people may have put some of their own between them. */
export function readMark(sheet: SheetSnapshot, { row, column }: { readonly row: number; readonly column: number }, columns: TabPlaces["columns"]): TabMark {
  const cell = (place: MarkPlace) => sheet.values[row]?.[columns[markColumn(place)] ?? column + markPlaces[place]];
  return {
    jobId: canonicalText(cell("jobId")),
    build: Number(cell("build")) || 0,
    born: canonicalText(cell("born")),
    whole: canonicalText(cell("state")) === tabStates.whole,
    snagIds: Number(cell("snagIds")) || 0,
    sealCount: Number(cell("seals")) || 0,
  };
}
