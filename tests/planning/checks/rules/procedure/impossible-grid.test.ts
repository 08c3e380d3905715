import { impossibleGrid } from "../../../../../src/planning/checks/rules/procedure/impossible-grid";
import { cells, found, sample, type EditableRows } from "../../../../support/plan-rows";

/** The sample with one section of the ports of an array, shown as a grid. */
function withGrid(...steps: readonly Readonly<Record<string, string>>[]): EditableRows {
  const rows = sample();
  const own = { procedure: "Own", section: "Ports", do: "Read it back.", record: "text" };
  rows.procedures.unshift({ procedure: "Own", section: "Ports", forEach: "port", shownAs: "grid" });
  rows.steps.unshift(...steps.map((step, index) => ({ ...own, stepId: `OWN-${index + 1}`, ...step })));
  return rows;
}

test("lets four steps stand side by side, and says of the fifth that it does not fit", () => {
  expect(cells(impossibleGrid, withGrid({}, {}, {}, {}))).toEqual([]);
  expect(found(impossibleGrid, withGrid({}, {}, {}, {}, {}, {}))).toEqual([
    "Steps 9 Section: Step OWN-5 is the fifth of its section, which is shown as a grid of at most 4. Move it to another section.",
  ]);
});

test("finds a caution, a text that differs by subject, and a size", () => {
  const broken = withGrid({ caution: "It cuts." }, { do: "Read {{Address}} back." }, { makersGuide: "See {{Model}}." }, { record: "size" });
  expect(cells(impossibleGrid, broken)).toEqual(["Steps 5 Caution", "Steps 6 Do", "Steps 7 From the maker's guide", "Steps 8 Record"]);
});

test("finds a hold point, which stands alone and is signed alone", () => {
  expect(found(impossibleGrid, withGrid({}, { holdPoint: "yes" }, { holdPoint: "no" }))).toEqual([
    "Steps 6 Hold point: Step OWN-2 is a hold point, which wants a row of its own. Show its section as a list.",
  ]);
});

test("says nothing of a list, and takes the built-in procedures as they are", () => {
  const rows = withGrid({ caution: "It cuts." });
  rows.procedures[0]!.shownAs = "list";
  expect(cells(impossibleGrid, rows)).toEqual([]);
  expect(cells(impossibleGrid, sample())).toEqual([]);
});
