export { checkPlan } from "./check-plan";
export type { Finding, Rule, Weight } from "./finding";
export { mendsOf } from "./mends";
export { rules } from "./rules";
export { storedSecret } from "./rules/secrets/stored-secret";
export { missingId } from "./rules/references/missing-id";
