export { bytes, hours, kilograms, megabytesPerSecond, millimetres, share, watts } from "./brands";
export type { Bytes, Hours, Kilograms, MegabytesPerSecond, Millimetres, Share, Watts } from "./brands";
export { Decimal, divideToNearest, exactDecimal, exactFraction, readAs15Digits, type Fraction } from "./exact";
export { memoise } from "./memoise";
export { parseNumber, type CellValue, type NumberRule } from "./number";
export { parseGrowth, parseProportion, parseShare, type ShareRule } from "./share";
export { parseSize, parseSizeOrZero } from "./size";
export { bytesIn, gigabyte, megabyte, parseUnit, partOf, sizeIn, tebibyte, terabyte, type SizeUnit } from "./size-unit";
export { hoursPerYear, secondsPerHour } from "./time";
