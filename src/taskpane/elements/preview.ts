import type { CellWrite, Changes } from "../../planning/plan/changes";
import type { WorkbookSnapshot } from "../../sheet";
import { readShown } from "../../actions/read-plan";
import { writeShownChanges } from "../../actions/write-changes";
import type { WorkbookPort } from "../../workbook/port";
import type { PaneContext } from "../views/view";
import { makeButton } from "./button";
import { countOf } from "./count-of";
import { describeWrites } from "./describe-writes";
import { fill, make } from "./make";

/** How many changes are listed; more than that nobody reads, and the count says the rest. */
const mostListed = 200;

type Planner = (workbook: WorkbookSnapshot) => Changes;

/** What a preview is asked for. */
export interface Proposal {
  /** What is about to be done, such as "Assign addresses". */
  readonly title: string;
  /** Learns what there is to know beforehand, and answers with what plans the changes; it plans again just before it writes. */
  readonly planner: () => Planner | Promise<Planner>;
  /** Reads what the changes are planned from: all that the sheets show, unless said otherwise. */
  readonly read?: (port: WorkbookPort) => Promise<WorkbookSnapshot>;
  /** Sentence where there is nothing to change. */
  readonly nothing: string;
  /** Called after the changes were written. */
  readonly written?: () => unknown;
}

/**
 * Plans changes, shows them in `place` cell by cell, and writes them only when the person says so.
 *
 * What is written is what was shown: where the workbook was edited in between nothing is.
 */
export function propose(pane: PaneContext, place: HTMLElement, { title, planner, read = readShown, nothing, written }: Proposal): Promise<void> {
  fill(place);
  return pane.status.run(title, async () => {
    const plan = await planner();
    const workbook = await read(pane.port);
    const changes = plan(workbook);
    const count = changes.writes.length;
    if (count === 0) return { sentence: nothing };
    const write = () =>
      pane.status.run(title, async () => {
        await writeShownChanges(pane.port, changes, plan, read);
        fill(place);
        await written?.();
        return { sentence: `${title}: ${countOf(count, "cell")} written.` };
      });
    const heading = make("h3", { tabindex: -1 }, `${title}: ${countOf(count, "cell")} would change`);
    fill(
      place,
      make(
        "div",
        { class: "bay-panel" },
        heading,
        make("div", { class: "bay-scroll", tabindex: 0, role: "region", "aria-label": `${title}: changes` }, listWrites(workbook, changes.writes)),
        make("div", { class: "bay-row" }, makeButton(`Write ${countOf(count, "cell")}`, write, { appearance: "primary" }), makeButton("Leave it as it is", () => fill(place))),
      ),
    );
    heading.focus();
    return null;
  });
}

function listWrites(workbook: WorkbookSnapshot, writes: readonly CellWrite[]): HTMLElement {
  const rows = describeWrites(workbook, writes, mostListed);
  return make(
    "table",
    {},
    make("thead", {}, make("tr", {}, ["Cell", "Now", "Then"].map((text) => make("th", { scope: "col" }, text)))),
    make(
      "tbody",
      {},
      rows.map(({ cell, of, before, after }) => {
        const head = make("th", { scope: "row" }, cell, of !== "" && make("div", { class: "bay-place" }, of));
        return make("tr", {}, head, make("td", {}, before), make("td", {}, after));
      }),
      writes.length > rows.length && make("tr", {}, make("td", { colspan: 3 }, `… and ${writes.length - rows.length} more`)),
    ),
  );
}
