export * from "./sheet-plan";
export * from "./tables";
