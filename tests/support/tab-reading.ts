import type { TabReading } from "../../src/planning/commissioning/tab";
import { at } from "../../src/planning/commissioning/tab/tab-columns";
import { jobRecords } from "./job-records";

/** Makes the reading of a whole tab in use that has nothing in it, with its columns as they are built. */
export function tabReading(more: Partial<TabReading> = {}): TabReading {
  return {
    ...jobRecords(),
    sheet: "North hall", visible: true, whole: true, markRow: 0, faults: [], attachments: 0, mayHoldNotes: false, entries: new Set(),
    places: { layout: "today", columns: at, snagsRow: 20, orphansRow: 38, sealsRow: 41 },
    ...more,
  };
}
