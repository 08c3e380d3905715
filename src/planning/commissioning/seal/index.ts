export { cellToken, RowCodes, tokens, type RowCode, type RowTokens } from "./row-code";
export { checkSeal, sealOf, sealVersion, type ChangedCell, type SealCheck, type SealedRow, type SealedTab } from "./seal";
