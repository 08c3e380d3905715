import { turnBack, turnIntoValues, type FormulaScope, type TurnReport } from "../../actions/values-and-back";
import { makeButton } from "../elements/button";
import { countOf } from "../elements/count-of";
import { make } from "../elements/make";
import type { Message } from "../elements/work";
import type { PaneContext } from "./view";

const scopes = ["the whole workbook", "the sheet in front", "the selected cells"] as const;

/** Makes the dialog that asks which of our formulas are to become values, and turns them. */
export function makeTurnDialog(pane: PaneContext): HTMLDialogElement {
  const select = make("select", { id: "bay-turn-scope" }, scopes.map((scope) => make("option", {}, scope)));
  const turn = () => {
    dialog.close();
    return pane.status.run("Turn our formulas into values", async () => {
      const report = await turnIntoValues(pane.port, await scopeOf(pane, select.selectedIndex), pane.host.version);
      return tell(report, "turned into values. The sheet BAY register keeps the formulas; the menu turns them back.", "No formula of ours stands there; nothing was changed.");
    });
  };
  const dialog: HTMLDialogElement = make(
    "dialog",
    { "aria-labelledby": "bay-turn" },
    make("h2", { id: "bay-turn" }, "Turn our formulas into values"),
    make("p", {}, "For people who do not have the add-in: they see the figures instead of #NAME?. The formulas are kept in a sheet of their own, from which they can be turned back."),
    make("p", { class: "bay-row" }, make("label", { for: "bay-turn-scope" }, "In"), select),
    make("div", { class: "bay-row" }, makeButton("Turn into values", turn, { appearance: "primary" }), makeButton("Cancel", () => dialog.close())),
  );
  return dialog;
}

/** Turns the values of the register back into our formulas. */
export function turnFormulasBack({ port, status }: PaneContext): Promise<void> {
  return status.run("Turn values back", async () => tell(await turnBack(port), "turned back.", "No formula of ours was turned into a value here; nothing was changed."));
}

async function scopeOf({ port }: PaneContext, index: number): Promise<FormulaScope> {
  if (index === 0) return "workbook";
  const { sheet, area } = await port.selection();
  return index === 1 ? { sheet } : { sheet, area };
}

function tell({ turned, left }: TurnReport, done: string, nothing: string): Message {
  if (turned === 0 && left.length === 0) return { sentence: nothing };
  const sentence = `${countOf(turned, "formula")} ${done}`;
  const [first] = left;
  if (first === undefined) return { sentence };
  const [asItIs, others] = left.length === 1 ? ["it is", ""] : ["they are", ", and others"];
  return { sentence: `${sentence} ${countOf(left.length, "formula")} left as ${asItIs}: ${first.sheet} ${first.cell}, ${first.reason}${others}.` };
}
