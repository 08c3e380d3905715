export * from "./changes";
export * from "./locate-table";
export * from "./read-plan";
export * from "./sample";
export * from "./set-up";
export * from "./settings";
export * from "./sheet-plan";
export * from "./tables";
