export { unitPrice } from "./unit-price";
