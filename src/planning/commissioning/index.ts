export { builtInProcedures } from "./procedures/built-in-procedures";
export type { HeadedRow } from "./procedures/draft";
