import { invalid } from "../../../src/planning/problem";
import { drive, explain, Stopped } from "../../../src/taskpane/elements/work";

function* count(to: number, closed: () => void): Generator<{ done: number; total: number }, string> {
  try {
    for (let done = 1; done <= to; done += 1) yield { done, total: to };
    return "counted";
  } finally {
    closed();
  }
}

/** A clock that moves 20 ms whenever it is asked. */
function slowClock(): void {
  let now = 0;
  jest.spyOn(performance, "now").mockImplementation(() => (now += 20));
}

describe("driving planning work", () => {
  afterEach(() => jest.restoreAllMocks());

  test("gives the page its turn every 50 ms and answers what the work answers", async () => {
    slowClock();
    const reports: number[] = [];
    const report = ({ done }: { done: number }) => Promise.resolve(void reports.push(done));
    await expect(drive(count(9, () => undefined), { signal: new AbortController().signal, report })).resolves.toBe("counted");
    expect(reports.length).toBeGreaterThan(1);
    expect(reports.length).toBeLessThan(9);
  });

  test("stops between two steps and closes the work", async () => {
    slowClock();
    const stop = new AbortController();
    const closed = jest.fn();
    const report = () => Promise.resolve(stop.abort());
    await expect(drive(count(1000, closed), { signal: stop.signal, report })).rejects.toThrow(Stopped);
    expect(closed).toHaveBeenCalledTimes(1);
  });
});

describe("explaining a failure", () => {
  afterEach(() => jest.restoreAllMocks());

  test("says the sentence of a problem as it is", () => {
    expect(explain(invalid("Sites", null, "Sites is empty. Write one row a site."), "Build")).toEqual({ sentence: "Sites is empty. Write one row a site.", tone: "trouble" });
  });

  test("calls a defect of ours by its name and never shows its text", () => {
    jest.spyOn(console, "error").mockImplementation(() => undefined);
    const { sentence, tone } = explain(new TypeError("x is undefined"), "Build");
    expect(sentence).toContain("inside the add-in");
    expect(sentence).not.toContain("undefined");
    expect(tone).toBe("trouble");
  });

  test("says after Stop that what was finished stays", () => {
    expect(explain(new Stopped(), "Build").sentence).toContain("What was finished stays");
  });
});
