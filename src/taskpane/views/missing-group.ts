import { missingValues, type MissingColumn } from "../../planning/plan/guided";
import type { PlanCell, PlanModel } from "../../planning/plan/model";
import { andMore } from "../../planning/text";
import { countOf } from "../elements/count-of";
import { goTo } from "../elements/go-to";
import { fill, make } from "../elements/make";
import type { PaneContext } from "./view";

/** The part of the Plan view that lists what a plan does not say yet. */
export interface MissingGroup {
  readonly element: HTMLElement;
  readonly show: (model: PlanModel) => void;
}

/** Makes the list of what is still missing, table by table, and of what is assumed; each line leads to its cell. */
export function makeMissingGroup(pane: PaneContext): MissingGroup {
  const element = make("section", { class: "bay-group", hidden: true });

  function show(model: PlanModel): void {
    const [missing, assumed] = [missingValues(model), model.assumptions.open()];
    element.hidden = missing.length + assumed.length === 0;
    const open = ({ table: key, row, column }: PlanCell) => {
      const table = model.table(key);
      return table && goTo(pane, "Go to the cell", table.sheet, { row, column: table.columns[column] ?? table.firstColumn });
    };
    const line = (text: string, cell: PlanCell) => make("li", {}, make("button", { type: "button", class: "bay-plain", on: { click: () => open(cell) } }, text));
    const tables = [...new Set(missing.map(({ table }) => table))];
    fill(
      element,
      make("h2", {}, "Still missing"),
      tables.map((table) => {
        const columns = missing.filter((one) => one.table === table);
        const summary = make("summary", {}, `${table}: ${columns.map(({ header }) => header).join(", ")}`);
        return make("details", {}, summary, make("ul", { class: "bay-list" }, columns.map((one) => line(told(one), one.first))));
      }),
      assumed.length > 0 &&
        make(
          "details",
          {},
          make("summary", {}, `Assumed: ${countOf(assumed.length, "value")}`),
          make("ul", { class: "bay-list" }, assumed.map(({ by, cell, header }) => line(`${header} of ${by.named}: ${by.value}`, cell))),
        ),
    );
  }

  return { element, show };
}

function told({ header, rows: [first = "", ...others] }: MissingColumn): string {
  return `${header} of ${andMore(first, others.length)}`;
}
