export { missingValues, type MissingColumn } from "./missing";
export { addedRows, refuseTakenNames } from "./new-rows";
export { lackingTables, planSite, siteRows } from "./plan-site";
export { questions, sections, type Answers, type Question, type QuestionKey } from "./questions";
