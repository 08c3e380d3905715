import { buildTabs } from "../../actions/build-tabs";
import type { JobOutcome } from "../../actions/put-tab";
import { momentOf } from "../../actions/moment";
import { countOf } from "../elements/count-of";
import { fill, make } from "../elements/make";
import { makeSign } from "../elements/sign";
import type { PaneContext } from "./view";

/** Builds the tabs of the named jobs with progress and a way to stop, and lists in `place` what became of each. */
export function buildWithReport({ port, host, status }: PaneContext, place: HTMLElement, names: readonly string[], refresh: () => Promise<void>): Promise<void> {
  fill(place);
  return status.run("Build tabs", async (work) => {
    const outcomes: JobOutcome[] = [];
    try {
      for await (const { done, all, outcome } of buildTabs(port, momentOf(host.now(), host.workbookName()), names)) {
        outcomes.push(outcome);
        // Tabs are whole at this point: here it can be stopped.
        await work.report({ done, total: all });
      }
    } finally {
      fill(place, listOutcomes("Report of the build", outcomes));
      await refresh();
    }
    const built = outcomes.filter((outcome) => outcome.built).length;
    const failed = outcomes.length - built;
    return failed === 0
      ? { sentence: `${countOf(built, "tab")} built.` }
      : { sentence: `${countOf(built, "tab")} built, ${failed} not: the report says why, and what to do.`, tone: "trouble" };
  });
}

/** Lists what became of each job: built or not, why, and what is worth knowing of it. */
export function listOutcomes(title: string, outcomes: readonly JobOutcome[]): HTMLElement | null {
  if (outcomes.length === 0) return null;
  return make(
    "div",
    { class: "bay-panel" },
    make("h3", {}, title),
    make(
      "ul",
      { class: "bay-list bay-scroll", tabindex: 0, "aria-label": title },
      outcomes.map(({ job, built, sentence, carried, kept, remarks }) =>
        make(
          "li",
          { class: "bay-outcome" },
          make("div", {}, make("span", { class: "bay-sign", "data-weight": built ? "good" : "stop", "aria-hidden": true }, makeSign(built ? "good" : "close")), make("strong", {}, job)),
          make(
            "div",
            {},
            built ? "" : "Not built. ",
            sentence,
            carried > 0 && ` ${countOf(carried, "record")} carried over.`,
            kept > 0 && ` ${countOf(kept, "record")} without a step kept at the end.`,
          ),
          remarks.map((remark) => make("div", { class: "soft small" }, remark)),
        ),
      ),
    ),
  );
}
