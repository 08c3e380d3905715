import { cutText } from "../planning/text";
import { fill, make } from "../taskpane/elements/make";
import { isEmpty, type ShownCell } from "../workbook/document/sheet-filter";
import type { FilterCondition } from "../workbook/document/workbook-document";
import { choiceOf, choices, describeCondition, readValue, valueFault } from "./filter-choices";
import type { CellBox } from "./note-card";

/** What a filter is asked for a column. */
export interface FilterQuestion {
  /** The header of the column. */
  readonly name: string;
  readonly condition: FilterCondition | undefined;
  /** The cells to choose from: those that the conditions of other columns let through. */
  readonly cells: readonly ShownCell[];
  /** Why another condition cannot be chosen here, where it cannot. */
  readonly refusal: string | null;
}

export type FilterAnswer =
  | { readonly does: "filter"; readonly condition: FilterCondition | undefined }
  | { readonly does: "sort"; readonly descending: boolean }
  | { readonly does: "show-all" };

/** The card on which a column of a filter is asked what it shows. */
export interface FilterCard {
  readonly element: HTMLElement;
  /** Asks below a cell; `end` is told the answer, or null where the card was left without one. */
  ask(question: FilterQuestion, cell: CellBox, end: (answer: FilterAnswer | null) => void): void;
  /** Leaves the card without an answer. */
  close(): void;
}

/** Most values that are listed at once: more nobody goes through. */
const mostListed = 500;
/** Most characters of one: what is alike that far is rare, and a cell may hold pages. */
const longestListed = 200;
const nothing = "(empty)";

