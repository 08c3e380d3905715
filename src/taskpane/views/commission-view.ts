import { dayOf, momentOf } from "../../actions/moment";
import { standingsOneByOne, writeProgramme, writeProgress, type JobStanding } from "../../actions/progress";
import { readShown } from "../../actions/read-plan";
import { readCommissioningPlan } from "../../planning/commissioning/build";
import type { JobProgress } from "../../planning/commissioning/reports";
import { cellArea } from "../../sheet";
import { makeButton } from "../elements/button";
import { makeCheckbox, type Checkbox } from "../elements/checkbox";
import { countOf } from "../elements/count-of";
import { fill, make } from "../elements/make";
import { pace } from "../elements/pace";
import { makeSign } from "../elements/sign";
import { explain, nextTurn } from "../elements/work";
import { makeBringBackGroup } from "./bring-back-group";
import { buildWithReport } from "./build-report";
import { describeProgress } from "./describe-progress";
import { goToTab, makeJobActions } from "./job-actions";
import { makePreviewGroup } from "./preview-group";
import { makeStepGroup } from "./step-group";
import type { PaneContext, View } from "./view";

/** The least time between two readings of the tabs while somebody fills one. */
const paceMilliseconds = 1000;

/** What the list says of a job. */
interface ListedJob {
  readonly name: string;
  /** Site and procedure. */
  readonly facts: string;
  readonly plannedDate: string;
  /** Sheet of its tab; null where it has none yet. */
  readonly sheet: string | null;
  readonly isClosed: boolean;
  readonly progress: JobProgress;
}

/** A job in the list. */
interface Entry {
  readonly job: ListedJob;
  /** Null where the job is closed, so that it is not built again. */
  readonly box: Checkbox | null;
  readonly element: HTMLElement;
  tell(progress: JobProgress): void;
}

