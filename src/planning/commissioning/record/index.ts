export { acceptReturned, compareReturned, type ReturnedChange, type ReturnedItem, type ReturnedTab } from "./bring-back";
export { carryRecords, isSpent, type CarriedRecords, type CarryCounts } from "./carry-records";
export { isSnagClosed, openItems, type OpenItem } from "./close-out";
export { recordFingerprint, snagFingerprint } from "./fingerprint";
export { isClosed, type SealLine, type SnagRecord, type StepRecord, type TabPlaces, type TabReading, type TypedCells } from "./tab-reading";
