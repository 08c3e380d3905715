export { appendRows, appendValues, joinChanges, noChanges, writeCell, type CellWrite, type Changes } from "./changes";
