export { appendRows, writeCell, type CellWrite, type Changes } from "./changes";
