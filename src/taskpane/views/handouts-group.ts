import { momentOf } from "../../actions/moment";
import { writeLabels, writeNames, writeOutlook, writeSwitchList } from "../../actions/handouts";
import { cellArea } from "../../sheet";
import { makeButton } from "../elements/button";
import { make } from "../elements/make";
import type { PaneContext } from "./view";

/** Makes the part of the Plan view that writes sheets for those who set up switches and names. */
export function makeHandoutsGroup({ port, host, status }: PaneContext): HTMLElement {
  const domain = make("input", { type: "text", "aria-label": "Domain of the names", placeholder: "example.com" });
  const madeAt = (): string => momentOf(host.now(), "").madeAt;

  const write = (title: string, work: () => Promise<string>, holds: string): Promise<void> =>
    status.run(title, async () => {
      const sheet = await work();
      await port.apply([{ kind: "select", sheet, area: cellArea({ row: 0, column: 0 }) }]);
      return { sentence: `Sheet ${sheet} holds ${holds}` };
    });
  const listSwitches = (): Promise<void> =>
    write("Ports by switch", () => writeSwitchList(port, madeAt()), "port, VLAN, MTU and description, switch by switch. Hand each page to its owner.");
  const makeLabels = (): Promise<void> =>
    write("Cable labels", () => writeLabels(port), "two labels a cable, one for each end. Print one page on plain A4 first, at 100%, and hold it against the sheet.");
  const listNames = (): Promise<void> =>
    write("Names", () => writeNames(port, domain.value, madeAt()), "the lines for zone and hosts files, and what can have no name.");

  const lookAhead = (): Promise<void> =>
    write("Outlook", () => writeOutlook(port, madeAt()), "the days between which each pool is full, as far as its readings tell, and beside them what to buy year by year.");

  return make(
    "section",
    { class: "bay-group", hidden: true },
    make("h2", {}, "Sheets to hand out"),
    make("p", {}, "Made of the plan as it stands; made anew they replace the earlier ones."),
    make(
      "ul",
      {},
      make("li", { class: "bay-step" }, makeButton("Ports by switch", listSwitches, { size: "small" }), make("span", { class: "small soft" }, "what the owner of each switch sets up")),
      make("li", { class: "bay-step" }, makeButton("Cable labels", makeLabels, { size: "small" }), make("span", { class: "small soft" }, "both ends on each; Settings has the size of the labels")),
      make("li", { class: "bay-step" }, makeButton("Names", listNames, { size: "small" }), make("span", { class: "small soft" }, "lines for zone files and a hosts file, in the domain"), domain),
      make("li", { class: "bay-step" }, makeButton("Outlook", lookAhead, { size: "small" }), make("span", { class: "small soft" }, "when pools will be full, out of Readings")),
    ),
  );
}
