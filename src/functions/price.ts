// Price and release: what a terabyte costs, what a device costs to run, and which release computed a cell.
import { version as release } from "../../package.json";
import { answer } from "./support/answer";

/**
 * Tells which release of Baywright computed this cell.
 * @customfunction VERSION
 * @param [cell] A cell to watch: the answer is computed again whenever it changes.
 * @returns The release, such as 1.0.0.
 */
export function version(cell?: unknown): string {
  void cell;
  return answer("VERSION", () => release);
}
