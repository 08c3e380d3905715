import { giveIds } from "../../actions/give-ids";
import { addTablesOfSite } from "../../actions/plan-site";
import { readPlanValues } from "../../actions/read-plan";
import { planSite, sections, siteRows, type Answers, type Question } from "../../planning/plan/guided";
import { PlanModel } from "../../planning/plan/model";
import { Problem } from "../../planning/text";
import { cellArea, type WorkbookSnapshot } from "../../sheet";
import { makeButton } from "../elements/button";
import { fill, make } from "../elements/make";
import { propose } from "../elements/preview";
import { showPanel } from "../elements/show-panel";
import { makeTextInput } from "../elements/text-input";
import type { PaneContext } from "./view";

/** A question on the page, and what is typed in answer. */
interface Field {
  readonly element: HTMLElement;
  readonly input: HTMLElement & { value: string };
  readonly label: string;
}

/** Makes the part of the Plan view that asks for a new site and plans the rows of all that stands there; `next` is what one looks at once they are written. */
export function makeSiteGroup(pane: PaneContext, refresh: () => Promise<void>, next: HTMLElement): HTMLElement {
  const [place, preview] = [make("div"), make("div")];
  const close = () => {
    fill(place);
    fill(preview);
  };

  /** Goes to the row of the site that was written last, and to what is still missing. */
  async function showSite(): Promise<void> {
    const model = new PlanModel(await readPlanValues(pane.port));
    const [table, row] = [model.table("sites"), model.rows("sites").at(-1)];
    if (table !== null && row !== undefined) await pane.port.apply([{ kind: "select", sheet: table.sheet, area: cellArea({ row: row.row, column: table.firstColumn }) }]);
    next.scrollIntoView();
  }

  const proposal = {
    title: "Plan the site",
    read: readPlanValues,
    nothing: "There is nothing to write.",
    written: async () => {
      close();
      await giveIds(pane.port);
      await refresh();
      await showSite();
    },
  };

  function ask(): void {
    const fields = new Map<string, Field>();
    const parts = Object.entries<Readonly<Record<string, Question>>>(sections).map(([title, questions], index) => {
      const asked = Object.entries(questions).map(([key, question]) => {
        const field = makeField(question);
        fields.set(key, field);
        return field.element;
      });
      return make("details", { open: index === 0 }, make("summary", {}, `${title}: ${asked.length} questions`), asked);
    });
    const answers = (): Answers => Object.fromEntries([...fields].map(([key, { input }]) => [key, input.value]));
    const prepare = async (given: Answers) => {
      mark(fields, null);
      try {
        // Before any table is added: what cannot be read changes nothing.
        siteRows(new PlanModel(await readPlanValues(pane.port)), given);
      } catch (thrown) {
        if (thrown instanceof Problem) mark(fields, thrown.argument);
        throw thrown;
      }
      await addTablesOfSite(pane.port);
      return (workbook: WorkbookSnapshot) => planSite(new PlanModel(workbook), given);
    };
    const show = () => propose(pane, preview, { ...proposal, planner: () => prepare(answers()) });
    fill(preview);
    showPanel(
      place,
      "Plan a site",
      make("p", {}, "Answer what you know. What stays empty is left out, or assumed and marked in the table Assumptions until you settle it. Sheets that are not here yet are added."),
      parts,
      make("div", { class: "bay-row" }, makeButton("Show what would be written", show, { appearance: "primary" }), makeButton("Close", close)),
      preview,
    );
  }

  return make(
    "section",
    { class: "bay-group" },
    make("h2", {}, "A new site"),
    make("p", {}, "Counts and names once: racks, feeds, networks, switches, arrays, hosts and the job get their rows. You see every cell before it is written."),
    makeButton("Plan a site …", ask),
    place,
  );
}

function makeField({ label, help, column, suggested = "", assumed, required }: Question): Field {
  const hint = make("div", { class: "small soft" }, assumed === undefined ? help : `${help} Empty: ${assumed} is assumed.`);
  if (column.choices !== undefined) {
    const input = make("select", { "aria-label": label }, make("option", { value: "" }, ""), column.choices.map((choice) => make("option", { value: choice }, choice)));
    return { element: make("div", { class: "bay-field" }, make("div", {}, label), input, hint), input, label };
  }
  const input = makeTextInput(label, { required });
  input.value = suggested;
  return { element: make("div", { class: "bay-field" }, input, hint), input, label };
}

/** Marks the field whose answer cannot be read, and brings it into sight; null marks none. */
function mark(fields: ReadonlyMap<string, Field>, label: string | null): void {
  for (const field of fields.values()) {
    const isMeant = field.label === label;
    if (isMeant) {
      field.input.setAttribute("aria-invalid", "true");
      field.input.closest("details")?.setAttribute("open", "");
      field.input.focus();
    } else field.input.removeAttribute("aria-invalid");
  }
}
