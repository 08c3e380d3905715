import { comparePlan, type PlanComparison, type TouchedTab } from "../../actions/compare-plan";
import { readShown } from "../../actions/read-plan";
import type { PlanDifferences, RowDifference } from "../../planning/plan/compare";
import { makeButton } from "../elements/button";
import { countOf } from "../elements/count-of";
import { goTo } from "../elements/go-to";
import { fill, make } from "../elements/make";
import { showPanel } from "../elements/show-panel";
import type { PaneContext } from "./view";

/** How many rows of one table are listed. */
const mostListed = 100;

/** Makes the part of the Plan view that says what is different in this plan against a saved one, and which open tabs that touches. */
export function makeCompareGroup(pane: PaneContext): HTMLElement {
  const place = make("div");

  async function choose(): Promise<void> {
    const file = await pane.host.chooseFile([".xlsx"]);
    if (file === null) return;
    fill(place);
    await pane.status.run("Compare the plans", async () => {
      const comparison = comparePlan(await pane.host.readSnapshot(file.bytes), await readShown(pane.port));
      if (comparison.tables.length + comparison.tabs.length === 0) return { sentence: `This plan says what ${file.name} says.` };
      const close = make("div", { class: "bay-row" }, makeButton("Close the comparison", () => fill(place)));
      showPanel(place, `What is different from ${file.name}`, describe(comparison), close);
      return null;
    });
  }

  function describe({ tables, tabs }: PlanComparison): HTMLElement {
    return make("div", {}, tabs.length > 0 && describeTabs(tabs), tables.map(describeTable));
  }

  function describeTable({ table, rows }: PlanDifferences): HTMLElement {
    const left = rows.length - mostListed;
    return make(
      "section",
      {},
      make("h4", {}, `${table}: ${countOf(rows.length, "row")}`),
      make("ul", { class: "bay-list" }, rows.slice(0, mostListed).map((row) => make("li", {}, describeRow(row)))),
      left > 0 && make("p", { class: "soft small" }, `${countOf(left, "row")} more.`),
    );
  }

  function describeRow({ kind, row, at, cells }: RowDifference): HTMLElement {
    const what = make("span", {}, make("strong", {}, row), kind === "added" ? " is new" : kind === "gone" ? " is gone" : "");
    const open = () => at !== null && goTo(pane, "Go to the cell", at.sheet, { row: at.row, column: cells[0]?.column ?? 0 });
    const named = at === null ? what : make("button", { type: "button", class: "bay-plain", on: { click: open } }, what);
    return make("div", {}, named, cells.map(({ header, before, now }) => make("div", { class: "small" }, `${header}: ${shown(before)} → ${shown(now)}`)));
  }

  return make(
    "section",
    { class: "bay-group" },
    make("h2", {}, "An earlier plan"),
    make("p", {}, "Choose a saved file of this plan. You see row by row what is different now, and which open tabs would be built otherwise. Nothing is written."),
    makeButton("Compare with a saved plan …", choose),
    place,
  );
}

function describeTabs(tabs: readonly TouchedTab[]): HTMLElement {
  const told = ({ job, steps, because }: TouchedTab) => (steps === null ? `${job}: ${because}` : `${job}: ${countOf(steps, "step")} would be built otherwise.`);
  return make("section", {}, make("h4", {}, `Open tabs: ${tabs.length}`), make("ul", { class: "bay-list" }, tabs.map((tab) => make("li", {}, told(tab)))));
}

/** Shows what stands in a cell; nothing as a word. */
const shown = (text: string) => (text === "" ? "nothing" : text);
