import { checkPlan } from "../../../../../src/planning/checks";
import { buildJob, jobsOf, readCommissioningPlan } from "../../../../../src/planning/commissioning/build";
import { at } from "../../../../../src/planning/commissioning/tab/tab-columns";
import type { Scalar } from "../../../../../src/sheet";
import { moment, planWorkbook, smallPlan, step } from "../../../../support/commissioning-plan";
import { tabSheet } from "../../../../support/tab-workbook";
import { storedSecret } from "../../../../../src/planning/checks/rules/secrets/stored-secret";
import { withCell, workbookOf } from "../../../../support/plain-workbook";
import { cells, found, sample, workbookWith } from "../../../../support/plan-rows";

test("finds what stands beside a prompt for a password, and never repeats it", () => {
  const rows = sample();
  rows.prompts[3]!.value = "sesame-4711";
  expect(cells(storedSecret, rows)).toEqual(["Prompts 8 Value"]);
  expect(found(storedSecret, rows).join()).not.toContain("sesame");
});

test.each([["Admin password"], ["Passphrase"], ["SNMP community"], ["Community string"], ["PIN"], ["API secret"], ["Key phrase"]])("finds it below the user's own header %s", (header) => {
  const workbook = withCell(withCell(workbookWith(sample()), "Sites", 3, 7, header), "Sites", 5, 7, "hunter2");
  const loose = { sheets: workbook.sheets.map((sheet) => (sheet.name === "Sites" ? { ...sheet, tables: [] } : sheet)) };
  expect(cells(storedSecret, loose)).toEqual([`Sites 6 ${header}`]);
});

test.each([
  ["a reference to the vault", "Password", "vault:thornmere/x"],
  ["nothing", "Password", null],
  ["a word that only begins alike", "Pinning", "yes"],
  ["the people who live there", "Community hall", "north door"],
])("takes %s", (_, header, value) => {
  const workbook = withCell(withCell(workbookWith(sample()), "Sites", 3, 7, header), "Sites", 5, 7, value);
  const loose = { sheets: workbook.sheets.map((sheet) => (sheet.name === "Sites" ? { ...sheet, tables: [] } : sheet)) };
  expect(cells(storedSecret, loose)).toEqual([]);
});

test("looks at other sheets: behind a label, and below a header", () => {
  const notes = workbookOf({
    Notes: [["Contact", "desk"], ["Password:", "hunter2"], [], ["Device", "User", "Password"], ["sw1", "admin", "letmein"], ["sw2", "admin", "vault:sw2"]],
  });
  expect(cells(storedSecret, notes)).toEqual(["Notes 2 User", "Notes 5 Password"]);
});

test("takes sentences that speak of secrets, and headers with nothing below", () => {
  const notes = workbookOf({ Notes: [["Every administrator secret is in the vault of the site.", "yes"], ["Account", "Password", "Owner"]] });
  expect(cells(storedSecret, notes)).toEqual([]);
});

test.each<[string, string, string, Scalar, boolean]>([
  ["a password", "Put the administrator password into the vault and write its entry.", "text", "hunter2", true],
  ["the entry in the vault", "Put the administrator password into the vault and write its entry.", "text", "vault:north/n-1", false],
  ["nothing", "Put the administrator password into the vault and write its entry.", "text", null, false],
  ["a tick", "Put the administrator password into the vault.", "tick", "Yes", false],
  ["the place of the vault's key", "Say where the spare key of the vault room hangs.", "text", "behind the desk", false],
  ["the name of a form", "Write which form says who may change the password.", "text", "form 7", false],
])("looks at what is typed on a commissioning tab: %s", (_, text, record, found, isSecret) => {
  const plan = planWorkbook({ ...smallPlan(), steps: [step("T-01", "Start", { do: text, record })] });
  const source = readCommissioningPlan(plan);
  const tab = tabSheet(buildJob(source, jobsOf(source)[0]!, () => "North hall", moment).tab, "North hall");
  const row = tab.values.findIndex((line) => line[at.stepId] === "T-01");
  const typed = withCell({ sheets: [...plan.sheets, tab] }, "North hall", row, at.found, found);
  expect(cells(storedSecret, typed)).toHaveLength(isSecret ? 1 : 0);
});

test("looks at the first row below a header, of a planning table and of another sheet, and says what to do", () => {
  const workbook = withCell(withCell(workbookWith(sample()), "Sites", 3, 7, "Password"), "Sites", 4, 7, "hunter2");
  const loose = { sheets: workbook.sheets.map((sheet) => (sheet.name === "Sites" ? { ...sheet, tables: [] } : sheet)) };
  expect(found(storedSecret, loose)).toEqual([
    "Sites 5 Password: This looks like a stored secret. Keep it in a vault and write vault: and where it lies there; then change it, for it was seen.",
  ]);
  const notes = workbookOf({ Notes: [["Device", "User", "Password"], ["sw1", "admin", "letmein"], ["sw2", "admin", "secret99"], [], ["sw3", "admin", "note"]] });
  expect(checkPlan(notes, [storedSecret]).map(({ row, column }) => [row, column])).toEqual([[1, 2], [2, 2]]);
});

test.each([
  ["a label of 40 characters", [`Password ${"n".repeat(31)}`, "x"], 1],
  ["a longer one, which is no label", [`Password ${"n".repeat(32)}`, "x"], 0],
  ["a label of four words", ["Password of the array", "x"], 1],
  ["five words, which are no label", ["Password of the new array", "x"], 0],
  ["a label between two other cells, which is a header", ["User", "Password", "Owner"], 0],
  ["a label behind one other cell", ["User", "Password"], 0],
])("takes for a label on another sheet: %s", (_, line, count) => {
  expect(checkPlan(workbookOf({ Notes: [line] }), [storedSecret])).toHaveLength(count);
});
