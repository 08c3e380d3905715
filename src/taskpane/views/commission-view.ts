import { jobsOf, readCommissioningPlan, idOfJob, tabFamily, isClosed, type CommissioningPlan } from "../../planning/commissioning";
import type { PlanRow } from "../../planning/workbook-model";
import { makeButton } from "../elements/button";
import { countOf } from "../elements/count-of";
import { fill, make } from "../elements/make";
import { buildWithReport } from "./build-report";
import type { PaneContext, View } from "./view";

type Job = PlanRow<"jobs">;

/** Makes the Commission view: the jobs of the plan, their tabs, and all that is done with a tab from its first build to its handover. */
export function makeCommissionView(pane: PaneContext): View {
  const { port, status } = pane;
  const list = make("ul", { class: "bay-list" });
  const build = makeButton("Build", () => run(), { appearance: "primary" });
  const all = makeButton("Choose all", () => choose(true), { size: "small", appearance: "subtle" });
  const none = makeButton("Choose none", () => choose(false), { size: "small", appearance: "subtle" });
  const report = make("div");
  /** Jobs that are not chosen, by name: a new job is chosen from the start. */
  const left = new Set<string>();
  let jobs: readonly Job[] = [];

  const refresh = async () => {
    const source = readCommissioningPlan(await port.read());
    jobs = jobsOf(source);
    fill(list, jobs.length === 0 ? make("li", {}, "No job stands in the plan yet. Write one row a piece of work into Jobs: its name, site and procedure.") : jobs.map((job) => make("li", {}, entry(source, job))));
    tellChoice();
  };

  const chosen = () => jobs.filter(({ job, state }) => state !== "closed" && !left.has(job));

  function choose(isChosen: boolean): void {
    for (const { job } of jobs) if (isChosen) left.delete(job); else left.add(job);
    for (const box of list.querySelectorAll<HTMLElement & { checked: boolean }>("fluent-checkbox:not([disabled])")) box.checked = isChosen;
    tellChoice();
  }

  function tellChoice(): void {
    const count = chosen().length;
    fill(build, count === 0 ? "Build" : `Build ${countOf(count, "tab")}`);
    build.toggleAttribute("disabled", count === 0);
    all.hidden = none.hidden = jobs.length < 2;
  }

  function entry(source: CommissioningPlan, row: Job): HTMLElement {
    const { current } = tabFamily(source.tabs, idOfJob(row), row.job);
    const closed = row.state === "closed" || (current !== null && isClosed(current));
    const id = `bay-job-${row.row}`;
    const box = make("fluent-checkbox", { id, disabled: closed, "aria-label": `Build ${row.job}` }) as HTMLElement & { checked: boolean };
    box.checked = !closed && !left.has(row.job);
    box.addEventListener("change", () => {
      if (box.checked) left.delete(row.job);
      else left.add(row.job);
      tellChoice();
    });
    const facts = [row.site, row.procedure, row.plannedDate].filter((fact) => fact !== null && fact !== "").join(" · ");
    return make(
      "div",
      { class: "bay-job" },
      box,
      make(
        "div",
        {},
        make("label", { for: id }, make("strong", {}, row.job)),
        make("div", { class: "soft small" }, facts),
        make("div", { class: "small" }, current === null ? "No tab yet" : closed ? `Build ${current.build}, closed and sealed` : `Build ${current.build}`),
      ),
    );
  }

  const run = () =>
    buildWithReport(
      pane,
      report,
      chosen().map(({ job }) => job),
      refresh,
    );

  return {
    element: make("div", {}, make("section", { class: "bay-group" }, make("h2", {}, "Jobs"), list, make("div", { class: "bay-row bay-after" }, build, all, none), report)),
    show: () => status.run("Read the jobs", async () => (await refresh(), null)),
  };
}
