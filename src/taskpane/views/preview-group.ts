import { momentOf } from "../../actions/moment";
import { previewProcedure } from "../../actions/preview-procedure";
import { addProcedures, describeOlder, procedureEditions } from "../../planning/commissioning/procedure";
import { PlanModel } from "../../planning/plan/model";
import { cellArea } from "../../sheet";
import { makeButton } from "../elements/button";
import { fill, make } from "../elements/make";
import { propose } from "../elements/preview";
import type { PaneContext } from "./view";

/** The part of the Commission view that shows whoever edits a procedure what its rows become, and what the built-in ones of this edition would bring. */
export interface PreviewGroup {
  readonly element: HTMLElement;
  /** Offers the procedures of the plan; what was chosen stays chosen. */
  offer(model: PlanModel): void;
}

/** Makes the part of the Commission view that previews a procedure for one array. */
export function makePreviewGroup(pane: PaneContext): PreviewGroup {
  const { port, host, status } = pane;
  const [place, older] = [make("div"), make("p", { class: "small soft" })];
  const add = (): Promise<void> =>
    propose(pane, place, {
      title: "Add procedures",
      planner: () => (workbook) => addProcedures(new PlanModel(workbook), workbook),
      nothing: "Every built-in procedure is here. What you changed stays as it is.",
    });
  const choice = make("select", { "aria-label": "Procedure to preview" });
  const preview = (): Promise<void> =>
    status.run("Preview a procedure", async () => {
      const sheet = await previewProcedure(port, choice.value, momentOf(host.now(), "").madeAt);
      await port.apply([{ kind: "select", sheet, area: cellArea({ row: 0, column: 0 }) }]);
      return { sentence: `Sheet ${sheet} shows every step of ${choice.value} for one array. It is no tab: nothing is recorded in it.` };
    });
  const element = make(
    "section",
    { class: "bay-group", hidden: true },
    make("h2", {}, "Procedures"),
    make("p", {}, "Have you changed rows of Procedures, Steps or Prompts? See what they become, filled for one array."),
    make("div", { class: "bay-row" }, choice, makeButton("Preview", preview)),
    older,
    makeButton("Add built-in procedures …", add, { size: "small" }),
    place,
  );
  let offered = "";
  return {
    element,
    offer: (model) => {
      const procedures = [...new Set(model.rows("procedures").map(({ procedure }) => procedure))].filter((name) => name !== "");
      element.hidden = procedures.length === 0;
      older.textContent = describeOlder(procedureEditions(model));
      if (procedures.join("\n") === offered) return;
      offered = procedures.join("\n");
      const chosen = choice.value;
      fill(choice, procedures.map((name) => make("option", { value: name }, name)));
      if (procedures.includes(chosen)) choice.value = chosen;
    },
  };
}
