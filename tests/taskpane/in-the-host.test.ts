import { documentName } from "../../src/taskpane/document-name";
import { themeOf } from "../../src/taskpane/office-theme";

describe("the name of the workbook", () => {
  test.each([
    ["https://files.example.com/plans/Thornmere%20plan.xlsx", "Thornmere plan.xlsx"],
    ["https://files.example.com/plans/a.xlsx?web=1", "a.xlsx"],
    ["https://files.example.com/plans/100%.xlsx", "100%.xlsx"],
    ["C:\\plans\\50%25 full.xlsx", "50%25 full.xlsx"],
    ["Book1", "Book1"],
    ["", ""],
    [undefined, ""],
  ])("of %s is %s", (address, name) => {
    expect(documentName(address)).toBe(name);
  });
});

describe("the theme", () => {
  test.each([
    ["#FFFFFF", false, "light"],
    ["#f3f2f1", false, "light"],
    ["#262626", false, "dark"],
    ["0a0a0a", false, "dark"],
    [undefined, false, "light"],
    ["papaya", false, "light"],
    ["#262626", true, "contrast"],
  ] as const)("of a background %s, high contrast %s, is %s", (background, contrast, theme) => {
    expect(themeOf(() => background, contrast)).toBe(theme);
  });

  test("is light where the host throws when it is asked", () => {
    const throws = () => { throw new Error("There is no such call in this host"); };
    expect([themeOf(throws, false), themeOf(throws, true)]).toEqual(["light", "contrast"]);
  });
});
