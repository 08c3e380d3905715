export { canonicalText, digestOf } from "./canonical-text";
export { conditionHolds, parseCondition, type Comparison } from "./condition";
export { explainComma } from "./decimal-comma";
export { ampsOf, formatAmps, formatKilograms, formatPercent, formatTerabytes, formatWatts, roundTo, terabytesOf } from "./figures";
export { foldName } from "./fold-name";
export { isNumberText, isPlainNumber } from "./number-text";
export { cutSentence, Problem, invalid, isTaken, noAnswer, quote, type Proposal } from "./problem";
export { splitNames } from "./split-names";
export { fieldsOf, fillTemplate, parseTemplate, type Lookup } from "./template";
