import { momentOf } from "../../actions/moment";
import { writePartsSheet } from "../../actions/handouts";
import { readPlanValues } from "../../actions/read-plan";
import { addTables } from "../../actions/set-up";
import { listParts, takeSerials } from "../../planning/parts";
import { cellArea } from "../../sheet";
import { makeButton } from "../elements/button";
import { make } from "../elements/make";
import { propose, type Proposal } from "../elements/preview";
import type { PaneContext } from "./view";

/** Makes the part of the Plan view that lists parts, takes the serials of those that came into the plan, and writes what is missing and packed. */
export function makePartsGroup(pane: PaneContext, refresh: () => Promise<void>): HTMLElement {
  const { port, host, status } = pane;
  const preview = make("div");
  const proposals: readonly (Proposal & { readonly help: string })[] = [
    {
      title: "List parts",
      help: "gives everything that plan and quote need a row in Parts; days, serials and boxes stay",
      planner: async () => {
        await addTables(port, ["parts"]);
        return listParts;
      },
      read: readPlanValues,
      nothing: "Everything that plan and quote need has its row in Parts already.",
      written: refresh,
    },
    {
      title: "Take serials",
      help: "writes the serials of what came into Arrays, Shelves and Drives, which the tabs expect",
      planner: () => takeSerials,
      read: readPlanValues,
      nothing: "The plan expects every serial that has come already.",
      written: refresh,
    },
  ];
  const writeSheet = (): Promise<void> =>
    status.run("Parts sheet", async () => {
      const sheet = await writePartsSheet(port, momentOf(host.now(), "").madeAt);
      await port.apply([{ kind: "select", sheet, area: cellArea({ row: 0, column: 0 }) }]);
      return { sentence: `Sheet ${sheet} holds what is missing, what has come with which serial, and each box on a page of its own.` };
    });
  return make(
    "section",
    { class: "bay-group", hidden: true },
    make("h2", {}, "Parts"),
    make("p", {}, "Write the day, the serial and the box into the table Parts as goods come and are packed."),
    make(
      "ul",
      {},
      proposals.map((proposal) => {
        const button = makeButton(`${proposal.title} …`, () => propose(pane, preview, proposal), { size: "small" });
        return make("li", { class: "bay-step" }, button, make("span", { class: "small soft" }, proposal.help));
      }),
      make("li", { class: "bay-step" }, makeButton("Parts sheet", writeSheet, { size: "small" }), make("span", { class: "small soft" }, "missing, come, and packed box by box")),
    ),
    preview,
  );
}
