import type { TestRun } from "./survey-tests";

/** Puts first the test files that are likely to notice a mutant for the time they take, by what they noticed so far. */
export class RunOrder {
  private readonly tried = new Map<string, number>();
  private readonly noticed = new Map<string, number>();

  /** Sorts runs by the chance per millisecond; a file that was never tried may notice every other mutant. */
  sorted(runs: readonly TestRun[]): TestRun[] {
    const chance = ({ testFile }: TestRun): number => ((this.noticed.get(testFile) ?? 0) + 1) / ((this.tried.get(testFile) ?? 0) + 2);
    return [...runs].sort((a, b) => chance(b) / b.ms - chance(a) / a.ms);
  }

  note(testFile: string, hasNoticed: boolean): void {
    this.tried.set(testFile, (this.tried.get(testFile) ?? 0) + 1);
    if (hasNoticed) this.noticed.set(testFile, (this.noticed.get(testFile) ?? 0) + 1);
  }
}
