import { momentOf } from "../../actions/moment";
import { previewProcedure } from "../../actions/preview-procedure";
import { cellArea } from "../../sheet";
import { makeButton } from "../elements/button";
import { fill, make } from "../elements/make";
import type { PaneContext } from "./view";

/** The part of the Commission view that shows whoever edits a procedure what its rows become. */
export interface PreviewGroup {
  readonly element: HTMLElement;
  /** Offers the procedures of the plan; what was chosen stays chosen. */
  offer(procedures: readonly string[]): void;
}

/** Makes the part of the Commission view that previews a procedure for one array. */
export function makePreviewGroup({ port, host, status }: PaneContext): PreviewGroup {
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
  );
  let offered = "";
  return {
    element,
    offer: (procedures) => {
      element.hidden = procedures.length === 0;
      if (procedures.join("\n") === offered) return;
      offered = procedures.join("\n");
      const chosen = choice.value;
      fill(choice, procedures.map((name) => make("option", { value: name }, name)));
      if (procedures.includes(chosen)) choice.value = chosen;
    },
  };
}
