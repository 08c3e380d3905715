export { appendRows, appendValues, writeCell, type CellWrite, type Changes } from "./changes";
