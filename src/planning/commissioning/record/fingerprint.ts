import type { Scalar } from "../../../sheet";
import { canonicalText, digestOf } from "../../text";
import { snagColumnKeys, typedColumns, type SnagColumn } from "../tab";
import type { TypedCells } from "./tab-reading";

/** Tells whether people typed anything into the row of a step. */
export function isRecord(typed: TypedCells): boolean {
  return typedColumns.some((column) => typed[column] !== null);
}

/** Makes a short text by which a record is recognised; "" where nothing was typed. */
export function recordFingerprint(key: string, typed: TypedCells): string {
  if (!isRecord(typed)) return "";
  return digestOf([key, ...typedColumns.map((column) => canonicalText(typed[column], column === "done"))], 16);
}

/** Makes a short text by which a snag is recognised; its row number, which a build changes, does not count. */
export function snagFingerprint(key: string, typed: Readonly<Record<SnagColumn, Scalar>>): string {
  return digestOf(["snag", key, ...snagColumnKeys.filter((column) => column !== "no").map((column) => canonicalText(typed[column], column === "expected"))], 16);
}
