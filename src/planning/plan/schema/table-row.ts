import type { Scalar } from "../../../sheet";
import { tables, type TableKey, type Tables } from "./tables";

/** One row to be written into a planning table, by column key; a column that is left out stays empty. */
export type TableRow<Key extends TableKey> = { readonly [Column in keyof Tables[Key]["columns"]]?: Scalar };

/** Rows to be written into planning tables. Dates are ISO texts. */
export type TableRows = { readonly [Key in TableKey]?: readonly TableRow<Key>[] };

/** Keys of the planning tables, in the order of their sheets. */
export const tableKeys = Object.keys(tables) as readonly TableKey[];
