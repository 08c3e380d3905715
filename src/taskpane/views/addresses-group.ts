import { findSelectedPortPlan } from "../../actions/find-port-plan";
import { readPlanValues } from "../../actions/read-plan";
import { addTables } from "../../actions/set-up";
import { assignPlanAddresses, keepPlannedPorts, proposeCabling, writeCables } from "../../planning/assignment";
import { makeButton } from "../elements/button";
import { make } from "../elements/make";
import { propose, type Proposal } from "../elements/preview";
import type { PaneContext } from "./view";

/** Makes the part of the Plan view that fills Ports, Clusters and Cables: every change is shown before it is written. */
export function makeAddressesGroup(pane: PaneContext): HTMLElement {
  const preview = make("div");
  const proposals: readonly (Proposal & { readonly help: string })[] = [
    {
      title: "Assign addresses",
      help: "gives every port and cluster that has none the lowest free one",
      planner: () => assignPlanAddresses,
      read: readPlanValues,
      nothing: "Every port and every cluster has its address already.",
    },
    {
      title: "Propose cabling",
      help: "gives every port that is not cabled a switch that carries its network",
      planner: () => proposeCabling,
      read: readPlanValues,
      nothing: "No port is left to cable, or no switch of its site carries its network.",
    },
    {
      title: "Write cables",
      help: "gives every cable a row and an id in Cables, which labels show",
      planner: async () => {
        await addTables(pane.port, ["cables"]);
        return writeCables;
      },
      read: readPlanValues,
      nothing: "Every cable that is known from end to end has its row already.",
    },
    {
      title: "Keep these addresses",
      help: "writes the BAY.PORTPLAN table you have selected into Ports, where addresses stay",
      planner: async () => {
        const place = await findSelectedPortPlan(pane.port);
        return (workbook) => keepPlannedPorts(workbook, place);
      },
      nothing: "Every address of that table stands in Ports already.",
    },
  ];
  return make(
    "section",
    { class: "bay-group", hidden: true },
    make("h2", {}, "Addresses and cables"),
    make("p", {}, "What stands stays. You see every change before it is written."),
    make("ul", {}, proposals.map((proposal) => {
      const button = makeButton(`${proposal.title} …`, () => propose(pane, preview, proposal), { size: "small" });
      return make("li", { class: "bay-step" }, button, make("span", { class: "small soft" }, proposal.help));
    })),
    preview,
  );
}
