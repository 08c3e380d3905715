export { canonicalText, digestOf } from "./canonical-text";
export { conditionHolds, parseCondition, type Comparison } from "./condition";
export { foldName } from "./fold-name";
export { Problem, invalid, noAnswer, quote } from "./problem";
export { fieldsOf, fillTemplate, parseTemplate, type Lookup } from "./template";
