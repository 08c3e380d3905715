import { loadSample } from "../../actions/load-sample";
import { readPlanSheets } from "../../actions/read-plan";
import { setUp } from "../../actions/set-up";
import { PlanModel } from "../../planning/plan/model";
import { tableKeys, tables as schema, type TableKey } from "../../planning/plan/schema";
import { earlierTables, missingTables } from "../../planning/plan/set-up";
import { makeButton } from "../elements/button";
import { countOf } from "../elements/count-of";
import { fill, make } from "../elements/make";
import { pace } from "../elements/pace";
import { explain } from "../elements/work";
import { makeAddressesGroup } from "./addresses-group";
import { makePicturesGroup } from "./pictures-group";
import type { PaneContext, View } from "./view";

/** Makes the Plan view: the planning tables, their addresses and cables, and what they look like as pictures. */
export function makePlanView(pane: PaneContext): View {
  const { port, status } = pane;
  const tables = make("section", { class: "bay-group" });
  const addresses = makeAddressesGroup(pane);
  const pictures = makePicturesGroup(pane);

  const refresh = async () => {
    const workbook = await readPlanSheets(port, { only: "values" });
    const model = new PlanModel(workbook);
    showTables(model, missingTables(workbook), earlierTables(workbook).map(({ key }) => key));
    addresses.hidden = model.table("ports") === null;
    pictures.show(model);
  };
  const followChanges = pace(() => refresh().catch((thrown: unknown) => status.say(explain(thrown, "Read the plan"))), 1000);
  const show = () => status.run("Read the plan", async () => (await refresh(), null));

  const setUpTables = () =>
    status.run("Set up tables", async () => {
      const { added, kept, broughtUp } = await setUp(port);
      await refresh();
      const columns = broughtUp.length === 0 ? "" : ` Columns of today's layout were added to ${broughtUp.join(", ")}; nothing there was moved.`;
      if (added.length === 0) return { sentence: columns === "" ? "Every planning table is here already; nothing was changed." : columns.trim() };
      const rest = kept.length === 0 ? "Begin with Sites." : `${countOf(kept.length, "table")} stood here already and ${kept.length === 1 ? "was" : "were"} not touched.`;
      return { sentence: `${countOf(added.length, "table")} added. ${columns === "" ? rest : columns.trim()}` };
    });
  const fillWithSample = () =>
    status.run("Load the sample", async () => {
      await loadSample(port);
      await refresh();
      return { sentence: "The plan of the Thornmere Map Library, which is invented, stands in the tables. Look around, change it, check it." };
    });

  function showTables(model: PlanModel, missing: readonly TableKey[], earlier: readonly TableKey[]): void {
    const isEmpty = tableKeys.every((key) => key === "settings" || key === "procedures" || key === "steps" || model.rows(key).length === 0);
    const count = (key: TableKey, thing: string, things?: string) => countOf(model.rows(key).length, thing, things);
    const sentence =
      missing.length === tableKeys.length
        ? "This workbook has no planning tables yet. Set-up adds one sheet a table; what is here stays as it is."
        : missing.length > 0
          ? `${countOf(missing.length, "table")} of ${tableKeys.length} ${missing.length === 1 ? "is" : "are"} not here: ${missing.map((key) => schema[key].name).join(", ")}.`
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

  return { element: make("div", {}, tables, addresses, pictures.element), show, changed: followChanges };
}
