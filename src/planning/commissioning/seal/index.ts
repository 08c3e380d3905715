export { checkSeal, sealOf, type SealCheck } from "./seal";
