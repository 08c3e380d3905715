import { checkSeal } from "../../actions/check-seal";
import { acceptAsItIs, closeOut, previewCloseOut } from "../../actions/close-out";
import { handover, readHandover } from "../../actions/handover";
import { momentOf } from "../../actions/moment";
import { reopen } from "../../actions/reopen";
import { addTableOfReadings, planAsBuilt } from "../../actions/plan-as-built";
import { readWithFormulas } from "../../actions/read-plan";
import { cellArea } from "../../sheet";
import { makeButton } from "../elements/button";
import { countOf } from "../elements/count-of";
import { goTo } from "../elements/go-to";
import { fill, make } from "../elements/make";
import { propose } from "../elements/preview";
import { saveFile } from "../elements/save-file";
import { makeTextInput } from "../elements/text-input";
import type { PaneContext } from "./view";

/** How many open items or changed rows are listed. */
const mostListed = 100;

/** A job whose tab is built: what it is called, where its tab is, and whether it is sealed. */
export interface BuiltJob {
  readonly name: string;
  readonly sheet: string;
  readonly isClosed: boolean;
}

/** Makes the buttons for a job whose tab is built; what they ask and show appears below them. */
export function makeJobActions(pane: PaneContext, job: BuiltJob, refresh: () => Promise<void>): HTMLElement {
  const place = make("div");
  const button = (label: string, run: () => unknown) => makeButton(label, run, { size: "small", label: `${label}: ${job.name}` });
  return make(
    "div",
    {},
    make(
      "div",
      { class: "bay-row" },
      job.isClosed ? button("Check the seal", () => tellSeal(pane, place, job)) : button("Close out …", () => offerCloseOut(pane, place, job, refresh)),
      job.isClosed && button("Reopen …", () => offerReopening(pane, place, job, refresh)),
      job.isClosed && button("Update plan from this job …", () =>
        propose(pane, place, {
          title: "Update plan from this job",
          planner: async () => {
            await addTableOfReadings(pane.port, job.name);
            return planAsBuilt(job.name);
          },
          read: readWithFormulas,
          nothing: "The plan says already what the accepted records of this job say.",
          written: refresh,
        }),
      ),
      button("Handover sheet", () => makeHandover(pane, job)),
      button("Save PDF", () => saveHandover(pane, job)),
    ),
    place,
  );
}

/** Goes to a row of a tab, or to its top. */
export function goToTab(pane: PaneContext, sheet: string, row = 0): Promise<void> {
  return goTo(pane, "Go to the tab", sheet, { row, column: 0 });
}

/** Asks who closes; where something is open still it is listed instead, each with the way to its row. */
function offerCloseOut(pane: PaneContext, place: HTMLElement, job: BuiltJob, refresh: () => Promise<void>): Promise<void> {
  fill(place);
  return pane.status.run("Close out", async () => {
    const items = await previewCloseOut(pane.port, job.name);
    if (items.length > 0) {
      const list = listRows(pane, job.sheet, `Still open in ${job.name}: ${items.length}`, "Open items", items.map(({ row, sentence }) => ({ row, text: sentence })));
      const acceptable = items.filter(({ fact }) => fact !== undefined).length;
      fill(place, list, acceptable > 0 && askAcceptance(pane, job, acceptable, refresh));
      return { sentence: `${countOf(items.length, "item")} still to be settled before ${job.name} can be closed.` };
    }
    const by = makeTextInput("Closed by");
    const close = () =>
      pane.status.run("Close out", async () => {
        const code = await closeOut(pane.port, job.name, by.value, now(pane));
        await refresh();
        return { sentence: `${job.name} is closed and sealed with code ${code}. Write the code on the signed page: that page is the proof.` };
      });
    fill(place, askPanel(`Close out ${job.name}`, "Every required step and every snag is settled. Closing seals the tab; a later change of any cell is then found.", [by], "Close and seal", close));
    by.focus();
    return null;
  });
}

