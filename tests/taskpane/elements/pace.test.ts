import { pace } from "../../../src/taskpane/elements/pace";

describe("a paced trigger", () => {
  beforeEach(() => void jest.useFakeTimers());
  afterEach(() => void jest.useRealTimers());

  test("runs at once, then once more for all the triggers of the next 300 ms", async () => {
    const run = jest.fn(() => Promise.resolve());
    const trigger = pace(run, 300);
    trigger();
    expect(run).toHaveBeenCalledTimes(1);
    trigger();
    trigger();
    await jest.advanceTimersByTimeAsync(299);
    expect(run).toHaveBeenCalledTimes(1);
    await jest.advanceTimersByTimeAsync(1);
    expect(run).toHaveBeenCalledTimes(2);
    await jest.advanceTimersByTimeAsync(1000);
    expect(run).toHaveBeenCalledTimes(2);
  });

  test.each([
    [1_000, 4_000],
    [20_000, 5_000],
  ])("never runs twice at a time, rests after %d ms for %d ms, and does not lose a trigger that came meanwhile", async (took, rest) => {
    let finish: () => void = () => undefined;
    const run = jest.fn(() => new Promise<void>((resolve) => (finish = resolve)));
    const trigger = pace(run, 300);
    trigger();
    await jest.advanceTimersByTimeAsync(took);
    trigger();
    expect(run).toHaveBeenCalledTimes(1);
    finish();
    await jest.advanceTimersByTimeAsync(rest - 1);
    expect(run).toHaveBeenCalledTimes(1);
    await jest.advanceTimersByTimeAsync(1);
    expect(run).toHaveBeenCalledTimes(2);
  });
});
