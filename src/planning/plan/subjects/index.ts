export { idOf as idOfArray, JobSubjects, type Subject } from "./job-subjects";
export { lookupIn, planCellOf, type Scope } from "./scope";
