export { idOf as idOfArray, JobSubjects, type Subject, type SubjectPart } from "./job-subjects";
export { lookupIn, planCellOf, type Scope } from "./scope";
