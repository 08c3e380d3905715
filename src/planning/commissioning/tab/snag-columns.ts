import { snagLabels, type SnagAnswers, type SnagField } from "../record";
import { headsOf, type TabColumn } from "./tab-columns";
import type { TabLayout } from "./tab-layout";

/** What stands in the row of a snag: its id, what people type, and what its formulas answer. */
export type SnagColumn = "id" | SnagField | keyof SnagAnswers;

/** Where the columns of the block of snags stand: each in the column that the steps above it call so. */
type SnagColumns<Column> = Readonly<Record<SnagColumn, Column>>;

/** In tabs of an earlier layout a snag had no id. */
type EarlierSnagColumns = Omit<SnagColumns<TabColumn>, "id"> & { readonly id: TabColumn | null };

/** Headers of the block of snags: they stand in a row of its own. */
export const snagHeaders: SnagColumns<string> = {
  id: "Snag",
  ...snagLabels,
  stepId: "Step id",
  key: "Key of step",
  place: "Place",
  retest: "Retest",
  isOpen: "Is open",
};

const today: SnagColumns<TabColumn> = {
  id: "no",
  about: "stepId",
  foundWrong: "step",
  mender: "subject",
  byWhen: "result",
  foundAgain: "expected",
  by: "found",
  closed: "expectedBefore",
  stepId: "recheckedBy",
  note: "note",
  key: "rule",
  place: "low",
  retest: "retest",
  isOpen: "high",
};

/** There they stood otherwise, and a snag had no id. */
const earlier: EarlierSnagColumns = {
  id: null,
  about: "no",
  stepId: "stepId",
  foundWrong: "step",
  mender: "subject",
  byWhen: "expected",
  foundAgain: "found",
  closed: "result",
  by: "by",
  note: "note",
  key: "plannedUnit",
  place: "rule",
  retest: "low",
  isOpen: "high",
};

/** Column of each thing in the row of a snag, as a tab is built. */
export const snagColumns = today;

/** Finds the columns of the block of snags in a layout; null for one that it does not have. */
export function snagColumnsOf(layout: TabLayout): EarlierSnagColumns {
  return layout === "earlier" ? earlier : today;
}

/** Labels above the snags, by the column they stand in. */
export const snagHeads = headsOf(Object.keys(snagHeaders) as SnagColumn[], snagHeaders, today);
