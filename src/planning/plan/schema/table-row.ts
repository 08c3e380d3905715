import type { Scalar } from "../../../sheet";
import type { ChoiceColumn } from "./column";
import type { TableKey } from "./table-keys";
import type { Tables } from "./tables";

type Written<Described> = Described extends ChoiceColumn<infer Choice> ? Choice | null : Scalar;

/** One row to be written into a planning table, by column key; a column that is left out stays empty. */
export type TableRow<Key extends TableKey> = { readonly [Column in keyof Tables[Key]["columns"]]?: Written<Tables[Key]["columns"][Column]> };

/** Rows to be written into planning tables. Dates are ISO texts. */
export type TableRows = { readonly [Key in TableKey]?: readonly TableRow<Key>[] };
