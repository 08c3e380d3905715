import { tabStyles } from "../../../../src/planning/commissioning/tab/tab-styles";
import { lookFaults, lookOf } from "../../../support/sheet-look";

const looks = Object.fromEntries(Object.entries(tabStyles).map(([name, style]) => [name, lookOf(style)]));

describe("the look of a tab", () => {
  test("can be read: no text is too faint, but in the columns that nobody sees", () => {
    expect(lookFaults({ name: "Tab", rows: [], styles: tabStyles, columnWidths: [] })).toEqual(["hidden is faint", "hiddenText is faint"]);
  });

  test("sets cells in which people type apart, and lets them type there on a protected sheet", () => {
    expect([looks.typedText, looks.typedNumber, looks.typedDate]).toEqual([
      "11 pt on #fffdf2, wrapped, top, frame all #6f8a82, as @, typed into",
      "11 pt on #fffdf2, wrapped, left, top, frame all #6f8a82, typed into",
      "11 pt on #fffdf2, wrapped, left, top, frame all #6f8a82, as yyyy-mm-dd, typed into",
    ]);
    const typedInto = Object.entries(looks).filter(([, look]) => look.endsWith("typed into")).map(([name]) => name);
    expect(typedInto).toEqual(["typedText", "typedNumber", "typedDate"]);
  });

  test("writes what the plan says as text, so that no serial number becomes a figure", () => {
    const asText = Object.entries(looks).filter(([, look]) => look.includes("as @")).map(([name]) => name);
    expect(asText).toEqual(["gridHead", "fact", "alarm", "stepId", "holdPointId", "step", "stepCaution", "text", "expected", "unitFixed", "before", "typedText", "hiddenText"]);
  });

  test("gives every kind of cell its own", () => {
    expect(looks).toMatchObject({
      title: "bold 18 pt #17352d, middle",
      progress: "bold 11 pt #17352d, wrapped, right, middle",
      header: "bold 11 pt #ffffff on #2f5d50, wrapped, middle, frame all #2f5d50",
      facts: "11 pt, wrapped, middle",
      cautionHead: "bold 11 pt #4a2f00 on #fde9c4, middle, frame all #c98a1b",
      caution: "11 pt #4a2f00 on #fde9c4, wrapped, top, frame all #c98a1b",
      label: "bold 11 pt #3d4f49 on #e6eeeb, wrapped, middle, frame all #b9c4c0",
      figure: "bold 12 pt, center, middle, frame all #b9c4c0",
      figureText: "bold 11 pt, wrapped, middle, frame all #b9c4c0",
      fact: "11 pt, wrapped, middle, frame all #b9c4c0, as @",
      factCount: "11 pt, center, middle, frame all #b9c4c0, as #,##0",
      factNumber: "11 pt, center, middle, frame all #b9c4c0, as #,##0.0#",
      alarm: "bold 11 pt #8c1c13 on #fbdcd8, middle, frame all #b9c4c0, as @",
      visit: "bold 14 pt #ffffff on #2f5d50, middle",
      holdPoint: "bold 11 pt #ffffff on #17352d, center, top, frame all #b9c4c0",
      holdPointId: "bold 11 pt #ffffff on #17352d, top, frame all #b9c4c0, as @",
      section: "bold 12 pt #17352d on #cfe0da, middle",
      note: "italic 11 pt #3d4f49, middle",
      no: "11 pt #3d4f49, center, top, frame all #b9c4c0",
      stepId: "11 pt #3d4f49, top, frame all #b9c4c0, as @",
      step: "11 pt, wrapped, top, frame all #b9c4c0, as @",
      unitFixed: "11 pt, top, frame all #b9c4c0, as @",
      stepCaution: "11 pt on #fde9c4, wrapped, top, frame all #b9c4c0, as @",
      text: "11 pt, wrapped, top, frame all #b9c4c0, as @",
      expected: "bold 11 pt, wrapped, top, frame all #b9c4c0, as @",
      result: "bold 11 pt, wrapped, top, frame all #b9c4c0",
      before: "italic 11 pt, wrapped, top, frame all #b9c4c0, as @",
      notAsked: "11 pt on #e9ecea, top, frame all #b9c4c0",
    });
  });

  test("shows each result in a colour of its own, and what is missing in amber", () => {
    expect([looks.isExpected, looks.isDiffering, looks.isWaiting, looks.isSetAside, looks.isMissing]).toEqual([
      "bold #14532d on #d3efdc", "bold #8c1c13 on #fbdcd8", "bold #5f3d00 on #fde9c4", "bold #41474b on #e1e4e6", "on #f9cf86",
    ]);
  });
});