/** Asks who takes cells that were typed over, and rows that the plan has changed since, as they are; building again is the other way. */
function askAcceptance(pane: PaneContext, job: BuiltJob, count: number, refresh: () => Promise<void>): HTMLElement {
  const by = makeTextInput("Accepted by");
  const reason = makeTextInput("Reason");
  const accept = () =>
    pane.status.run("Accept as it is", async () => {
      const accepted = await acceptAsItIs(pane.port, job.name, by.value, reason.value);
      await refresh();
      return { sentence: `${countOf(accepted, "item")} accepted as a snag of ${job.name}, with your name and reason. The seal covers it.` };
    });
  const text = `${countOf(count, "item")} of these: the tab says something else than the build or the plan. Build it again, or accept that by name; a snag with each of them is written.`;
  return askPanel("Accept as it is", text, [by, reason], "Accept", accept);
}

/** Lists rows of the tab, each with the way to it. */
function listRows(pane: PaneContext, sheet: string, title: string, label: string, rows: readonly { readonly row: number; readonly text: string }[]): HTMLElement {
  return make(
    "div",
    { class: "bay-panel" },
    make("h3", {}, title),
    make(
      "ul",
      { class: "bay-list bay-scroll", tabindex: 0, "aria-label": label },
      rows.slice(0, mostListed).map(({ row, text }) => make("li", {}, make("button", { type: "button", class: "bay-plain", on: { click: () => void goToTab(pane, sheet, row) } }, text))),
      rows.length > mostListed && make("li", {}, `… and ${rows.length - mostListed} more`),
    ),
  );
}

function tellSeal(pane: PaneContext, place: HTMLElement, { name, sheet }: BuiltJob): Promise<void> {
  fill(place);
  return pane.status.run("Check the seal", async () => {
    const { holds, code, changed } = await checkSeal(pane.port, name);
    if (holds) return { sentence: `The seal of ${name} holds: code ${code}. Compare it with the code on the signed page.` };
    fill(place, listRows(pane, sheet, "Changed since it was sealed", "Changed cells", changed.map(({ row, label }) => ({ row, text: label }))));
    return { sentence: `The seal of ${name} does not hold: ${countOf(changed.length, "cell")} changed. It shows that something changed, not who changed it.`, tone: "trouble" };
  });
}

function offerReopening(pane: PaneContext, place: HTMLElement, job: BuiltJob, refresh: () => Promise<void>): void {
  const by = makeTextInput("Reopened by");
  const reason = makeTextInput("Reason");
  const open = () =>
    pane.status.run("Reopen", async () => {
      await reopen(pane.port, job.name, by.value, reason.value, now(pane));
      await refresh();
      return { sentence: `${job.name} is open again. Its earlier seal stays, with your name and reason beside it.` };
    });
  fill(place, askPanel(`Reopen ${job.name}`, "The earlier seal stays to be read. A line with date, name and reason is added.", [by, reason], "Reopen", open));
  by.focus();
}

function askPanel(title: string, text: string, fields: readonly HTMLElement[], label: string, run: () => Promise<void>): HTMLElement {
  const panel: HTMLElement = make(
    "div",
    { class: "bay-panel", role: "group", "aria-label": title },
    make("h3", {}, title),
    make("p", {}, text),
    fields,
    make("div", { class: "bay-row" }, makeButton(label, run, { appearance: "primary" }), makeButton("Leave it as it is", () => panel.remove())),
  );
  return panel;
}

function makeHandover({ port, host, status }: PaneContext, { name }: BuiltJob): Promise<void> {
  return status.run("Handover sheet", async () => {
    const sheet = await handover(port, name, momentOf(host.now(), host.workbookName()).madeAt);
    await port.apply([{ kind: "select", sheet, area: cellArea({ row: 0, column: 0 }) }]);
    return { sentence: `Sheet ${sheet} holds what is open, what was found and measured, capacity, contacts and the seal.` };
  });
}

/** Saves the handover as a PDF; what writes it is loaded only now. */
function saveHandover({ port, host, status }: PaneContext, { name }: BuiltJob): Promise<void> {
  return status.run("Save PDF", async () => {
    const { pack } = await readHandover(port, name, momentOf(host.now(), host.workbookName()).madeAt);
    const { writePrintout } = await import(/* webpackChunkName: "pdf" */ "../../pdf/write-printout");
    const file = `${pack.job} handover.pdf`;
    saveFile(file, new Blob([await writePrintout(pack)], { type: "application/pdf" }));
    return { sentence: `${file} is among your downloads. If none came, make the handover sheet and print it as a PDF.` };
  });
}

/** Day and time, as a seal and its reopening tell them. */
function now({ host }: PaneContext): string {
  return momentOf(host.now(), "").madeAt;
}
