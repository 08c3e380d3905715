export { builtInProcedures } from "./built-in-procedures";
export { addProcedures, describeOlder, procedureEditions } from "./editions";
export { lacksLimit, parseExpectation, seenUnits, type Expectation, type Wanted } from "./expectation";
export { gridFaults, mostSlots, type GridFault } from "./grid-faults";
export { withdrawnFault, withdrawnSteps } from "./withdrawn-steps";
export { readingSteps } from "./yearly-check";
