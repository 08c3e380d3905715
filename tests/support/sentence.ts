import { Problem } from "../../src/planning/text/problem";

/** Runs `work` and gives the problem it throws; fails when it throws none, or something else. */
export function problemOf(work: () => unknown): Problem {
  try {
    work();
  } catch (thrown) {
    if (thrown instanceof Problem) return thrown;
    throw thrown;
  }
  throw new Error("no problem was thrown");
}
