export { capacityOfDesign, dataAfter, limitTerabytes, type DesignCapacity } from "./design-capacity";
export { designRows, planDesign, tablesOfDesign } from "./design-rows";
export { designsInPlan, planQuote, quoteRows, type DesignInPlan, type QuoteDetails } from "./quote-rows";
export { findOptions, readOptions, type Design, type Needs, type Options } from "./read-options";
export { mostDesigns, optionsMark, planOptions } from "./options-sheet";
