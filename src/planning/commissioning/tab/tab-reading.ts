import type { JobRecords } from "../record";
import type { TabColumn } from "./tab-columns";
import type { TabLayout } from "./tab-layout";

/** Where the blocks of a tab stand on its sheet, rows and columns from 0. */
export interface TabPlaces {
  readonly layout: TabLayout;
  /** Number of each column whose header is there. */
  readonly columns: Readonly<Partial<Record<TabColumn, number>>>;
  readonly snagsRow: number;
  readonly orphansRow: number;
  readonly sealsRow: number;
}

/** A commissioning tab as it was read from its sheet. */
export interface TabReading extends JobRecords {
  readonly sheet: string;
  readonly visible: boolean;
  /** False while its build has not come to its end. */
  readonly whole: boolean;
  /** How many comments and pictures people put on it. */
  readonly attachments: number;
  /** True where there may be notes that the host does not count. */
  readonly mayHoldNotes: boolean;
  /** Row of the marker, from 0: title and progress stand there. */
  readonly markRow: number;
  readonly places: TabPlaces;
  /** What keeps it from being read as it was built, in sentences: nothing is written to it, or taken from it, while there are any. */
  readonly faults: readonly string[];
  /** Cells that were read as entries, as `cellNumber` numbers them: what stands in them is carried as a record. */
  readonly entries: ReadonlySet<number>;
}
