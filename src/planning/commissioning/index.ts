export { builtInProcedures } from "./procedures/built-in-procedures";
