export { describeFeedLoads } from "./describe-feed-loads";
export { drawingPages } from "./drawing-pages";
export type { DrawingKind, DrawingPage, Mark, TextMark } from "./page";
export { optionsPage } from "./options-page";
export { describePool, fillOf, layoutCapacity, limitOf, toHostsOf, type PoolCapacity } from "./pool-capacity";
export { describeRack, layInLanes, layoutRack, type RackLayout } from "./rack-layout";
export { svgOf } from "./svg";
export type { Made } from "./title-block";
