import { planDesign } from "../../../src/planning/options";
import { PlanModel } from "../../../src/planning/plan/model";
import { builtInProcedures } from "../../../src/planning/commissioning/procedure";
import type { TableRows } from "../../../src/planning/plan/schema";
import { planSetUp } from "../../../src/planning/plan/set-up";
import type { WorkbookSnapshot } from "../../../src/sheet";
import { filledOptions, threeDesigns } from "../../support/options-sheet";
import { carryOut } from "../../support/plan-changes";
import { snapshotOf } from "../../support/plain-workbook";

/** A plan with the tables of set-up and Models, and the sheet of options. */
function workbookWith(rows: TableRows = {}): WorkbookSnapshot {
  const { sheets } = snapshotOf(planSetUp({ sheets: [] }, { ...builtInProcedures, models: [{ model: "Elm 24", units: 4, watts: 480 }], ...rows }));
  return { sheets: [...sheets, ...filledOptions(threeDesigns).sheets.slice(-1)] };
}

const planned = (name: string, site: string, workbook = workbookWith()): PlanModel => new PlanModel(carryOut(workbook, planDesign(workbook, name, site)));

describe("one design as rows of the plan", () => {
  test("brings the site, a pool with the scheme across its arrays, and the arrays with their drives", () => {
    const model = planned("Two arrays, mirrored", "Bindery");
    expect(model.rows("sites").map(({ site }) => site)).toEqual(["Bindery"]);
    expect(model.rows("pools")).toMatchObject([{ pool: "Bindery Two arrays, mirrored", fillLimit: 0.8, acrossArrays: "2 copies" }]);
    expect(model.rows("arrays").map(({ array, site, drives, driveSize, scheme, spares }) => [array, site, drives, driveSize, scheme?.name, spares])).toEqual([
      ["Bindery Two arrays mirrored 1", "Bindery", 24, 12_000_000_000_000n, "RAID 60 8+2", 2],
      ["Bindery Two arrays mirrored 2", "Bindery", 24, 12_000_000_000_000n, "RAID 60 8+2", 2],
    ]);
  });

  test("gives hosts in the plan what the sheet of options said, 192 TB", () => {
    const model = planned("Two arrays, mirrored", "Bindery");
    expect(model.capacity.toHosts(model.capacity.pools()[0]!)).toBe(192_000_000_000_000n);
  });

  test("adds a model that the plan lacks, and leaves one that it has, with what is otherwise on the arrays themselves", () => {
    const added = planned("Single parity", "Bindery");
    expect(added.rows("models").map(({ model, bays, units, watts }) => [model, bays, units, watts])).toEqual([["Elm 24", null, 4, 480], ["Oak 12", 12, 2, 300]]);
    const kept = planned("One large array", "Bindery");
    expect(kept.rows("models")).toHaveLength(1);
    expect(kept.rows("arrays")).toMatchObject([{ units: 4, watts: 450 }]);
  });

  test("leaves a site that is there as it is", () => {
    const workbook = workbookWith({ sites: [{ site: "Bindery", room: "B.2" }] });
    expect(planned("Single parity", "bindery", workbook).rows("sites")).toMatchObject([{ site: "Bindery", room: "B.2" }]);
  });

  test.each([
    ["Fourth", "Bindery", '"Fourth" is no design of the sheet of options. Choose One large array or Two arrays, mirrored or Single parity.'],
    ["Single parity", "  ", "Site is empty. Write the site to which the arrays go: one of the plan, or a new one."],
  ])("%s at %j is refused with a sentence", (name, site, sentence) => {
    expect(() => planDesign(workbookWith(), name, site)).toThrow(sentence);
  });

  test("is refused a second time: the names stand in the plan", () => {
    const workbook = workbookWith();
    const once = carryOut(workbook, planDesign(workbook, "Single parity", "Bindery"));
    expect(() => planDesign(once, "Single parity", "Bindery")).toThrow('"Bindery Single parity" stands in Pools already. Write another name, or add to its rows by hand.');
  });

  test("is refused where the workbook has no sheet of options", () => {
    const { sheets } = workbookWith();
    expect(() => planDesign({ sheets: sheets.slice(0, -1) }, "Single parity", "Bindery")).toThrow("The workbook has no sheet of options. Choose Options sheet first, and fill its yellow cells.");
  });
});
