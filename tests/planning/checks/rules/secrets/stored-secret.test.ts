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