export function makeFilterCard(): FilterCard {
  const element = make("div", { class: "filter-card", role: "dialog", hidden: true, on: { keydown } });
  let end: ((answer: FilterAnswer | null) => void) | null = null;
  let apply = (): void => undefined;

  const finish = (answer: FilterAnswer | null) => {
    const told = end;
    end = null;
    element.hidden = true;
    fill(element);
    told?.(answer);
  };
  // Whatever is pressed elsewhere on the page leaves the card, as it leaves a menu.
  window.addEventListener("pointerdown", ({ target }) => {
    if (end !== null && !element.contains(target as Node)) finish(null);
  }, { capture: true });

  return {
    element,
    ask(question, { left, right, top, bottom }, told) {
      finish(null);
      end = told;
      element.setAttribute("aria-label", `Filter of ${question.name}`);
      const first = question.refusal === null ? drawChoices(question) : drawRefusal(question.refusal);
      element.hidden = false;
      // Below its cell, or above it where there is more room.
      const { offsetWidth: width, offsetHeight: height } = element;
      const below = bottom + 2 + height <= window.innerHeight || window.innerHeight - bottom >= top;
      const y = below ? Math.min(bottom + 2, window.innerHeight - height - 4) : top - 2 - height;
      Object.assign(element.style, { left: `${Math.max(4, Math.min(Math.max(left, right - width), window.innerWidth - width - 4))}px`, top: `${Math.max(4, y)}px` });
      first.focus();
    },
    close() {
      finish(null);
    },
  };

  function drawRefusal(refusal: string): HTMLElement {
    const all = make("button", { type: "button", on: { click: () => { finish({ does: "show-all" }); } } }, "Show all rows");
    apply = () => { finish({ does: "show-all" }); };
    fill(element, make("p", {}, refusal), make("p", { class: "hands" }, all, leaving()));
    return all;
  }

  function leaving(): HTMLElement {
    return make("button", { type: "button", on: { click: () => { finish(null); } } }, "Cancel");
  }

  function drawChoices({ name, condition, cells }: FilterQuestion): HTMLElement {
    const values = valuesOf(cells, condition);
    const chosen = choiceOf(condition, cells);
    const isList = condition === undefined || (condition.kind === "list" && chosen === null);
    const asItIs = !isList && chosen === null;
    const how = make(
      "select",
      { "aria-label": "Show rows whose value", on: { change: refresh } },
      make("option", { value: "" }, "is ticked below"),
      asItIs && make("option", { value: "as it is" }, describeCondition(condition, cells)),
      Object.entries(choices).map(([choice, { label }]) => make("option", { value: choice }, label)),
    );
    how.value = isList ? "" : (chosen?.choice ?? "as it is");
    const fields = ["Value", "Upper value"].map((label, at) =>
      make("input", { type: "text", "aria-label": label, value: chosen?.values[at] ?? "", on: { input: () => { say(""); } } }));
    const search = make("input", { type: "search", placeholder: "Search", "aria-label": `Search the values of ${name}`, on: { input: find } });
    const all = make("input", { type: "checkbox", on: { change: tickAll } });
    const rows = make("div", { class: "values", role: "group", "aria-label": `Values of ${name}` });
    const fault = make("p", { class: "fault", role: "status" });
    const list = make("div", { class: "list" }, search, make("label", {}, all, make("span", {}, "All")), rows);
    const ticked = new Set(values.filter(({ isShown }) => isShown).map(({ key }) => key));
    /** What is ticked among the values found, while something is searched for: it alone is shown then. */
    let found: { readonly keys: readonly string[]; readonly ticked: Set<string> } | null = null;
    const byNumber = cells.some(({ value }) => typeof value === "number");
    const sorts = [[byNumber ? "Smallest first" : "Sort A to Z", false], [byNumber ? "Largest first" : "Sort Z to A", true]] as const;
    fill(
      element,
      make("p", { class: "sorts" }, sorts.map(([label, descending]) => make("button", { type: "button", on: { click: () => { finish({ does: "sort", descending }); } } }, label))),
      make("label", { class: "how" }, make("span", {}, "Show rows whose value"), how),
      ...fields, list, fault,
      make(
        "p",
        { class: "hands" },
        make("button", { type: "button", disabled: condition === undefined, on: { click: () => { finish({ does: "filter", condition: undefined }); } } }, "Clear"),
        leaving(),
        make("button", { type: "button", class: "first", on: { click: () => { apply(); } } }, "Apply"),
      ),
    );
    apply = answer;
    listValues();
    refresh();
    return how.value === "" ? search : (fields.find(({ hidden }) => !hidden) ?? how);

    function refresh(): void {
      const asks = choices[how.value]?.asks ?? 0;
      fields.forEach((field, at) => (field.hidden = at >= asks));
      list.hidden = how.value !== "";
      say("");
    }

    function find(): void {
      const wanted = search.value.trim().toLowerCase();
      const keys = values.filter(({ key }) => key.includes(wanted)).map(({ key }) => key);
      found = wanted === "" ? null : { keys, ticked: new Set(keys) };
      listValues();
      say("");
    }

    function listValues(): void {
      const now = found?.ticked ?? ticked;
      const listed = found === null ? values : values.filter(({ key }) => found!.keys.includes(key));
      fill(
        rows,
        listed.slice(0, mostListed).map(({ key, text }) => {
          const box = make("input", { type: "checkbox", ...(now.has(key) && { checked: true }) });
          box.addEventListener("change", () => {
            if (box.checked) now.add(key);
            else now.delete(key);
            tellAll(listed.length, now);
          });
          return make("label", {}, box, make("span", {}, cutText(text, longestListed)));
        }),
        listed.length > mostListed && make("p", {}, `${listed.length - mostListed} more. Search to see them.`),
        listed.length === 0 && make("p", {}, "No value has that in it."),
      );
      tellAll(listed.length, now);
    }

    function tellAll(count: number, now: ReadonlySet<string>): void {
      all.checked = count > 0 && now.size === count;
      all.indeterminate = now.size > 0 && now.size < count;
      say("");
    }

    function tickAll(): void {
      const now = found?.ticked ?? ticked;
      for (const key of found?.keys ?? values.map(({ key: one }) => one)) {
        if (all.checked) now.add(key);
        else now.delete(key);
      }
      listValues();
    }

    function say(sentence: string): void {
      fault.textContent = sentence;
    }

    function answer(): void {
      const choice = choices[how.value];
      if (how.value === "as it is") finish({ does: "filter", condition });
      else if (choice === undefined) answerList(found?.ticked ?? ticked);
      else {
        const written = fields.slice(0, choice.asks).map(({ value }) => readValue(value, choice, cells));
        const faults = written.map((value) => valueFault(value, choice, cells));
        const faulty = faults.findIndex((sentence) => sentence !== null);
        if (faulty >= 0) {
          say(faults[faulty]!);
          fields[faulty]!.focus();
        } else finish({ does: "filter", condition: choice.condition(written[0] ?? "", written[1] ?? "") });
      }
    }

    function answerList(now: ReadonlySet<string>): void {
      const shown = values.filter(({ key }) => now.has(key));
      if (shown.length === 0) say("No row would be left. Tick a value, or press Clear.");
      else if (shown.length === values.length) finish({ does: "filter", condition: undefined });
      else finish({ does: "filter", condition: { kind: "list", texts: shown.flatMap(({ key, text }) => (key === "" ? [] : [text])), blank: now.has("") } });
    }
  }

  function keydown(event: KeyboardEvent): void {
    // The grid takes every key that it sees.
    event.stopPropagation();
    const { target } = event;
    if (event.key === "Escape") finish(null);
    else if (event.key === "Enter" && !(target instanceof HTMLButtonElement)) apply();
    else if ((event.key === "ArrowDown" || event.key === "ArrowUp") && target instanceof HTMLInputElement) {
      const boxes = [...element.querySelectorAll<HTMLInputElement>("input")].filter((one) => one.checkVisibility());
      boxes[boxes.indexOf(target) + (event.key === "ArrowDown" ? 1 : -1)]?.focus();
    } else if (event.key === "Tab") {
      // Round and round, as in a dialog.
      const stops = [...element.querySelectorAll<HTMLElement>("button:enabled, input, select")].filter((one) => one.checkVisibility());
      const at = stops.indexOf(target as HTMLElement);
      if (at !== (event.shiftKey ? 0 : stops.length - 1)) return;
      stops.at(event.shiftKey ? -1 : 0)?.focus();
    } else return;
    event.preventDefault();
  }
}

interface Value {
  /** What tells it from others; nothing for an empty cell. */
  readonly key: string;
  readonly text: string;
  readonly isShown: boolean;
}

/** Lists what stands in a column, each once: numbers by their size, then texts, and last what is empty. */
function valuesOf(cells: readonly ShownCell[], condition: FilterCondition | undefined): Value[] {
  const byKey = new Map<string, ShownCell>();
  for (const cell of cells) {
    const key = isEmpty(cell.text) ? "" : cell.text.trim().toLowerCase();
    if (!byKey.has(key)) byKey.set(key, cell);
  }
  const wanted = condition?.kind === "list" ? new Set(condition.texts.map((text) => text.trim().toLowerCase())) : null;
  const rank = ([key, { value }]: readonly [string, ShownCell]) => (key === "" ? 2 : typeof value === "number" ? 0 : 1);
  return [...byKey]
    .sort((one, other) => rank(one) - rank(other) || (rank(one) === 0 ? Number(one[1].value) - Number(other[1].value) : one[0].localeCompare(other[0], "en", { numeric: true })))
    .map(([key, { text }]) => ({
      key,
      text: key === "" ? nothing : text,
      isShown: wanted === null || (key === "" ? (condition as { blank: boolean }).blank : wanted.has(key)),
    }));
}
