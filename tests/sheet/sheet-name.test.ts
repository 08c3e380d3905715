import { foldSheetName, longestSheetName, quoteSheetName, sameSheetName, sheetNameFault } from "../../src/sheet";

test.each(["Sites", "Cold Store installation", "a", "It's here", "n".repeat(longestSheetName), "History of racks"])("%j can be the name of a sheet", (name) => {
  expect(sheetNameFault(name)).toBeNull();
});

// The rules are those that the spreadsheet host publishes for renaming a worksheet.
test.each([
  ["", "is blank"],
  ["  ", "is blank"],
  ["n".repeat(32), "has 32 characters; 31 is the most"],
  ["Ports/Racks", "holds the character /"],
  ["[Ports]", "holds the character ["],
  ["'Ports", "begins or ends with an apostrophe"],
  ["North\nhall", "holds a line break or another character that cannot be seen"],
  ["North\u000bhall", "holds a line break or another character that cannot be seen"],
  ["North \ud83d", "holds a line break or another character that cannot be seen"],
  ["hiStory", "is kept by the spreadsheet program for itself"],
])("%j cannot", (name, fault) => {
  expect(sheetNameFault(name)).toBe(fault);
});

test("case does not tell two sheets apart, blanks do", () => {
  expect(sameSheetName("Ports", "PORTS")).toBe(true);
  expect(sameSheetName("Ports", "Ports ")).toBe(false);
  expect(foldSheetName("Größe A")).toBe(foldSheetName("GRÖßE a"));
});

test.each([["Sites", "Sites"], ["rack_1", "'rack_1'"], ["Cold Store", "'Cold Store'"], ["It's here", "'It''s here'"]])("%s stands in a formula as %s", (name, quoted) => {
  expect(quoteSheetName(name)).toBe(quoted);
});
