import { momentOf } from "../../actions/moment";
import { writeProgress } from "../../actions/progress";
import { idOfJob, jobsOf, progressOf, readCommissioningPlan, tabFamily, type CommissioningPlan } from "../../planning/commissioning";
import type { PlanRow } from "../../planning/workbook-model";
import { makeButton } from "../elements/button";
import { makeCheckbox, type Checkbox } from "../elements/checkbox";
import { countOf } from "../elements/count-of";
import { fill, make } from "../elements/make";
import { makeBringBackGroup } from "./bring-back-group";
import { buildWithReport } from "./build-report";
import { describeProgress } from "./describe-progress";
import { makeJobActions } from "./job-actions";
import type { PaneContext, View } from "./view";

/** Makes the Commission view: the jobs of the plan, their tabs, and all that is done with a tab from its first build to its handover. */
export function makeCommissionView(pane: PaneContext): View {
  const { port, host, status } = pane;
  const list = make("ul", { class: "bay-list" });
  const build = makeButton("Build", () => buildWithReport(pane, report, [...chosen], refresh), { appearance: "primary" });
  const choices = make("div", { class: "bay-row" }, makeButton("Choose all", () => choose(true), { size: "small", appearance: "subtle" }), makeButton("Choose none", () => choose(false), { size: "small", appearance: "subtle" }));
  const tabs = make("div", { class: "bay-row" }, makeButton("Progress sheet", () => listProgress()));
  const report = make("div");
  /** Jobs that the next build takes, in table order, and those the person took out: a new job is chosen from the start. */
  let chosen: readonly string[] = [];
  const left = new Set<string>();
  let boxes: readonly { readonly name: string; readonly box: Checkbox }[] = [];

  async function refresh(): Promise<void> {
    const source = readCommissioningPlan(await port.read());
    const entries = jobsOf(source).map((job) => makeEntry(source, job));
    boxes = entries.flatMap(({ name, box }) => (box === null ? [] : [{ name, box }]));
    fill(list, entries.length === 0 ? make("li", {}, "No job stands in the plan yet. Write one row a piece of work into Jobs: its name, site and procedure.") : entries.map(({ element }) => element));
    choices.hidden = boxes.length < 2;
    tabs.hidden = source.tabs.length === 0;
    tellChoice();
  }

  function tellChoice(): void {
    chosen = boxes.filter(({ box }) => box.checked).map(({ name }) => name);
    fill(build, chosen.length === 0 ? "Build" : `Build ${countOf(chosen.length, "tab")}`);
    build.toggleAttribute("disabled", chosen.length === 0);
  }

  function choose(isChosen: boolean): void {
    for (const { name, box } of boxes) {
      box.checked = isChosen;
      if (isChosen) left.delete(name);
      else left.add(name);
    }
    tellChoice();
  }

  function makeEntry(source: CommissioningPlan, row: PlanRow<"jobs">): { readonly name: string; readonly box: Checkbox | null; readonly element: HTMLElement } {
    const { job: name, site, procedure, plannedDate } = row;
    const { current } = tabFamily(source.tabs, idOfJob(row), name);
    const progress = progressOf(row, current);
    const isClosed = progress.state === "closed" || row.state === "closed";
    const box = isClosed ? null : makeChoice(name);
    const facts = [site, procedure, plannedDate ?? ""].filter((fact) => fact !== "").join(" · ");
    const element = make(
      "li",
      { class: "bay-job" },
      box ?? make("span", { class: "bay-closed", "aria-hidden": true }, "✓"),
      make(
        "div",
        {},
        make("strong", {}, name),
        make("div", { class: "soft small" }, facts),
        make("div", { class: "small" }, describeProgress(progress)),
        progress.steps > 0 && make("fluent-progress-bar", { "aria-hidden": true, max: progress.steps, value: progress.done }),
        current !== null && make("details", {}, make("summary", { "aria-label": `More for ${name}` }, "More"), makeJobActions(pane, { name, sheet: current.sheet, isClosed }, refresh)),
      ),
    );
    return { name, box, element };
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
      await port.apply([{ kind: "select", sheet, area: { row: 0, column: 0, rows: 1, columns: 1 } }]);
      return { sentence: `Sheet ${sheet} lists how far every job is.` };
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
    tabs,
  );
  return {
    element: make("div", {}, jobs, makeBringBackGroup(pane, refresh)),
    show: () =>
      status.run("Read the jobs", async () => {
        await refresh();
        return null;
      }),
  };
}
