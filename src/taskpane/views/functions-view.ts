import { catalogue, type CatalogueEntry } from "../../functions/catalogue";
import { cellAddress } from "../../sheet";
import { makeButton } from "../elements/button";
import { isBlankCell } from "../elements/is-blank-cell";
import { fill, make } from "../elements/make";
import { makeTextInput } from "../elements/text-input";
import type { PaneContext, View } from "./view";
import { matchFunctions } from "./match-functions";

/** Makes the Functions view: every worksheet function with its arguments and an example that can be put into the sheet. */
export function makeFunctionsView(pane: PaneContext): View {
  const search = makeTextInput("Find a function", { type: "search", placeholder: "capacity, subnet, MTTDL …" });
  const count = make("p", { class: "soft small", role: "status" });
  const families = make("div");
  search.addEventListener("input", () => list(search.value));

  function list(query: string): void {
    const found = matchFunctions(catalogue, query);
    fill(count, found.length === 0 ? `No function speaks of “${query}”. Try one word, such as drives or prefix.` : `${found.length} of ${catalogue.length} functions`);
    const names = [...new Set(found.map(({ family }) => family))];
    fill(
      families,
      names.map((family) =>
        make(
          "section",
          { class: "bay-group" },
          make("h2", {}, family),
          make("ul", { class: "bay-list" }, found.filter((one) => one.family === family).map((one) => make("li", {}, entry(pane, one)))),
        ),
      ),
    );
  }

  list("");
  return { element: make("div", {}, search, count, families), show: () => undefined };
}

function entry(pane: PaneContext, one: CatalogueEntry): HTMLElement {
  const details = make("details", { name: "functions" }, make("summary", {}, make("code", {}, make("strong", {}, one.id)), " ", make("span", { class: "soft" }, one.description)));
  details.addEventListener("toggle", () => {
    if (details.open && details.childElementCount === 1) details.append(describe(pane, one));
  });
  return details;
}

function describe(pane: PaneContext, { id, parameters, examples }: CatalogueEntry): HTMLElement {
  const signature = `=BAY.${id}(${parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(", ")})`;
  return make(
    "div",
    { class: "bay-panel" },
    make("p", {}, make("code", {}, signature)),
    parameters.length > 0 && make("dl", {}, parameters.map(({ name, description }) => [make("dt", {}, name), make("dd", {}, description)])),
    examples.map((formula) =>
      make(
        "div",
        { class: "bay-row apart bay-example" },
        make("code", {}, formula),
        makeButton("Insert", () => insert(pane, formula), { size: "small", label: `Insert ${formula} into the selected cell` }),
      ),
    ),
    make("p", { class: "small" }, make("a", { href: pane.host.helpAddress(`functions/${id}.html`), target: "_blank", rel: "noopener" }, `More about ${id}`)),
  );
}

/** Puts a formula into the selected cell; what stands there is only replaced where the person said so of that very cell. */
async function insert(pane: PaneContext, formula: string, replaceable?: string): Promise<void> {
  await pane.status.run("Insert the example", async () => {
    const { sheet, area } = await pane.port.selection();
    const place = `${sheet}!${cellAddress(area)}`;
    const snapshot = (await pane.port.read([sheet])).sheets.find(({ name }) => name === sheet);
    if (place !== replaceable && snapshot !== undefined && !isBlankCell(snapshot, area)) {
      return {
        sentence: `${place} is not empty. Select an empty cell, or replace what stands there.`,
        waysOn: [{ label: `Replace ${place}`, run: () => insert(pane, formula, place) }],
      };
    }
    await pane.port.apply([{ kind: "write", sheet, row: area.row, column: area.column, cells: [[{ formula }]] }]);
    return { sentence: `The example stands in ${place}. Change its arguments there.` };
  });
}
