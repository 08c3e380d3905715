export { dataLossRisk, meanYearsToDataLoss, type LossConditions } from "./data-loss";
export { annualFailureRate, hourlyFailureRate } from "./failure-rate";
export { atLeastKOfN, mostParts } from "./k-of-n";
export { meanHoursToLoss, type LossChain } from "./loss-chain";
export { bitsIn, readFault, type Chance } from "./read-fault";