/** Makes the Commission view: the jobs of the plan, their tabs, and all that is done with a tab from its first build to its handover. */
export function makeCommissionView(pane: PaneContext): View {
  const { port, host, status } = pane;
  const list = make("ul", { class: "bay-list" });
  const build = makeButton("Build", () => buildWithReport(pane, report, [...chosen], refresh), { appearance: "primary" });
  const choice = (label: string, isChosen: boolean) => makeButton(label, () => choose(isChosen), { size: "small", appearance: "subtle" });
  const choices = make("div", { class: "bay-row" }, choice("Choose all", true), choice("Choose none", false));
  const [progressSheet, programmeBoard] = [makeButton("Progress sheet", () => listProgress()), makeButton("Programme board", () => listProgramme())];
  progressSheet.hidden = programmeBoard.hidden = true;
  const report = make("div");
  const procedures = makePreviewGroup(pane);
  /** Jobs that the next build takes, in table order, and those the person took out: a new job is chosen from the start. */
  let chosen: readonly string[] = [];
  const left = new Set<string>();
  let entries: readonly Entry[] = [];

  async function refresh(): Promise<void> {
    const workbook = await readShown(port);
    // A long list is judged in pieces, so that somebody who types meanwhile does not wait for all of it.
    await nextTurn();
    const source = readCommissioningPlan(workbook);
    const jobs: ListedJob[] = [];
    for (const standing of standingsOneByOne(source)) {
      jobs.push(listed(standing));
      await nextTurn();
    }
    // The list is made anew only where it says something else: whatever a person has open in it stays open while tabs are filled.
    if (entries.length !== jobs.length || jobs.some((job, at) => !isSame(job, entries[at]!.job))) {
      entries = jobs.map(makeEntry);
      const none = make("li", {}, "No job stands in the plan yet. Write one row a piece of work into Jobs: its name, site and procedure.");
      fill(list, entries.length === 0 ? none : entries.map(({ element }) => element));
    }
    jobs.forEach(({ progress }, at) => entries[at]!.tell(progress));
    choices.hidden = boxes().length < 2;
    progressSheet.hidden = source.tabs.length === 0;
    programmeBoard.hidden = jobs.length === 0;
    procedures.offer(source.model);
    tellChoice();
  }

  const boxes = () => entries.flatMap(({ job: { name }, box }) => (box === null ? [] : [{ name, box }]));

  function tellChoice(): void {
    chosen = boxes().filter(({ box }) => box.checked).map(({ name }) => name);
    fill(build, chosen.length === 0 ? "Build" : `Build ${countOf(chosen.length, "tab")}`);
    build.toggleAttribute("disabled", chosen.length === 0);
  }

  function choose(isChosen: boolean): void {
    for (const { name, box } of boxes()) {
      box.checked = isChosen;
      if (isChosen) left.delete(name);
      else left.add(name);
    }
    tellChoice();
  }

  function makeEntry(job: ListedJob): Entry {
    const { name, facts, plannedDate, sheet, isClosed } = job;
    const box = isClosed ? null : makeChoice(name);
    const line = make("div", { class: "small" });
    const bar = make("fluent-progress-bar", { "aria-hidden": true, hidden: true });
    const element = make(
      "li",
      { class: "bay-job" },
      box ?? make("span", { class: "bay-closed", "aria-hidden": true }, makeSign("good")),
      make(
        "div",
        {},
        sheet === null ? make("strong", {}, name) : make("button", { type: "button", class: "bay-way", title: "Go to the tab", on: { click: () => goToTab(pane, sheet) } }, name),
        make("div", { class: "soft small" }, facts, plannedDate !== "" && make("span", { class: "bay-whole" }, ` · ${plannedDate}`)),
        line,
        bar,
        sheet !== null && make("details", {}, make("summary", { "aria-label": `More for ${name}` }, "More"), makeJobActions(pane, { name, sheet, isClosed }, refresh)),
      ),
    );
    const tell = (progress: JobProgress) => {
      fill(line, describeProgress(progress));
      bar.hidden = progress.steps === 0;
      bar.setAttribute("max", String(progress.steps));
      bar.setAttribute("value", String(progress.done));
    };
    return { job, box, element, tell };
  }

  function makeChoice(name: string): Checkbox {
    return makeCheckbox(`Build ${name}`, !left.has(name), (isChosen) => {
      if (isChosen) left.delete(name);
      else left.add(name);
      tellChoice();
    });
  }

  function listProgress(): Promise<void> {
    return status.run("Progress sheet", async () => {
      const sheet = await writeProgress(port, momentOf(host.now(), host.workbookName()).madeAt);
      await port.apply([{ kind: "select", sheet, area: cellArea({ row: 0, column: 0 }) }]);
      return { sentence: `Sheet ${sheet} lists how far every job is.` };
    });
  }

  function listProgramme(): Promise<void> {
    return status.run("Programme board", async () => {
      const sheet = await writeProgramme(port, momentOf(host.now(), host.workbookName()).madeAt, dayOf(host.now()));
      await port.apply([{ kind: "select", sheet, area: cellArea({ row: 0, column: 0 }) }]);
      return { sentence: `Sheet ${sheet} lists every job by day and crew, what blocks it, and minutes planned and used.` };
    });
  }

  const jobs = make(
    "section",
    { class: "bay-group" },
    make("h2", {}, "Jobs"),
    list,
    make("div", { class: "bay-row bay-after" }, build, choices),
    make("p", { class: "bay-caution small" }, "A tab is a plan of work, not a permit. Whoever is on site may stop the work; electrical work and lifting follow local codes and licensed practice."),
    report,
    make("div", { class: "bay-row" }, progressSheet, programmeBoard),
  );
  return {
    element: make("div", {}, jobs, makeStepGroup(pane), makeBringBackGroup(pane, refresh), procedures.element),
    changed: pace(() => refresh().catch((thrown: unknown) => status.say(explain(thrown, "Read the jobs"))), paceMilliseconds),
    show: () =>
      status.run("Read the jobs", async () => {
        await refresh();
        return null;
      }),
  };
}

function listed({ job, tab, progress }: JobStanding): ListedJob {
  return {
    name: job.job,
    facts: [job.site, job.procedure].filter((fact) => fact !== "").join(" · "),
    plannedDate: job.plannedDate ?? "",
    sheet: tab?.sheet ?? null,
    isClosed: progress.state === "closed" || job.state === "closed",
    progress,
  };
}

/** Tells whether the list says the same of two jobs, their progress apart. */
function isSame(one: ListedJob, other: ListedJob): boolean {
  return one.name === other.name && one.facts === other.facts && one.plannedDate === other.plannedDate && one.sheet === other.sheet && one.isClosed === other.isClosed;
}
