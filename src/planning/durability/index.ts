export { bytesLostPerTerabyte, dataLossRange, dataLossRisk, meanYearsToDataLoss, mostRangeRows, type Exposure, type LossConditions, type RiskAtRate } from "./data-loss";
export { annualFailureRate, hourlyFailureRate } from "./failure-rate";
export { criticalShare } from "./critical-share";
export { meanHoursToLoss } from "./hours-to-loss";
export { atLeastKOfN, mostParts } from "./k-of-n";
export { buildLossChain, type ChainRates, type LossChain, type LossState } from "./loss-chain";
export { lossWithin, type LossChances } from "./loss-within";
export { bitsIn, readFault, type Chance } from "./read-fault";
