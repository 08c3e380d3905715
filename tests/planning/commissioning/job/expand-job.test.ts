import { jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { expandJob, idOfJob, stepWords, type JobStep } from "../../../../src/planning/commissioning/job";
import { builtInProcedures } from "../../../../src/planning/commissioning/procedure";
import type { TableRows } from "../../../../src/planning/plan/schema";
import { planWorkbook, smallPlan, step } from "../../../support/commissioning-plan";
import { problemOf } from "../../../support/sentence";

function expanded(rows: TableRows, job = 0) {
  const source = readCommissioningPlan(planWorkbook(rows));
  return expandJob(source.model, jobsOf(source)[job]!);
}

const stepsOf = (rows: TableRows, job = 0): JobStep[] => expanded(rows, job).sections.flatMap(({ steps }) => steps);
const keysOf = (rows: TableRows, job = 0): string[] => stepsOf(rows, job).map(({ key }) => key);
const small = smallPlan();
const withSteps = (...steps: NonNullable<TableRows["steps"]>[number][]): TableRows => ({ ...small, steps });

describe("a hold point", () => {
  const hold = (more: Partial<NonNullable<TableRows["steps"]>[number]>) => stepsOf(withSteps(step("T-01", "Start", { holdPoint: "yes", ...more })))[0]!;

  test("is a step whose row says yes; one that says no or nothing is none", () => {
    expect((["yes", "no", null] as const).map((holdPoint) => hold({ holdPoint }).holdPoint)).toEqual([true, false, false]);
  });

  test("says so before its caution, and how many names it wants", () => {
    expect(stepWords(hold({ caution: "It cuts." }))).toBe("HOLD POINT: nothing further until it is signed. CAUTION: It cuts.\nDo T-01");
    expect(stepWords(hold({ sign: "two" }))).toBe("HOLD POINT: nothing further until two have signed.\nDo T-01");
    expect(stepWords(hold({ holdPoint: "no" }))).toBe("Do T-01");
  });

  test("is signed by one name where its row asks for none, as nobody could tell otherwise that it was passed", () => {
    expect((["none", "one", "two", null] as const).map((sign) => hold({ sign }).sign)).toEqual(["one", "one", "two", "one"]);
    expect(hold({ sign: "none", holdPoint: "no" }).sign).toBe("none");
  });

  test("keeps a section from being built as a grid", () => {
    const procedures = small.procedures!.map((row) => (row.section === "Ports" ? { ...row, shownAs: "grid" as const } : row));
    const steps = [step("T-20", "Ports"), step("T-21", "Ports", { holdPoint: "yes" })];
    expect(problemOf(() => expanded({ ...small, procedures, steps })).sentence).toBe("Step T-21 is a hold point, which wants a row of its own. Show its section as a list.");
  });
});

describe("a word that cannot be read", () => {
  /** The small plan with one cell of its first step typed over. */
  const typed = (header: string, word: string | number | boolean) => () => {
    const workbook = planWorkbook(small);
    const sheet = workbook.sheets.find(({ name }) => name === "Steps")!;
    const head = sheet.values.findIndex((line) => line.includes(header));
    const values = sheet.values.map((line, row) => (row === head + 1 ? sheet.values[head]!.map((name, column) => (name === header ? word : (line[column] ?? null))) : line));
    const source = readCommissioningPlan({ ...workbook, sheets: workbook.sheets.map((one) => (one === sheet ? { ...sheet, values } : one)) });
    return expandJob(source.model, jobsOf(source)[0]!);
  };

  test.each<[string, string | number | boolean, string]>([
    ["Hold point", "x", 'Step T-01: Hold point "x" is not known. Write yes or no.'],
    ["Hold point", true, 'Step T-01: Hold point "TRUE" is not known. Write yes or no.'],
    ["Hold point", 1, 'Step T-01: Hold point "1" is not known. Write yes or no.'],
    ["Sign", "three", 'Step T-01: Sign "three" is not known. Write none or one or two.'],
    ["Bound", "atmost", 'Step T-01: Bound "atmost" is not known. Write = or at least or at most.'],
  ])("is refused under %s where it says %j: it would ask for something else than somebody meant", (header, word, sentence) => {
    expect(problemOf(typed(header, word)).sentence).toBe(sentence);
  });

  test("does no harm where nothing is asked of people, and yes is read in any case", () => {
    expect(typed("Minutes", "soon")().sections[0]!.steps[0]!.minutes).toBe(0);
    expect(typed("Hold point", " YES ")().sections[0]!.steps[0]!.holdPoint).toBe(true);
  });
});

describe("the visits of a job", () => {
  const inVisits = (...visits: (string | null)[]): TableRows => ({ ...small, procedures: small.procedures!.map((row, index) => ({ ...row, visit: visits[index] ?? null })) });
  const headings = (rows: TableRows): string[] => expanded(rows).sections.map(({ visit }) => visit);

  test("have a heading above the section with which each begins, and count those that have steps", () => {
    expect(headings(inVisits("Set-up", "Set-up", "Tests", "tests", "Handover"))).toEqual(["Visit 1 of 3: Set-up", "", "Visit 2 of 3: Tests", "", "Visit 3 of 3: Handover"]);
  });

  test("have a heading of one line, whatever their name holds", () => {
    expect(headings(inVisits("Set-up", "Tests\nand  acceptance")).slice(0, 2)).toEqual(["Visit 1 of 2: Set-up", "Visit 2 of 2: Tests and acceptance"]);
    expect(headings(inVisits("=1+1", "__proto__", "constructor")).slice(0, 3)).toEqual(["Visit 1 of 3: =1+1", "Visit 2 of 3: __proto__", "Visit 3 of 3: constructor"]);
  });

  test("go on where a section names none, also one that is left out of the job as it has no steps", () => {
    expect(headings(inVisits("Set-up", null, "Tests"))).toEqual(["Visit 1 of 2: Set-up", "", "Visit 2 of 2: Tests", "", ""]);
    const without = { ...inVisits("Set-up", null, "Tests"), steps: small.steps!.filter(({ section }) => section !== "Ports") };
    expect(headings(without)).toEqual(["Visit 1 of 2: Set-up", "", "Visit 2 of 2: Tests", ""]);
  });

  test("have no heading where there is one, be it named or not", () => {
    expect(headings(inVisits("Set-up"))).toEqual(["", "", "", "", ""]);
    expect(headings(small)).toEqual(["", "", "", "", ""]);
    const onlySetUp = { ...inVisits("Set-up", null, "Tests"), steps: small.steps!.filter(({ section }) => section === "Start" || section === "Arrays") };
    expect(headings(onlySetUp)).toEqual(["", ""]);
  });

  test("may begin behind sections of none, and come again after another", () => {
    expect(headings(inVisits(null, null, "Tests"))).toEqual(["Visit 1 of 2", "", "Visit 2 of 2: Tests", "", ""]);
    expect(headings(inVisits("A", "B", "A"))).toEqual(["Visit 1 of 3: A", "Visit 2 of 3: B", "Visit 3 of 3: A", "", ""]);
  });
});

describe("the steps of a job", () => {
  test("run section by section, subject by subject, in table order", () => {
    expect(keysOf(small)).toEqual([
      "J0001/T-01/site",
      "J0001/T-10/A0001", "J0001/T-11/A0001", "J0001/T-12/A0001",
      "J0001/T-10/A0002", "J0001/T-11/A0002", "J0001/T-12/A0002", "J0001/T-13/A0002",
      "J0001/T-20/A0001.A.0", "J0001/T-21/A0001.A.0", "J0001/T-20/A0001.B.0", "J0001/T-21/A0001.B.0",
      "J0001/T-20/A0002.A.0", "J0001/T-21/A0002.A.0", "J0001/T-20/A0002.B.0", "J0001/T-21/A0002.B.0",
      "J0001/T-30/A0001.cluster",
      "J0001/T-90/site",
    ]);
  });

  test("carry the values of their own subject", () => {
    const shown = Object.fromEntries(stepsOf(small).map(({ key, expectation }) => [key.slice(6), expectation.shown]));
    expect(shown).toMatchObject({
      "T-01/site": "Agreed with Desk",
      "T-10/A0002": "N-0002",
      "T-11/A0001": "4",
      "T-12/A0001": "16 TB ±2%",
      "T-20/A0002.B.0": "192.0.2.4",
      "T-21/A0001.A.0": "8972",
    });
  });

  test("keep their keys when arrays, cluster and pool are renamed", () => {
    const renamed = {
      ...small,
      arrays: small.arrays!.map((row) => ({ ...row, array: `new-${String(row.array)}`, cluster: "South", pool: "South" })),
      ports: small.ports!.map((row) => ({ ...row, array: `new-${String(row.array)}` })),
      clusters: small.clusters!.map((row) => ({ ...row, cluster: "South" })),
      pools: small.pools!.map((row) => ({ ...row, pool: "South", cluster: "South" })),
    };
    expect(keysOf(renamed)).toEqual(keysOf(small));
  });

  test("know a port with an address of each family as two", () => {
    const dual = { ...small, ports: [small.ports![0]!, { ...small.ports![0]!, address: "2001:db8::1" }] };
    expect(keysOf(dual).filter((key) => key.includes("T-21"))).toEqual(["J0001/T-21/A0001.A.0", "J0001/T-21/A0001.A.0.v6"]);
    const sizes = stepsOf(dual).filter(({ stepId }) => stepId === "T-21").map(({ expectation }) => expectation.shown);
    // RFC 791 and RFC 792: 20 + 8 bytes of headers; RFC 8200 and RFC 4443: 40 + 8.
    expect(sizes).toEqual(["8972", "8952"]);
  });
});

describe("a cluster", () => {
  const following = (procedure: string) => (rows: TableRows, job = 0): string[] => {
    const followed: TableRows = { ...rows, ...builtInProcedures, jobs: rows.jobs!.map((row) => ({ ...row, procedure })) };
    return keysOf(followed, job).filter((key) => /(INS|JOI)-(38[5-7]|404|48[56])/.test(key)).map((key) => key.split("/").slice(1).join(" "));
  };
  const [acts, added] = [following("Install a rack array"), following("Add an array to a live cluster")];

  test("is created once and joined behind its gate by the second array, and both give their capacity to a pool that is new", () => {
    expect(acts(small)).toEqual(["INS-385 A0001", "INS-386 A0002", "INS-387 A0002", "INS-404 A0001", "INS-404 A0002"]);
  });

  test("is created first even where its table has the arrays the other way round", () => {
    const [one, two] = small.arrays!;
    expect(acts({ ...small, arrays: [two!, one!] })[0]).toBe("INS-385 A0001");
  });

  test("over two sites has its steps once, on the job of the array of order 1, and is live for the other one", () => {
    const twoSites = {
      ...small,
      sites: [...small.sites!, { site: "South hall" }],
      arrays: small.arrays!.map((row, index) => (index === 1 ? { ...row, site: "South hall" } : row)),
      jobs: [...small.jobs!, { id: "J0002", job: "South hall", site: "South hall", procedure: "Try out" }],
    };
    expect(keysOf(twoSites, 0).filter((key) => key.includes("T-30"))).toHaveLength(1);
    expect(keysOf(twoSites, 1).filter((key) => key.includes("T-30"))).toHaveLength(0);
    expect(added(twoSites, 1)).toEqual(["JOI-485 A0002", "JOI-486 A0002"]);
  });

  test("that exists is joined by a later job", () => {
    const later: TableRows = {
      ...small,
      clusters: small.clusters!.map((row) => ({ ...row, state: "existing" })),
      jobs: [...small.jobs!, { id: "J0002", job: "One more array", site: "North hall", procedure: "Try out", arrays: "n-2" }],
    };
    // Nobody knows whether joining adds capacity: then it is the last that happens.
    expect(added(later, 1)).toEqual(["JOI-485 A0002", "JOI-486 A0002"]);
    const models = (joinAddsCapacity: "yes" | "no") => ({ ...later, models: [{ model: String(small.arrays![1]!.model), joinAddsCapacity }] });
    expect(added(models("yes"), 1)).toEqual(["JOI-485 A0002", "JOI-486 A0002"]);
    expect(added(models("no"), 1)).toEqual(["JOI-385 A0002", "JOI-386 A0002", "JOI-387 A0002", "JOI-404 A0002"]);
    expect(acts(later, 1)).toEqual(["INS-404 A0002"]);
  });
});

describe("one step", () => {
  const only = (more: Parameters<typeof step>[2], section = "Arrays"): JobStep => stepsOf(withSteps(step("T-1", section, more)))[0]!;

  test("is filled from the plan: what to do, what gets hurt, what the maker's guide says and what is expected", () => {
    const texts = { do: "Read {{Array}}", caution: "{{Rack}} tips.", makersGuide: "Page of {{Model}}", expect: " {{Array.Serial}} " };
    expect(only({ ...texts, record: "serial", unit: "U", minutes: 7 })).toEqual({
      key: "J0001/T-1/A0001", stepId: "T-1", do: "Read n-1", caution: "N1 tips.", makersGuide: "Page of Elm 6", subject: "n-1",
      expectation: { kind: "serial", choices: [], shown: "N-0001", wanted: { by: "text", text: "N-0001" } },
      unit: "U", required: true, sign: "one", holdPoint: false, minutes: 7, planCell: { table: "arrays", row: 4, column: "serial" }, slot: null,
    });
  });

  test.each([
    ["none", "none"],
    ["one", "one"],
    ["two", "two"],
    [null, "one"],
  ] as const)("whose Sign says %j is signed by %s", (sign, expected) => {
    expect(only({ sign }).sign).toBe(expected);
  });

  test("need not be done where Required does not say so, and takes no minutes where none stand", () => {
    expect(only({ required: "no", minutes: null })).toMatchObject({ required: false, minutes: 0 });
  });

  test("knows the cell of the plan that it expects as it stands", () => {
    const cellOf = (expect: string) => only({ expect, record: "text" }).planCell;
    expect(cellOf("{{Array.Serial}}")).toEqual({ table: "arrays", row: 4, column: "serial" });
    expect(cellOf("Serial {{Array.Serial}}")).toBeNull();
    expect(cellOf("{{Array.Serial}}{{Rack}}")).toBeNull();
    expect(cellOf("N-0001")).toBeNull();
    expect(cellOf("")).toBeNull();
    expect(cellOf("{{Usable}}")).toBeNull();
  });

  test("is left out where its condition does not hold, or that of its section", () => {
    expect(keysOf(withSteps(step("T-1", "Arrays", { when: "Array = n-2" })))).toEqual(["J0001/T-1/A0002"]);
    const procedures = small.procedures!.map((row) => (row.section === "Arrays" ? { ...row, when: "Array = n-1" } : row));
    expect(keysOf({ ...withSteps(step("T-1", "Arrays")), procedures })).toEqual(["J0001/T-1/A0001"]);
  });

  test("may be as long as a cell takes, with what a tab writes around it", () => {
    expect(only({ do: "x".repeat(32_700), caution: "y".repeat(4), makersGuide: "z".repeat(3) }).do).toHaveLength(32_700);
    expect(only({ expect: "x".repeat(32_767) }).expectation.shown).toHaveLength(32_767);
  });
});

describe("the sections of a job", () => {
  test("have their titles and only those with steps", () => {
    expect(expanded(withSteps(step("T-1", "End"), step("T-2", "start"))).sections.map(({ title, steps }) => [title, steps.length])).toEqual([["Start", 1], ["End", 1]]);
  });

  test("may be a single one", () => {
    expect(keysOf({ ...withSteps(step("T-1", "End")), procedures: small.procedures!.slice(-1) })).toEqual(["J0001/T-1/site"]);
  });

  test("need no arrays where none of them is about any", () => {
    const rows = { ...small, arrays: [], ports: [], clusters: [], pools: [], procedures: small.procedures!.filter(({ forEach }) => forEach === "site"), steps: [step("T-1", "Start")] };
    expect(keysOf(rows)).toEqual(["J0001/T-1/site"]);
  });
});

test("a job is named by its id, and by its name as long as it has none", () => {
  const idsOf = (rows: TableRows) => jobsOf(readCommissioningPlan(planWorkbook(rows))).map(idOfJob);
  expect(idsOf(small)).toEqual(["J0001"]);
  expect(idsOf({ ...small, jobs: [{ ...small.jobs![0]!, id: null }] })).toEqual(["~north hall"]);
  expect(expanded(small).id).toBe("J0001");
});

describe("what cannot be worked out", () => {
  test.each<[string, string, TableRows, string]>([
    [
      "an unknown placeholder", "Step T-1",
      withSteps(step("T-1", "Start", { do: "See {{Colour}}" })),
      'Step T-1 names "Colour", which no table in reach has. Write the header of a column, such as {{Array}}.',
    ],
    ["an unknown field in When", "Step T-1", withSteps(step("T-1", "Start", { when: "Colour = red" })), 'Step T-1 names "Colour", which no table in reach has.'],
    [
      "an unknown field in the When of a section", "Section Start",
      { ...small, procedures: small.procedures!.map((row) => ({ ...row, when: "Colour = red" })) },
      'Section Start names "Colour", which no table in reach has.',
    ],
    ["a When that is no condition", "Step T-1", withSteps(step("T-1", "Start", { when: "always" })), 'Step T-1 "always" is no condition.'],
    ["an expectation that cannot be compared", "Step T-1", withSteps(step("T-1", "Start", { expect: "many", record: "number" })), 'Step T-1 expects "many", which is not a number.'],
    ["a step id twice", "Step id", withSteps(step("T-1", "Start"), step("t-1", "End")), 'Step id "t-1" stands twice. Records are kept by it: give one of the steps a new id.'],
    ["a step of an unknown section", "Section", withSteps(step("T-1", "Middle")), 'Step T-1 is in section "Middle", which its procedure lacks. Add the section to Procedures.'],
    [
      "a section twice", "Section",
      { ...small, procedures: [...small.procedures!, { procedure: "Try out", section: "start", forEach: "site" }] },
      'Section "start" stands twice in its procedure. Give each section a name of its own.',
    ],
    [
      "a procedure nobody has", "Procedure",
      { ...small, jobs: [{ ...small.jobs![0]!, procedure: "Other" }] },
      'Job "North hall" follows procedure "Other", which the table Procedures does not have. Write one of its procedures.',
    ],
    ["no procedure", "Procedure", { ...small, jobs: [{ ...small.jobs![0]!, procedure: null }] }, 'Job "North hall" follows procedure a blank, which the table Procedures does not have.'],
    ["a job without arrays", "Arrays", { ...small, arrays: [] }, 'Job "North hall" has no arrays: none stands at "North hall". Fill the table Arrays, or name them in the job.'],
    ["an array nobody has", "Arrays", { ...small, jobs: [{ ...small.jobs![0]!, arrays: "n-9" }] }, 'names array "n-9", which the table Arrays does not have.'],
    ["a step too long for a cell", "Step T-1", withSteps(step("T-1", "Start", { do: "x".repeat(32_708) })), "Step T-1 has 32768 characters when filled; a cell takes 32767. Shorten it."],
    [
      "a step too long by its caution and maker's guide",
      "Step T-1",
      withSteps(step("T-1", "Start", { do: "x".repeat(32_000), caution: "y".repeat(400), makersGuide: "z".repeat(308) })),
      "Step T-1 has 32768 characters when filled; a cell takes 32767. Shorten it.",
    ],
    ["an expectation too long for a cell", "Step T-1", withSteps(step("T-1", "Start", { do: "", expect: "x".repeat(32_768) })), "Step T-1 has 60 characters when filled; a cell takes 32767."],
  ])("is said in a sentence: %s", (_, argument, rows, sentence) => {
    const problem = problemOf(() => expanded(rows));
    expect(problem).toMatchObject({ kind: "invalid", argument, sentence: expect.stringContaining(sentence) as string });
    expect(problem.sentence.length).toBeLessThanOrEqual(160);
  });
});
