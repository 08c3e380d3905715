import { openHoldPoint, passedHoldPoints, type StepRecord } from "../../../../src/planning/commissioning/record";
import { jobRecords, stepRecord } from "../../../support/job-records";

type Some = Parameters<typeof stepRecord>[0];

/** A record of the step of a number for a subject. */
const row = (no: number, subject: string, more: Some = {}): StepRecord => stepRecord({ no: String(no), stepId: `S-${no}`, key: `J1/S-${no}/${subject}`, row: 10 + no, ...more });
const hold = (no: number, subject: string, more: Some = {}): StepRecord => row(no, subject, { holdPoint: true, ...more });
const done = (day: number | string | null = null): Some => ({ typed: { found: "Yes", by: "AB", done: day }, settled: true, result: "As expected" });
const told = (...steps: StepRecord[]): string[] => passedHoldPoints(jobRecords({ steps })).map(({ sentence }) => sentence);

describe("a hold point that is open", () => {
  test("is told with the first row below it in which something was found, and how many more there are", () => {
    const one = passedHoldPoints(jobRecords({ steps: [row(1, "A1", done()), hold(2, "A1"), row(3, "A1"), row(4, "A1", done())] }));
    expect(one).toEqual([{ row: 14, sentence: "No. 4 S-4 was done before hold point No. 2 S-2 was signed. Stop there, and sign it first." }]);
    const steps = [hold(2, "A1"), row(3, "A1", done()), row(4, "A1", done())];
    expect(told(...steps)).toEqual(["No. 3 S-3 and 1 more row below were done before hold point No. 2 S-2 was signed. Stop there, and sign it first."]);
    expect(told(...steps, row(5, "A1", done()))[0]).toContain("S-3 and 2 more rows below were done");
  });

  test("is not passed by what comes above it, or by itself", () => {
    expect(told(row(1, "A1", done()), hold(2, "A1", { typed: { found: "Yes" } }))).toEqual([]);
  });

  test.each<[string, Some]>([
    ["nothing was found", {}],
    ["a second name is wanted", { result: "Needs a second name", typed: { found: "Yes", by: "AB" } }],
    ["it differs", { result: "Differs", typed: { found: "No", by: "AB" } }],
  ])("is one where %s", (_, more) => {
    expect(told(hold(1, "A1", more), row(2, "A1", done()))).toHaveLength(1);
  });

  test("holds once something was found where it is not required, and is passed over as long as nobody wanted it", () => {
    expect(told(hold(1, "A1", { required: false }), row(2, "A1", done()))).toEqual([]);
    expect(told(hold(1, "A1", { required: false, typed: { found: "No" } }), row(2, "A1", done()))).toHaveLength(1);
  });

  test("about one array holds what is about that array: others go on, and the site is left safe", () => {
    const below = ["A1", "A1.bay-2", "A1.A.0", "A1.cluster", "A2", "A2.A.0", "A2.pool", "site", "A10"];
    const held = below.filter((subject) => told(hold(1, "A1"), row(2, subject, done())).length > 0);
    expect(held).toEqual(["A1", "A1.bay-2", "A1.A.0"]);
    expect(told(hold(1, "A1.B"), row(2, "A1.A", done()))).toHaveLength(1);
  });

  test.each(["site", "A1.cluster", "A1.pool"])("about %s holds everything below it", (subject) => {
    for (const below of ["A1", "A2.A.0", "site", "A2.pool"]) expect(told(hold(1, subject), row(2, below, done()))).toHaveLength(1);
  });

  test("about the site holds everything also where a slash stands in the name by which its job goes, or in a step id", () => {
    const inJob = (no: number, stepId: string, subject: string, more: Some): StepRecord => row(no, subject, { stepId, key: `~hall 1/2/${stepId}/${subject}`, ...more });
    const passed = (held: StepRecord, ...below: StepRecord[]): number => passedHoldPoints(jobRecords({ jobId: "~hall 1/2", steps: [held, ...below] })).length;
    for (const stepId of ["S-1", "S/1"]) {
      const held = (subject: string): StepRecord => inJob(1, stepId, subject, { holdPoint: true });
      expect(passed(held("site"), inJob(2, "S-2", "A1", done()))).toBe(1);
      expect(passed(held("A1"), inJob(2, "S/2", "A1.B", done()))).toBe(1);
      expect(passed(held("A1"), inJob(2, "S/2", "A2", done()))).toBe(0);
    }
  });

  test("is passed by the rows that the numbers of the build put below it, wherever they were sorted to", () => {
    expect(told(row(10, "A1", done()), hold(9, "A1"))).toEqual(["No. 10 S-10 was done before hold point No. 9 S-9 was signed. Stop there, and sign it first."]);
  });

  test("counts the row of a grid once, by whichever of its steps is found first", () => {
    const inGrid = (place: number): StepRecord => row(2, `A1.${place}`, { ...done(), slot: { place, rowKey: "slots:2", signKey: "J1/sign/x", head: "" } });
    expect(told(hold(1, "A1"), inGrid(0), inGrid(1))).toEqual(["No. 2 S-2 was done before hold point No. 1 S-1 was signed. Stop there, and sign it first."]);
  });
});

