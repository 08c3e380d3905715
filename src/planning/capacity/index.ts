export { commonSchemes, compareSchemes, type SchemeComparison } from "./compare";
export { layoutDrives, layoutRows, survivedFailures, type FailureCase, type Layout, type LayoutRow } from "./layout";
export { mostDrives, parseScheme, type Placement, type Scheme } from "./scheme";
export { breakDown, usableBytes, type Breakdown } from "./usable";
export { writeCost } from "./write-cost";
