import { loadSample } from "../../actions/load-sample";
import { setUp } from "../../actions/set-up";
import { mayBeInUse } from "../../planning/commissioning/tab";
import { PlanModel } from "../../planning/plan/model";
import { tableKeys, tables as schema, type TableKey } from "../../planning/plan/schema";
import { missingTables } from "../../planning/plan/set-up";
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
    const workbook = await port.read(mayBeInUse);
    const model = new PlanModel(workbook);
    showTables(model, missingTables(workbook));
    addresses.hidden = model.table("ports") === null;
    pictures.show(model);
  };
  const followChanges = pace(() => refresh().catch((thrown: unknown) => status.say(explain(thrown, "Read the plan"))), 1000);
  const show = () => status.run("Read the plan", async () => (await refresh(), null));

  const setUpTables = () =>
    status.run("Set up tables", async () => {
      const { added, kept } = await setUp(port);
      await refresh();
      if (added.length === 0) return { sentence: "Every planning table is here already; nothing was changed." };
      const rest = kept.length === 0 ? "Begin with Sites." : `${countOf(kept.length, "table")} stood here already and ${kept.length === 1 ? "was" : "were"} not touched.`;
      return { sentence: `${countOf(added.length, "table")} added. ${rest}` };
    });
  const fillWithSample = () =>
    status.run("Load the sample", async () => {
      await loadSample(port);
      await refresh();
      return { sentence: "The plan of the Thornmere Map Library, which is invented, stands in the tables. Look around, change it, check it." };
    });

  function showTables(model: PlanModel, missing: readonly TableKey[]): void {
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
        isEmpty && makeButton("Load the sample", fillWithSample),
      ),
    );
  }

  return { element: make("div", {}, tables, addresses, pictures.element), show, changed: followChanges };
}
