export { assignPlanAddresses } from "./assign-plan-addresses";
export { keepPlannedPorts, type SpillPlace } from "./keep-planned-ports";
export { proposeCabling } from "./propose-cabling";
export { writeCables } from "./write-cables";
