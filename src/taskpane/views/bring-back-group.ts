import { bringBack, previewReturned, type ReturnedJob } from "../../actions/bring-back";
import type { JobOutcome } from "../../actions/put-tab";
import { momentOf } from "../../actions/moment";
import type { ReturnedChange, ReturnedItem } from "../../planning/commissioning/record";
import { makeButton } from "../elements/button";
import { makeCheckbox, type Checkbox } from "../elements/checkbox";
import { countOf } from "../elements/count-of";
import { fill, make } from "../elements/make";
import { showPanel } from "../elements/show-panel";
import { listOutcomes } from "./build-report";
import type { PaneContext } from "./view";

/** How many records of a group are listed one by one; the rest follows the choice for the whole group. */
const mostListed = 200;

/** Makes the part of the Commission view that brings back a filled tab: choose the file, look at what differs, accept by row. */
export function makeBringBackGroup(pane: PaneContext, refresh: () => Promise<void>): HTMLElement {
  const place = make("div");

  async function choose(): Promise<void> {
    const file = await pane.host.chooseFile([".xlsx"]);
    if (file === null) return;
    fill(place);
    await pane.status.run("Read the returned file", async () => {
      const jobs = await previewReturned(pane.port, await pane.host.readSnapshot(file.bytes));
      if (jobs.every(({ items, holdPoints }) => items.length + holdPoints.length === 0)) return { sentence: `${file.name} holds nothing that is not here already.` };
      const accepted = new Map(jobs.map((job) => [job, new Set(job.items.filter(({ change }) => change === "theirs").map(({ id }) => id))]));
      const write = makeButton("", () => take(accepted), { appearance: "primary" });
      const tell = () => {
        const count = [...accepted.values()].reduce((sum, { size }) => sum + size, 0);
        fill(write, `Bring back ${countOf(count, "record")}`);
        write.toggleAttribute("disabled", count === 0);
      };
      tell();
      const described = jobs.map((job) => describeJob(job, accepted.get(job)!, tell));
      showPanel(place, `What ${file.name} brings`, described, make("div", { class: "bay-row" }, write, makeButton("Leave it", () => fill(place))));
      return null;
    });
  }

  function take(accepted: ReadonlyMap<ReturnedJob, ReadonlySet<string>>): Promise<void> {
    return pane.status.run("Bring back", async (work) => {
      const chosen = [...accepted].filter(([, ids]) => ids.size > 0);
      const outcomes: JobOutcome[] = [];
      for (const [job, ids] of chosen) {
        outcomes.push(await bringBack(pane.port, job, ids, momentOf(pane.host.now(), pane.host.workbookName())));
        await work.report({ done: outcomes.length, total: chosen.length });
      }
      fill(place, listOutcomes("Report of what was brought back", outcomes));
      await refresh();
      return outcomes.every(({ built }) => built)
        ? { sentence: "The accepted records stand in the tabs; a record of yours that one replaced is kept at the end of its tab." }
        : { sentence: "Not every tab could be written: the report says why, and what to do.", tone: "trouble" };
    });
  }

  return make(
    "section",
    { class: "bay-group" },
    make("h2", {}, "A tab comes back"),
    make("p", {}, "Choose the .xlsx file in which a technician filled a tab. You see what differs, row by row; only what you accept is written."),
    makeButton("Bring back a filled tab …", choose),
    place,
  );
}

function describeJob(job: ReturnedJob, accepted: Set<string>, tell: () => void): HTMLElement {
  const group = (change: ReturnedChange, title: string) => {
    const items = job.items.filter((item) => item.change === change);
    return items.length > 0 && describeGroup(`${title}: ${items.length}`, items, accepted, tell);
  };
  return make(
    "section",
    {},
    make("p", {}, make("strong", {}, job.job)),
    job.remarks.map((remark) => make("p", { class: "soft small" }, remark)),
    group("theirs", "Changed by them"),
    group("both", "Changed by both: choose which one stays"),
    job.holdPoints.length > 0 && describeHoldPoints(job.holdPoints),
    job.onlyOurs > 0 && make("p", { class: "soft small" }, `${countOf(job.onlyOurs, "record")} changed by you alone ${job.onlyOurs === 1 ? "stays as it is" : "stay as they are"}.`),
    job.items.length === 0 && make("p", { class: "soft small" }, "Nothing in this tab is new."),
  );
}

/** Lists what the returned tab says of hold points, beside what the lead's own says: there is nothing to accept. */
function describeHoldPoints(holdPoints: ReturnedJob["holdPoints"]): HTMLElement {
  const title = `Hold points, which are signed in your own tab only: ${holdPoints.length}`;
  return make(
    "div",
    {},
    make("div", {}, make("strong", {}, title)),
    make("ul", { class: "bay-list bay-scroll", tabindex: 0, "aria-label": title }, holdPoints.map((item) => make("li", {}, make("div", {}, item.label), bothValues(item)))),
  );
}

function bothValues({ ours, theirs }: Pick<ReturnedItem, "ours" | "theirs">): HTMLElement {
  return make("dl", { class: "small" }, make("dt", {}, "Theirs"), make("dd", {}, theirs || "–"), make("dt", {}, "Yours"), make("dd", {}, ours || "–"));
}

function describeGroup(title: string, items: readonly ReturnedItem[], accepted: Set<string>, tell: () => void): HTMLElement {
  const boxes: Checkbox[] = [];
  const accept = (ids: readonly string[], isAccepted: boolean) => {
    for (const id of ids) if (isAccepted) accepted.add(id); else accepted.delete(id);
    whole.checked = items.every(({ id }) => accepted.has(id));
    tell();
  };
  const makeBox = (label: string, ids: readonly string[], then?: (isAccepted: boolean) => void) =>
    makeCheckbox(label, ids.every((id) => accepted.has(id)), (isAccepted) => {
      then?.(isAccepted);
      accept(ids, isAccepted);
    });
  const whole = makeBox(`Accept all: ${title}`, items.map(({ id }) => id), (isAccepted) => {
    for (const box of boxes) box.checked = isAccepted;
  });
  return make(
    "div",
    {},
    make("div", { class: "bay-job" }, whole, make("div", {}, make("strong", {}, title))),
    make(
      "ul",
      { class: "bay-list bay-scroll", tabindex: 0, "aria-label": title },
      items.slice(0, mostListed).map((item) => {
        const { id, label } = item;
        const box = makeBox(`Accept theirs: ${label}`, [id]);
        boxes.push(box);
        return make("li", { class: "bay-job" }, box, make("div", {}, make("div", {}, label), bothValues(item)));
      }),
      items.length > mostListed && make("li", {}, `… and ${items.length - mostListed} more, which follow the choice for all`),
    ),
  );
}
