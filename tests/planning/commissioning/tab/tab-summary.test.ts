import { buildJob, jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { letter, shownColumns, tabColumnKeys } from "../../../../src/planning/commissioning/tab/tab-columns";
import type { TableRows } from "../../../../src/planning/plan/schema";
import type { SheetPlan } from "../../../../src/sheet";
import { moment, planWorkbook, smallPlan, step } from "../../../support/commissioning-plan";

function tabOf(rows: TableRows): SheetPlan {
  const source = readCommissioningPlan(planWorkbook(rows));
  return buildJob(source, jobsOf(source)[0]!, () => "new", moment).tab;
}

/** Reads what stands above the first section: each row as its filled cells by the letter of the column. */
function summary(tab: SheetPlan): Record<string, unknown>[] {
  const end = tab.rows.findIndex(([cell]) => cell?.value === "Start");
  return tab.rows.slice(2, end).map((row) =>
    Object.fromEntries(tabColumnKeys.slice(0, shownColumns).flatMap((key, index) => {
      const { value, formula } = row[index]!;
      return value === undefined && formula === undefined ? [] : [[letter[key], formula === undefined ? value : "="]];
    })),
  );
}

const small = smallPlan();

describe("the summary of a tab", () => {
  const rows = summary(tabOf(small));

  test("says where and what the job is, how to fill the tab, and how far it is", () => {
    expect(rows.slice(0, 5)).toEqual([
      { A: "Site North hall · room N.1 · contact Desk · Try out · build 1, made 2026-03-02 09:15 from north.xlsx" },
      {
        A:
          "Anyone may stop the work. Found: what you see, Yes or No where nothing is entered; By: your name. “Not applicable” and “Waived” want a reason in Note. " +
          "What differs goes to Snags: the first Found stays.",
      },
      { C: "Next open step", D: "Done", E: "Required open", F: "Differ", G: "To see again", H: "By eye", J: "Second name", K: "Snags open", L: "Minutes left", M: "Seal" },
      { C: "=", D: "=", E: "=", F: "=", G: "=", H: "=", J: "=", K: "=", L: "=", M: "=" },
      {},
    ]);
  });

  test("sets addresses beside rack positions, feed loads and capacity, between blank rows", () => {
    expect(rows.slice(5)).toMatchObject([
      { A: "Addresses", D: "Network", E: "Controller A · B", G: "Rack positions", I: "Rack, units", K: "Lift", L: "Feeds A, B" },
      { A: "n-1, port 0", D: "data", E: "192.0.2.1 · 192.0.2.2", G: "n-1", I: "N1, 4–5", L: "N-A, N-B" },
      { A: "n-2, port 0", D: "data", E: "192.0.2.3 · 192.0.2.4", G: "n-2", I: "N1, 8–9", L: "N-A, N-B" },
      { A: "North, shared address", D: "data", E: "192.0.2.250", G: "Networks", I: "Prefix", K: "Gateway, VLAN" },
      { G: "data", I: "192.0.2.0/24", K: "gateway none" },
      { G: "Feed loads (local code decides)", I: "Normal W", J: "Worst W", K: "Worst A", L: "Limit A", M: "Of limit at worst" },
      // Two arrays of 300 W share two feeds of 230 V: 300 W each, 600 W at worst; 600 / 230 A of 0.8 × 16 A (common practice, no source).
      { G: "N-A", I: 300, J: 600, K: 2.61, L: 12.8, M: expect.stringMatching(/^20.*%, within$/) as string },
      { G: "N-B", I: 300, J: 600, K: 2.61, L: 12.8, M: expect.stringMatching(/^20.*%, within$/) as string },
      { G: "Capacity by pool, here", I: "To hosts TB", J: "Usable TB", K: "Fill limit", L: "To fill TB", M: "Arrays" },
      // RAID 6 of six drives of 4 TB: four of them hold data, on each of two arrays.
      { G: "North", I: 32, J: 32, K: "80%", L: 25.6, M: "all of this tab" },
      {},
    ]);
  });

  test("leaves out what the plan does not say", () => {
    const bare: TableRows = {
      ...small,
      sites: [{ site: "North hall" }],
      jobs: [{ ...small.jobs![0]!, subject: "Shelf 2", plannedDate: "2026-05-31" }],
      arrays: small.arrays!.map((row) => ({ ...row, bottomUnit: null, drives: null, cluster: null, feedA: null, feedB: null, pool: row.array === "n-1" ? "Loose" : null })),
      networks: [{ ...small.networks![0]!, gateway: "192.0.2.254", vlan: 12 }],
      steps: [step("T-01", "Start")],
    };
    const [where, , , , , ...tables] = summary(tabOf(bare));
    expect(where).toEqual({ A: "Site North hall · Try out · planned 2026-05-31 · about Shelf 2 · build 1, made 2026-03-02 09:15 from north.xlsx" });
    expect(tables).toEqual([
      expect.objectContaining({ A: "Addresses", G: "Rack positions" }) as unknown,
      { A: "n-1, port 0", D: "data", E: "192.0.2.1 · 192.0.2.2", G: "n-1", I: "N1" },
      { A: "n-2, port 0", D: "data", E: "192.0.2.3 · 192.0.2.4", G: "n-2", I: "N1" },
      { G: "Networks", I: "Prefix", K: "Gateway, VLAN" },
      { G: "data", I: "192.0.2.0/24", K: "gateway 192.0.2.254, VLAN 12" },
      { G: "Capacity by pool, here", I: "To hosts TB", J: "Usable TB", K: "Fill limit", L: "To fill TB", M: "Arrays" },
      { G: "Loose", M: "n-1" },
      {},
    ]);
  });

  test("names the controllers where there are more than two, and lists a port and network once", () => {
    const ports = ["A", "B", "C"].map((controller, index) => ({ array: "n-1", controller, port: "0", network: controller === "C" ? "DATA" : "data", address: `192.0.2.${index + 1}` }));
    const more = [...ports, { array: "n-1", controller: "B", port: "1", network: "unknown", address: "192.0.2.9" }];
    const arrays = [{ ...small.arrays![0]!, controllers: "A,B,C" }];
    const lines = summary(tabOf({ ...small, arrays, ports: more, steps: [step("T-01", "Start")] })).slice(5, 9);
    expect(lines.map(({ A, D, E }) => [A, D, E])).toEqual([
      ["Addresses", "Network", "Controller A · B · C"],
      ["n-1, port 0", "data", "192.0.2.1 · 192.0.2.2 · 192.0.2.3"],
      ["n-1, port 1", "unknown", "– · 192.0.2.9 · –"],
      ["North, shared address", "data", "192.0.2.250"],
    ]);
  });
});

describe("the cautions of a tab", () => {
  test("stand on top by their first sentence, each once, in two columns of about as many letters in the order of the work", () => {
    const cautions = ["Hot! Stay away.", "Heavy. Lift with two.", "Hot! Really.", "No end", "Version 1.5 burns. Wait."];
    const tab = tabOf({ ...small, steps: cautions.map((caution, index) => step(`T-${index}`, "Start", { caution })) });
    expect(summary(tab).slice(2, 4)).toEqual([
      { A: "Cautions, in the order of the work. Each stands in full at its step." },
      { A: "• Hot!\n• Heavy.\n• No end", H: "• Version 1.5 burns." },
    ]);
    expect(tab.rows[5]!.slice(0, shownColumns).every(({ style }) => style === "caution")).toBe(true);
  });

  test("run to the left where they cannot be parted evenly", () => {
    const tab = tabOf({ ...small, steps: ["One.", "Two.", "Three."].map((caution, index) => step(`T-${index}`, "Start", { caution })) });
    expect(summary(tab)[3]).toEqual({ A: "• One.\n• Two.", H: "• Three." });
  });
});

test("cells that run over several columns are merged, and their frames close", () => {
  const tab = tabOf(small);
  const merged = tab.merges!.filter(({ row }) => row >= 2 && row < 17).map(({ row, column, columns }) => [row, column, columns]);
  expect(merged).toEqual([
    [2, 0, 14], [3, 0, 14],
    [4, 7, 2], [4, 12, 2], [5, 7, 2], [5, 12, 2],
    ...[7, 8, 9].flatMap((row) => [[row, 0, 3], [row, 4, 2], [row, 6, 2], [row, 8, 2], [row, 11, 3]]),
    [10, 0, 3], [10, 4, 2], [10, 6, 2], [10, 8, 2], [10, 10, 4], [11, 6, 2], [11, 8, 2], [11, 10, 4],
    ...[12, 13, 14, 15, 16].flatMap((row) => [[row, 6, 2], [row, 12, 2]]),
  ]);
  expect(tab.merges!.every(({ rows }) => rows === 1)).toBe(true);
  const style = (row: number, ...columns: number[]) => columns.map((column) => tab.rows[row]![column]!.style);
  expect(style(4, 7, 8)).toEqual(["label", "label"]);
  expect(style(5, 2, 3, 12)).toEqual(["figureText", "figure", "figureText"]);
  expect(style(16, 6, 7, 8, 9)).toEqual(["fact", "fact", "factCount", "factCount"]);
});

test("what of a pool is to be filled is told to two decimals", () => {
  // Four data drives of 4 TB on each of two arrays are 32 TB; 80.5% of that are 25.76 TB.
  const lines = summary(tabOf({ ...small, pools: small.pools!.map((row) => ({ ...row, fillLimit: 0.805 })) }));
  expect(lines.find(({ G }) => G === "North")).toMatchObject({ K: "80.5%", L: 25.76 });
});

test("an array of two drive sets stands in both of their pools, with what each set holds", () => {
  // RAID 10 of 4 x 4 TB keeps 8; RAID 6 of 6 x 4 TB keeps 16, beside the 16 of the other array.
  const driveSets = [{ array: "n-1", set: "fast", drives: 4, driveSize: "4 TB", scheme: "RAID 10", pool: "Fast" }, { array: "n-1", set: "bulk", drives: 6, driveSize: "4 TB", scheme: "RAID 6" }];
  const lines = summary(tabOf({ ...small, driveSets, pools: [...small.pools!, { pool: "Fast" }] }));
  expect(lines.find(({ G }) => G === "North")).toMatchObject({ J: 32, M: "all of this tab" });
  expect(lines.find(({ G }) => G === "Fast")).toMatchObject({ I: 8, J: 8, M: "n-1" });
});

test("an array says the unit lowest down first, in a rack that counts from the top too", () => {
  // Two units from the bottom up: in a rack that counts from the top the one above 4 is 3.
  const lines = summary(tabOf({ ...small, racks: small.racks!.map((row) => ({ ...row, numberedFrom: "top" as const })) }));
  expect(lines.find(({ G }) => G === "n-1")).toMatchObject({ I: "N1, 4–3" });
});

test("a feed over its limit stands out", () => {
  const feeds = small.feeds!.map((row) => ({ ...row, breakerA: 2 }));
  const tab = tabOf({ ...small, feeds });
  const alarm = tab.rows.flat().filter(({ style }) => style === "alarm");
  expect(alarm.map(({ value }) => value)).toEqual([expect.stringMatching(/^163.*%: over$/), expect.stringMatching(/^163.*%: over$/)]);
});

test("no formula looks for a wildcard, which every spreadsheet program reads in its own way", () => {
  const formulas = tabOf(small).rows.flat().flatMap(({ formula }) => formula ?? []);
  const texts = formulas.flatMap((formula) => formula.match(/"[^"]*"/g) ?? []);
  expect([formulas.length > 100, texts.filter((text) => /[*?]/.test(text))]).toEqual([true, []]);
  expect(formulas.filter((formula) => /COUNTIF|SUMIF.*"/.test(formula))).toEqual([]);
});
