import { dayOf } from "../../actions/moment";
import { readShown } from "../../actions/read-plan";
import { checkPlan, mendsOf, rules, type Finding, type Weight } from "../../planning/checks";
import { cellAddress, type WorkbookSnapshot } from "../../sheet";
import { makeButton } from "../elements/button";
import { describeAge } from "../elements/describe-age";
import { goTo } from "../elements/go-to";
import { fill, make } from "../elements/make";
import { pace } from "../elements/pace";
import { propose } from "../elements/preview";
import { makeSign } from "../elements/sign";
import { explain } from "../elements/work";
import type { PaneContext, View } from "./view";

/** The least time between the starts of two checks while somebody types. */
const paceMilliseconds = 300;

/** How many findings of one weight are listed at first, and by how many more at a time. */
const listedAtOnce = 50;

const weights: readonly { readonly weight: Weight; readonly name: string; readonly meaning: string }[] = [
  { weight: "stop", name: "Stop", meaning: "built like this it will not work, or the data is at risk" },
  { weight: "warn", name: "Warn", meaning: "it may go wrong" },
  { weight: "note", name: "Note", meaning: "worth knowing" },
];

/** Makes the Check view: what is wrong with the plan, by weight, with the way to each cell and to each mend. */
export function makeCheckView(pane: PaneContext): View {
  const { port, host, status } = pane;
  const counts = make("p", { role: "status", class: "bay-weights" });
  const age = make("span", { class: "soft small" });
  const mendPlace = make("div");
  const lists = make("div", { tabindex: -1 });
  const mendAll = makeButton("Mend all …", () =>
    propose(pane, mendPlace, {
      title: "Mend all",
      planner: () => (workbook) => mendsOf(check(workbook)),
      nothing: "No finding has a mend that can be written for you.",
      written: run,
    }),
  );
  const listed: Record<Weight, number> = { stop: listedAtOnce, warn: listedAtOnce, note: listedAtOnce };
  let findings: readonly Finding[] = [];
  let answered: number | null = null;
  const check = (workbook: WorkbookSnapshot): readonly Finding[] => checkPlan(workbook, rules, dayOf(host.now()));

  async function run(): Promise<void> {
    try {
      const found = check(await readShown(port));
      answered = host.now().getTime();
      // An answer that says the same leaves the list alone, with whatever a person has open in it.
      if (found.length !== findings.length || found.some((finding, at) => !isSame(finding, findings[at]!))) {
        findings = found;
        show();
      }
    } catch (thrown) {
      status.say(explain(thrown, "Check the plan"));
    }
    tellAge();
  }

  function tellAge(): void {
    fill(age, answered === null ? "Not checked yet" : `Checked ${describeAge(host.now().getTime() - answered)}`);
  }

  function show(): void {
    const of = (weight: Weight) => findings.filter((finding) => finding.weight === weight);
    const countsByWeight = weights.map(({ weight, name }) => make("span", {}, signOf(weight), ` ${name} `, make("strong", {}, of(weight).length)));
    fill(counts, findings.length === 0 ? "The checks find nothing wrong with the plan." : countsByWeight);
    mendAll.hidden = !findings.some(({ mend }) => mend !== undefined);
    const hadFocus = lists.contains(document.activeElement);
    fill(lists, weights.map(({ weight, name, meaning }) => of(weight).length > 0 && listOf(weight, name, meaning, of(weight))));
    if (hadFocus) lists.focus();
  }

  function listOf(weight: Weight, name: string, meaning: string, found: readonly Finding[]): HTMLElement {
    const more = found.length - listed[weight];
    const showMore = () => {
      listed[weight] += listedAtOnce;
      show();
    };
    return make(
      "section",
      { class: "bay-group" },
      make("h2", {}, signOf(weight), ` ${name}: ${found.length}`, make("span", { class: "unseen" }, `, ${meaning}`)),
      make("ul", { class: "bay-list" }, found.slice(0, listed[weight]).map((finding) => make("li", {}, entry(finding)))),
      more > 0 && makeButton(`Show ${Math.min(more, listedAtOnce)} of ${more} more`, showMore, { size: "small", appearance: "subtle" }),
    );
  }

  function entry(finding: Finding): HTMLElement {
    const { sheet, sentence, mend } = finding;
    const place = make("div");
    const title = (mend?.description ?? "").replace(/\.$/, "");
    const open = () => goTo(pane, "Go to the cell", sheet, finding);
    const mendIt = () => propose(pane, place, { title, planner: () => (workbook) => mendsOf(check(workbook).filter((one) => isSame(one, finding))), nothing: "This is mended already.", written: run });
    return make(
      "div",
      {},
      make(
        "div",
        { class: "bay-finding" },
        make("button", { type: "button", class: "bay-plain", on: { click: open } }, sentence, " ", make("span", { class: "bay-place" }, `${sheet} ${cellAddress(finding)}`)),
        mend !== undefined && makeButton("Mend …", mendIt, { size: "small", label: `Mend: ${title}` }),
      ),
      place,
    );
  }

  show();
  setInterval(tellAge, 1000);
  return {
    element: make(
      "div",
      {},
      make("h2", { class: "unseen" }, "What the checks find"),
      counts,
      age,
      make("div", { class: "bay-row bay-after" }, mendAll, makeButton("Check again", run)),
      mendPlace,
      lists,
    ),
    show: run,
    changed: pace(run, paceMilliseconds),
  };
}

function isSame(one: Finding, other: Finding): boolean {
  return one.rule === other.rule && one.sheet === other.sheet && one.row === other.row && one.column === other.column && one.sentence === other.sentence;
}

function signOf(weight: Weight): HTMLElement {
  return make("span", { class: "bay-sign", "data-weight": weight, "aria-hidden": true }, makeSign(weight));
}
