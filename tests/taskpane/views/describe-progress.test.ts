import { describeProgress } from "../../../src/taskpane/views/describe-progress";

const progress = { job: "j", site: "s", state: "open", build: 2, steps: 310, done: 12, open: 298, differ: 0, again: 0, snags: 0, passedHolds: 0, minutesLeft: 0, fault: "" } as const;

describe("how far a job is, in one line", () => {
  test.each([
    [{ state: "no tab", build: 0, steps: 0, done: 0 } as const, "No tab yet"],
    [{}, "Build 2 · 12 of 310 steps settled"],
    [{ steps: 1, done: 0 }, "Build 2 · 0 of 1 step settled"],
    [{ passedHolds: 1 }, "Build 2 · 12 of 310 steps settled · work went past 1 hold point"],
    [{ differ: 3, again: 1, snags: 2, minutesLeft: 340 }, "Build 2 · 12 of 310 steps settled · 3 differ · 1 to be seen again · 2 snags open · 5 h 40 min left"],
    [{ fault: "The header is gone." }, "Build 2 · 12 of 310 steps settled · not to be trusted yet: The header is gone."],
    [{ state: "closed", done: 310 } as const, "Build 2 · closed and sealed · 310 of 310 steps settled"],
  ])("%j is %p", (change, line) => expect(describeProgress({ ...progress, ...change })).toBe(line));

  test.each([[0.4, "0 min"], [59, "59 min"], [60, "1 h"], [61.4, "1 h 1 min"], [1500, "25 h"]])("%d minutes are %s", (minutesLeft, words) => {
    expect(describeProgress({ ...progress, minutesLeft })).toBe(`Build 2 · 12 of 310 steps settled · ${words} left`);
  });
});
