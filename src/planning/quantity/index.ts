export { bytes, hours, megabytesPerSecond, share, type Bytes, type Hours, type MegabytesPerSecond, type Share, type Watts, watts } from "./brands";
export { Decimal, divideToNearest, exactDecimal, exactFraction, readAs15Digits, type Fraction } from "./exact";
export { parseNumber, type CellValue, type NumberRule } from "./number";
