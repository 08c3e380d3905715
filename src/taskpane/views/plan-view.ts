import { loadSample } from "../../actions/load-sample";
import { readPlanValues } from "../../actions/read-plan";
import { addTable, setUp } from "../../actions/set-up";
import { PlanModel } from "../../planning/plan/model";
import { isPlan } from "../../planning/plan/read";
import { tableKeys, tables as schema, type TableKey } from "../../planning/plan/schema";
import { earlierTables, furtherTables, missingTables } from "../../planning/plan/set-up";
import { cellArea } from "../../sheet";
import { makeButton } from "../elements/button";
import { countOf } from "../elements/count-of";
import { fill, make } from "../elements/make";
import { pace } from "../elements/pace";
import { explain } from "../elements/work";
import { makeAddressesGroup } from "./addresses-group";
import { makeCompareGroup } from "./compare-group";
import { makeDrawingsGroup } from "./drawings-group";
import { makeHandoutsGroup } from "./handouts-group";
import { makeListsGroup } from "./lists-group";
import { makeMissingGroup } from "./missing-group";
import { makeOptionsGroup } from "./options-group";
import { makePartsGroup } from "./parts-group";
import { makePicturesGroup } from "./pictures-group";
import { makeQuoteGroup } from "./quote-group";
import { makeSiteGroup } from "./site-group";
import type { PaneContext, View } from "./view";

/** Where the first row of a new table begins. */
const firstCell = { row: 4, column: 0 };

/** Makes the Plan view: the planning tables, their addresses and cables, what they look like as pictures, and what is different from an earlier plan. */
export function makePlanView(pane: PaneContext): View {
  const { port, status } = pane;
  const tables = make("section", { class: "bay-group" });
  const further = make("section", { class: "bay-group", hidden: true });
  const addresses = makeAddressesGroup(pane);
  const handouts = makeHandoutsGroup(pane);
  const pictures = makePicturesGroup(pane);
  const drawings = makeDrawingsGroup(pane);
  const comparison = makeCompareGroup(pane);
  const missingNow = makeMissingGroup(pane);

  const refresh = async () => {
    const workbook = await readPlanValues(port);
    const model = new PlanModel(workbook);
    const missing = missingTables(workbook);
    showTables(model, missing, earlierTables(workbook).map(({ key }) => key));
    showFurther(missing.length > 0 ? [] : furtherTables(workbook));
    addresses.hidden = model.table("ports") === null;
    handouts.hidden = model.rows("switches").length + model.rows("arrays").length + model.addresses.all().length === 0;
    parts.hidden = model.rows("arrays").length === 0;
    comparison.hidden = !isPlan(model.plan);
    pictures.show(model);
    drawings.show(model);
    missingNow.show(model);
    lists.show(model);
    await quote.show(model);
  };
  const lists = makeListsGroup(pane, refresh);
  const quote = makeQuoteGroup(pane, refresh);
  const site = makeSiteGroup(pane, refresh, missingNow.element);
  const parts = makePartsGroup(pane, refresh);
  const options = makeOptionsGroup(pane, refresh);
  const followChanges = pace(() => refresh().catch((thrown: unknown) => status.say(explain(thrown, "Read the plan"))), 1000);
  const show = () => status.run("Read the plan", async () => (await refresh(), null));

  const setUpTables = () =>
    status.run("Set up tables", async () => {
      const { added, kept, broughtUp, mended } = await setUp(port);
      const { name } = schema.sites;
      if (added.includes(name)) await port.apply([{ kind: "select", sheet: name, area: cellArea(firstCell) }]);
      await refresh();
      const formulas = mended.length === 0 ? "" : ` Formulas of ${mended.join(", ")} that nobody had changed are those of today.`;
      const columns = broughtUp.length === 0 ? formulas : ` Columns of today's layout were added to ${broughtUp.join(", ")}; nothing there was moved.${formulas}`;
      if (added.length === 0) return { sentence: columns === "" ? "Every planning table is here already; nothing was changed." : columns.trim() };
      const rest = kept.length === 0 ? "Begin with Sites." : `${countOf(kept.length, "table")} stood here already and ${kept.length === 1 ? "was" : "were"} not touched.`;
      return { sentence: `${countOf(added.length, "table")} added. ${columns === "" ? rest : columns.trim()}` };
    });
  const addOne = (key: TableKey) =>
    status.run(`Add ${schema[key].name}`, async () => {
      await addTable(port, key);
      await refresh();
      return { sentence: `The table ${schema[key].name} stands on a sheet of its own now. A plan without rows there is whole too.` };
    });
  const fillWithSample = () =>
    status.run("Load the sample", async () => {
      await loadSample(port);
      await refresh();
      return { sentence: "The plan of the Thornmere Map Library, which is invented, stands in the tables. Look around, change it, check it." };
    });

  function showFurther(keys: readonly TableKey[]): void {
    further.hidden = keys.length === 0;
    const lines = keys.map((key) => {
      const button = makeButton(schema[key].name, () => addOne(key), { size: "small", label: `Add the table ${schema[key].name}` });
      return make("li", { class: "bay-step" }, button, make("span", { class: "small soft" }, schema[key].note));
    });
    fill(further, make("h2", {}, "Add a table"), make("p", {}, "For what a plan may say besides. Without them it is whole too."), make("ul", {}, lines));
  }

  function showTables(model: PlanModel, missing: readonly TableKey[], earlier: readonly TableKey[]): void {
    const isEmpty = tableKeys.every((key) => key === "settings" || key === "procedures" || key === "steps" || model.rows(key).length === 0);
    const count = (key: TableKey, thing: string, things?: string) => countOf(model.rows(key).length, thing, things);
    const sentence =
      !isPlan(model.plan)
        ? "This workbook has no planning tables yet. Set-up adds one sheet a table; what is here stays as it is."
        : missing.length > 0
          ? `${countOf(missing.length, "table")} ${missing.length === 1 ? "is" : "are"} not here: ${missing.map((key) => schema[key].name).join(", ")}.`
          : `${[count("sites", "site"), count("arrays", "array"), count("ports", "port address", "port addresses"), count("jobs", "job")].join(", ")}.`;
    fill(
      tables,
      make("h2", {}, "Tables"),
      make("p", {}, sentence),
      make(
        "div",
        { class: "bay-row" },
        missing.length > 0 && makeButton("Set up tables", setUpTables, { appearance: "primary" }),
        missing.length === 0 && earlier.length > 0 && makeButton(`Add today's columns to ${earlier.map((key) => schema[key].name).join(", ")}`, setUpTables),
        isEmpty && makeButton("Load the sample", fillWithSample),
      ),
    );
  }

  const groups = [
    tables, options, site, missingNow.element, lists.element, further, addresses, quote.element, handouts, parts, pictures.element, drawings.element, comparison,
  ];
  return { element: make("div", {}, groups), show, changed: followChanges };
}
