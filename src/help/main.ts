// Entry of the page that searches the help.
import { fill, make } from "../taskpane/elements/make";
import { excerptAround, searchAmong, type Section } from "./search";

/** As many as somebody reads; a longer question finds fewer. */
const most = 30;

const wayOn = "Try one word, or its beginning; all functions are listed under Functions.";

function countOf(hits: number): string {
  if (hits === 0) return "Nothing";
  if (hits > most) return `More than ${most} places`;
  return hits === 1 ? "One place" : `${hits} places`;
}

async function open(): Promise<void> {
  const input = document.querySelector("input")!;
  const found = document.querySelector("main")!.appendChild(make("div"));
  const answer = await fetch("search.json");
  if (!answer.ok) throw new Error(`search.json: ${answer.status}`);
  const search = searchAmong((await answer.json()) as Section[]);

  const show = (): void => {
    const query = input.value.trim();
    document.title = query === "" ? "Search the help · Baywright" : `${query} · Baywright help`;
    const hits = search(query);
    fill(
      found,
      make("p", { role: "status" }, query === "" ? "Write what you look for, such as rebuild time." : `${countOf(hits.length)} for “${query}”. ${hits.length === 0 ? wayOn : ""}`),
      make("ol", { class: "found" }, hits.slice(0, most).map(({ section, terms }) =>
        make("li", {},
          make("a", { href: section.id }, section.heading === "" ? section.title : `${section.title}: ${section.heading}`),
          make("p", {}, excerptAround(section.text, terms).map(({ text, isTerm }) => (isTerm ? make("mark", {}, text) : text))),
        ),
      )),
    );
  };

  input.value = new URLSearchParams(location.search).get("q") ?? "";
  input.addEventListener("input", () => {
    history.replaceState(null, "", input.value === "" ? location.pathname : `?${new URLSearchParams({ q: input.value })}`);
    show();
  });
  input.focus();
  show();
}

open().catch(() => {
  fill(document.querySelector("main")!, make("p", { role: "alert" }, "The list of the pages could not be loaded, so nothing can be searched. Load this page again, or go by the lists above."));
});
