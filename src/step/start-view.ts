import { countOf } from "../taskpane/elements/count-of";
import { make } from "../taskpane/elements/make";
import { makeButton, makeHeading } from "./parts";
import type { KeptTitle } from "./step-store";

/** What can be done before a file is open. */
export interface StartHands {
  readonly choose: () => Promise<void>;
  readonly open: (id: string) => Promise<void>;
  readonly forget: (title: KeptTitle) => Promise<void>;
}

/** Asks for the file: one from this device, or one from last time. */
export function startView(titles: readonly KeptTitle[], keeping: readonly string[], hands: StartHands): HTMLElement {
  return make(
    "article",
    {},
    makeHeading("One step at a time"),
    make("p", {}, "Choose the workbook that holds the commissioning tab of your job. It is read on this device and sent nowhere."),
    makeButton("Choose the .xlsx file", hands.choose, { look: "main" }),
    titles.length > 0 && make("h2", {}, "Open from last time"),
    make("ul", { class: "files" }, titles.map((title) => make(
      "li",
      {},
      makeButton([make("strong", {}, title.name), make("span", { class: "soft" }, describe(title))], () => hands.open(title.id)),
      makeButton("Remove", () => hands.forget(title), { label: `Remove ${title.name} from this device` }),
    ))),
    make("section", { class: "soft" }, make("h2", {}, "What this device keeps"), keeping.map((sentence) => make("p", {}, sentence))),
  );
}

function describe({ answers, givenBack, keptAt }: KeptTitle): string {
  const day = new Date(keptAt).toLocaleString();
  const told = answers === 0 ? "no answer yet" : `${countOf(answers, "answer")}, ${answers === givenBack ? "all given back" : `${answers - givenBack} not given back`}`;
  return ` ${told} · ${day}`;
}

/** Asks which tab of a file is meant. */
export function jobsView(jobs: readonly string[], choose: (job: string) => unknown): HTMLElement {
  return make("article", {}, makeHeading("Which job?"), make("ul", { class: "rows" }, jobs.map((job) => make("li", {}, makeButton(make("span", { class: "about" }, job), () => choose(job))))));
}
