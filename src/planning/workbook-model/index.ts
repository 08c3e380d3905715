export * from "./locate-table";
export * from "./read-plan";
export * from "./sheet-plan";
export * from "./tables";