describe("a hold point that is signed", () => {
  test("was passed by what was done on an earlier day, which can only be accepted by name", () => {
    const fact = "No. 2 S-2 was done before hold point No. 1 S-1 was signed.";
    const steps = [hold(1, "A1", done(46_084)), row(2, "A1", done(46_083.9)), row(3, "A1", done(46_084))];
    expect(passedHoldPoints(jobRecords({ steps }))).toEqual([{ row: 12, fact, sentence: `${fact} Mend the day, or accept it by name.` }]);
  });

  test("was not passed by what was done on the same day, later, or on a day that nobody wrote", () => {
    expect(told(hold(1, "A1", done(46_084.9)), row(2, "A1", done(46_084.1)), row(3, "A1", done(46_090)), row(4, "A1", done()), row(5, "A1", done("monday")))).toEqual([]);
    expect(told(hold(1, "A1", done()), row(2, "A1", done(1)))).toEqual([]);
  });

  test("was passed by the rows of a grid on the day of the row that signs for them", () => {
    const signKey = "J1/sign/drives";
    const inGrid = row(2, "A1.bay-1", { typed: { found: "N-1" }, slot: { place: 0, rowKey: "slots:2", signKey, head: "" } });
    const sign = (day: number): StepRecord => row(3, "drives", { key: signKey, ...done(day) });
    expect(told(hold(1, "A1", done(46_084)), inGrid, sign(46_083))).toHaveLength(1);
    expect(told(hold(1, "A1", done(46_084)), inGrid, sign(46_084))).toEqual([]);
  });
});

describe("what comes first of a step", () => {
  const first = (step: StepRecord, ...steps: StepRecord[]): string | null => openHoldPoint(jobRecords({ steps: [...steps, step] }), step)?.no ?? null;

  test("is the first open hold point above it that holds it too; none once it is settled, nor one below or of another array", () => {
    expect(first(row(5, "A1"), hold(2, "A1"), hold(3, "A1"))).toBe("2");
    expect(first(row(5, "A1"), hold(2, "A1", done()), hold(3, "A1"))).toBe("3");
    expect(first(row(5, "A1"), hold(2, "A1", done()), hold(3, "A2"), hold(6, "A1"))).toBeNull();
    expect(first(row(5, "A1.bay-2"), hold(2, "site"))).toBe("2");
    expect(first(row(5, "site"), hold(2, "A1"))).toBeNull();
  });

  test("is no hold point that nobody asks for, and never itself", () => {
    expect(first(row(5, "A1"), hold(2, "A1", { required: false }))).toBeNull();
    expect(first(hold(5, "A1"))).toBeNull();
  });
});
