import { buildJob, jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { rowResultOf, rowsOfSteps } from "../../../../src/planning/commissioning/record";
import { checkTabSeal, readPlannedTab, readTab, sealBlocks } from "../../../../src/planning/commissioning/tab";
import { slotColumns } from "../../../../src/planning/commissioning/tab/tab-columns";
import { canonicalText } from "../../../../src/planning/text";
import type { TableRows } from "../../../../src/planning/plan/schema";
import type { Scalar } from "../../../../src/sheet";
import { openDocumentPort } from "../../../../src/workbook/document/document-port";
import { emptyDocument } from "../../../../src/workbook/document/workbook-document";
import { readSnapshot } from "../../../../src/workbook/xlsx/read-snapshot";
import { writeFile } from "../../../../src/workbook/xlsx/write-workbook";
import { gridPlan, moment, planWorkbook } from "../../../support/commissioning-plan";
import { builtTab, columnsOf, computed, withBlocks, withCells, type Written } from "../../../support/filled-tab";
import { problemOf } from "../../../support/sentence";
import { tabSheet } from "../../../support/tab-workbook";

const plan = gridPlan();

/** Builds a plan's tab, types into every record of it, and builds it again. */
function builtTwice(rows: TableRows) {
  const sheets = planWorkbook(rows).sheets;
  const build = (tabs: Parameters<typeof readCommissioningPlan>[0]["sheets"]) => {
    const source = readCommissioningPlan({ sheets: [...sheets, ...tabs] });
    return buildJob(source, jobsOf(source)[0]!, () => "new", moment);
  };
  const first = build([]);
  const sheet = computed(tabSheet(first.tab, first.name));
  const tab = readTab(sheet)!;
  const { columns } = tab.places;
  const filled = computed(withCells(sheet, ...tab.steps.map(({ row, slot }, index): Written => [row, slot === null ? columns.found! : columns[slotColumns[slot.place]!.found]!, `m${index}`])));
  return { first, tab, again: build([filled]) };
}

// What "constructor" or "__proto__" names in a host, marks of formulas, text and templates, letters in two spellings, and what cannot be seen.
const odd = [
  "__proto__", "constructor", "toString", "a/b", "a\nb", "a\u00a0b", "\uff14\uff18", "a\u200bb", "\u202eabc", "\ud800", "=1+1", "+1", "@x", "{{Array}}", "TRUE", "1e5",
  "a|b", "\"q\"", "e\u0301", "x".repeat(300),
];
const places: readonly (readonly [what: string, (name: string) => TableRows])[] = [
  ["the id of a job", (id) => ({ ...plan, jobs: plan.jobs!.map((row) => ({ ...row, id })) })],
  ["the id of an array", (id) => ({ ...plan, arrays: plan.arrays!.map((row, index) => (index === 0 ? { ...row, id } : row)) })],
  ["the name of an array", (array) => ({
    ...plan,
    arrays: plan.arrays!.map((row, index) => (index === 0 ? { ...row, array } : row)),
    ports: plan.ports!.map((row) => (row.array === "n-1" ? { ...row, array } : row)),
  })],
  ["the id of a step in a grid", (stepId) => ({ ...plan, steps: plan.steps!.map((row) => (row.stepId === "T-21" ? { ...row, stepId } : row)) })],
  ["a port", (port) => ({ ...plan, ports: plan.ports!.map((row, index) => (index === 0 ? { ...row, port } : row)) })],
  ["a section that is a grid", (section) => ({
    ...plan,
    procedures: plan.procedures!.map((row) => (row.section === "Ports" ? { ...row, section } : row)),
    steps: plan.steps!.map((row) => (row.section === "Ports" ? { ...row, section } : row)),
  })],
];

describe.each(places)("records keep their step though %s is", (_, planWith) => {
  test.each(odd.map((name) => [JSON.stringify(name).slice(0, 24), name]))("%s", (_shown, name) => {
    const { first, tab, again } = builtTwice(planWith(name));
    expect([tab.faults, tab.elsewhere]).toEqual([[], []]);
    expect(new Set(tab.steps.map(({ key }) => key)).size).toBe(first.steps);
    expect(again.counts).toEqual({ carried: first.steps, orphaned: 0, again: 0 });
  });
});

test.each(["#12", "kept:1", "slots:[]"])("an id of a job that a tab would take for a mark of its own, %j, is refused", (id) => {
  expect(problemOf(() => builtTwice({ ...plan, jobs: plan.jobs!.map((row) => ({ ...row, id })) })).sentence).toBe(
    `Job "North hall" has the id "${id}", which begins as the marks of a tab do: #, kept: or slots:. Write another one.`,
  );
});

test("a step whose id holds a slash is named by Result of its row as the formula names it", () => {
  const { tab } = builtTwice({ ...plan, steps: plan.steps!.map((row) => (row.stepId === "T-20" ? { ...row, stepId: "T/20" } : row)) });
  const records = tab.steps.filter(({ slot }) => slot?.place === 0).slice(0, 1).concat(tab.steps.filter(({ slot }) => slot?.place === 1).slice(0, 1));
  const [row] = rowsOfSteps(records.map((record) => ({ ...record, result: "Differs" as const })));
  expect(rowResultOf(row!)).toBe("Differs: T/20");
  expect(rowResultOf({ ...row!, records: row!.records.map((record) => ({ ...record, key: "J0001/T-20/x", stepId: "typed over" })) })).toBe("Differs: T-20");
});

const oddEntries: readonly Scalar[] = [
  ...odd, "\u00a0", "\u200b", "a\r\nb", "a\rb", "-1", "'x", "''x", "#N/A", "#REF!", "false", "1E+300", "\ufeffx", "a\tb", "\u0007bell", "\u0000nul",
  "_x000D_", "_xD800_", "&amp;<b>", "]]>", "\ufffe", "00012",
  "1/4", "2026-05-31", " lead", "trail ", "\ud83d\udcbe", "a\u2028b", "slots:[]", "#seal", "x".repeat(32_767), -0, 1e308, -1e308, 5e-324, 0.1 + 0.2, 123456789012345680, -5, 59.5, 60, 0.5, true, false,
];

describe("whatever is typed", () => {
  const empty = builtTab(plan);
  const tab = readTab(empty)!;
  const { found, note, by } = columnsOf(tab);
  const slot = tab.steps.find((step) => step.slot !== null)!;
  const list = tab.steps.find((step) => step.slot === null)!;
  const cells = [[list.row, found!], [list.row, by!], [slot.row, found!], [slot.row, note!], [tab.places.snagsRow + 2, columnsOf(tab).step!]] as const;
  const typed = (value: Scalar) => computed(withCells(empty, ...cells.map(([row, column]): Written => [row, column, value])));

  test.each(oddEntries.map((value) => [JSON.stringify(value).slice(0, 24), value]))("stands in the next tab in the same places: %s", (_, value) => {
    const source = readCommissioningPlan({ sheets: [...planWorkbook(plan).sheets, typed(value)] });
    const next = readPlannedTab(buildJob(source, jobsOf(source)[0]!, () => "new", moment).tab);
    const same = canonicalText(value);
    const of = (key: string) => next.steps.find((step) => step.key === key)!.typed;
    const waived = next.steps.filter(({ key }) => key === slot.key);
    expect([of(list.key).found, of(list.key).by, waived[0]!.typed.found, waived[0]!.typed.note].map((one) => canonicalText(one))).toEqual([same, same, same, same]);
    expect(next.snags.map((snag) => canonicalText(snag.typed.foundWrong))).toEqual(same === "" ? [] : [same]);
    expect(next.orphans).toEqual([]);
  });

  // Each pair looks alike, or would be one to a program that reads it its own way.
  test.each<[Scalar, Scalar]>([
    ["48", 48], ["\uff14\uff18", "48"], ["a b", "a\u00a0b"], ["ab", "a\u200bb"], ["abc", "\u202eabc"], ["TRUE", true], [0, false], ["#N/A", "#N/A "], ["1e5", 100_000], ["x\ny", "x y"],
  ])("under a seal %j is told from %j, but for blanks at its ends", (value, other) => {
    const before = typed(value);
    const sealed = computed(withBlocks(before, sealBlocks(before, readTab(before)!, { by: "AB", date: "2026-03-09" })));
    expect(checkTabSeal(sealed, readTab(sealed)!)!.holds).toBe(true);
    const after = computed(withCells(sealed, [list.row, found!, other]));
    expect(checkTabSeal(after, readTab(after)!)!.holds).toBe(canonicalText(value) === canonicalText(other) && typeof value === typeof other);
  });

  test("is the same text once it was written into a file and read back", async () => {
    const { port, finish } = openDocumentPort(emptyDocument);
    await port.apply([{ kind: "add-sheet", plan: { name: "Odd", rows: oddEntries.map((value) => [{ value, style: "text" }, { value }]), styles: { text: { format: "@" } }, columnWidths: [] } }]);
    const { values } = readSnapshot(writeFile(null, emptyDocument, finish())).sheets[0]!;
    expect(values.map((line) => line.map((value) => canonicalText(value)))).toEqual(oddEntries.map((value) => [canonicalText(value), canonicalText(value)]));
  });
});
