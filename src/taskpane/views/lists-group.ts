import { dayOf } from "../../actions/moment";
import { addTables } from "../../actions/set-up";
import { readListFile, readListText } from "../../actions/read-list-file";
import { readPlanSheets } from "../../actions/read-plan";
import {
  openColumns, planImport, planPriceList, proposeMatches, questionOf, readList, waysToFind,
  type Import, type ImportPlan, type List, type PriceChange, type PriceListPlan,
} from "../../planning/plan/lists";
import { PlanModel } from "../../planning/plan/model";
import { columnsOf, tableKeys, tables, type TableKey } from "../../planning/plan/schema";
import { formatPercent, invalid } from "../../planning/text";
import { showCell, type CellValue } from "../../sheet";
import { makeButton } from "../elements/button";
import { countOf } from "../elements/count-of";
import { fill, make } from "../elements/make";
import { propose } from "../elements/preview";
import { showPanel } from "../elements/show-panel";
import type { PaneContext } from "./view";

/** Tables into which no list goes: what is in them is set-up's, or says how lists came in. */
const withoutLists: ReadonlySet<TableKey> = new Set<TableKey>(["settings", "assumptions", "lists"]);

/** Refusals that are listed; more than that nobody reads. */
const mostRefused = 50;

/** The part of the Plan view that brings lists in. */
export interface ListsGroup {
  readonly element: HTMLElement;
  readonly show: (model: PlanModel) => void;
}

/** Makes the part of the Plan view that brings a firm's own lists into the tables of the plan. */
export function makeListsGroup(pane: PaneContext, refresh: () => Promise<void>): ListsGroup {
  const [place, preview] = [make("div"), make("div")];
  const into = make("select", { "aria-label": "Table into which the list goes" });
  const pasted = make("textarea", { "aria-label": "Rows of the list", rows: 3, placeholder: "or paste the rows here, with their headers" });
  const element = make(
    "section",
    { class: "bay-group", hidden: true },
    make("h2", {}, "Lists that you have"),
    make("p", {}, "Rows of a file (.xlsx, .csv) or of the clipboard go into a table: you say which column goes where, and see every cell before it is written."),
    make("p", { class: "small soft" }, "The sheet Lists, which remembers how columns went, is added first."),
    make("div", { class: "bay-row" }, make("span", {}, "Into"), into, makeButton("Choose a file …", chooseFile)),
    pasted,
    make("div", { class: "bay-row" }, makeButton("Read what was pasted", () => open("Read the list", () => Promise.resolve({ cells: readListText(pasted.value), from: "the clipboard" })))),
    place,
  );

  const close = () => {
    fill(place);
    fill(preview);
  };

  async function chooseFile(): Promise<void> {
    const file = await pane.host.chooseFile([".xlsx", ".csv", ".txt", ".tsv"]);
    if (file !== null) await open("Read the list", () => readListFile(file.name, file.bytes, (bytes) => pane.host.readSnapshot(bytes)));
  }

  function open(title: string, read: () => Promise<{ readonly cells: readonly (readonly CellValue[])[]; readonly from: string }>): Promise<void> {
    close();
    return pane.status.run(title, async () => {
      const { cells, from } = await read();
      const [list, model] = [readList(cells), new PlanModel(await readPlanSheets(pane.port))];
      ask(into.value as TableKey, list, model, from);
      return null;
    });
  }

  function ask(key: TableKey, list: List, model: PlanModel, from: string): void {
    const columns = new Map(openColumns(key));
    const fields = proposeMatches(model, key, list).map((match, at) => {
      const goes = select(`Where ${list.headers[at]!} goes`, [["", "leave out"], ...[...columns].map(([name, { header }]) => [name, header] as const)], match.column ?? "");
      const reading = make("div");
      const field = { at, goes, reading, readAs: match.readAs };
      goes.addEventListener("change", () => askReading(field));
      askReading(field);
      return field;
    });
    function askReading(field: { readonly at: number; readonly goes: HTMLSelectElement; readonly reading: HTMLElement; readAs: string }): void {
      const column = columns.get(field.goes.value);
      const question = column === undefined ? null : questionOf(column, list.rows.map(({ cells }) => cells[field.at] ?? null));
      fill(field.reading);
      if (question === null) return;
      const choice = select(question.asks, [["", "choose"], ...question.choices.map((one) => [one, one] as const)], question.choices.includes(field.readAs) ? field.readAs : "");
      choice.addEventListener("change", () => (field.readAs = choice.value));
      field.readAs = choice.value;
      fill(field.reading, make("div", { class: "small" }, question.asks), choice);
    }
    const hasRows = model.rows(key).length > 0;
    const names = new Map(columnsOf(key).map(([name, { header }]) => [name, header]));
    const mapped = new Set(fields.map(({ goes }) => goes.value));
    const ways = new Map(waysToFind(key).map((way) => [way.map((name) => names.get(name) ?? name).join(" and "), way]));
    const proposed = hasRows ? ([...ways].find(([, way]) => mapped.has(way[0]!))?.[0] ?? "") : "";
    const by = select("Rows are found again by", [["", "nothing: every row is new"], ...[...ways.keys()].map((way) => [way, way] as const)], proposed);
    const refusedPlace = make("div");
    const isAsked = ({ reading }: { readonly reading: HTMLElement }) => reading.childElementCount > 0;
    const asImport = (): Import => {
      const open = fields.find((field) => isAsked(field) && field.readAs === "");
      if (open !== undefined) {
        const header = list.headers[open.at]!;
        open.reading.querySelector("select")?.focus();
        throw invalid(header, null, `${header}: ${open.reading.firstChild?.textContent ?? ""} Choose it below the column.`);
      }
      const matches = fields.map((field) => ({ column: field.goes.value === "" ? null : field.goes.value, readAs: isAsked(field) ? field.readAs : "" }));
      return { table: key, list, matches, keyColumns: ways.get(by.value) ?? [] };
    };
    const isPriceList = key === "prices";
    const [listName, listDay] = [make("input", { type: "text", "aria-label": "Name of the price list" }), make("input", { type: "date", "aria-label": "Day of the price list" })];
    [listName.value, listDay.value] = [from, dayOf(pane.host.now())];
    const planGiven = (now: PlanModel, given: Import): ImportPlan & Partial<PriceListPlan> =>
      isPriceList ? planPriceList(now, { ...given, name: listName.value, day: listDay.value }) : planImport(now, given);
    const show = () =>
      propose(pane, preview, {
        title: `Bring the list into ${tables[key].name}`,
        read: readPlanSheets,
        planner: async () => {
          const given = asImport();
          await addTables(pane.port, ["lists"]);
          return (workbook) => {
            const { changes, added, updated, refused, changed = [], stop = null } = planGiven(new PlanModel(workbook), given);
            const counts = make("p", {}, `${countOf(added, "row")} new, ${countOf(updated, "row")} changed.`);
            fill(refusedPlace, stop === null && counts, changed.length > 0 && listChanged(changed), refused.length > 0 && listRefused(refused));
            if (stop !== null) throw invalid("list", null, stop);
            return changes;
          };
        },
        nothing: "The table says all of it already.",
        written: async () => {
          close();
          await refresh();
        },
      });
    showPanel(
      place,
      `${countOf(list.rows.length, "row")} of ${from}`,
      make("ul", { class: "bay-list" }, fields.map(({ at, goes, reading }) => {
        return make("li", { class: "bay-field" }, make("div", {}, make("strong", {}, list.headers[at]), ` ${sample(list, at)}`), goes, reading);
      })),
      hasRows && !isPriceList && make("div", { class: "bay-field" }, make("div", {}, "Rows are found again by"), by),
      isPriceList && make("div", { class: "bay-field" }, make("div", {}, "Name and day of the list, which stand beside each price that comes from it"), listName, " ", listDay),
      make("div", { class: "bay-row" }, makeButton("Show what would be written", show, { appearance: "primary" }), makeButton("Close", close)),
      refusedPlace,
      preview,
    );
  }

  return {
    element,
    show: (model) => {
      const keys = tableKeys.filter((key) => model.table(key) !== null && !withoutLists.has(key));
      element.hidden = keys.length === 0;
      const before = into.value;
      if (keys.length !== into.options.length) fill(into, keys.map((key) => make("option", { value: key, selected: key === (before || "arrays") }, tables[key].name)));
    },
  };
}

function select(label: string, options: readonly (readonly [value: string, shown: string])[], value: string): HTMLSelectElement {
  const made = make("select", { "aria-label": label }, options.map(([one, shown]) => make("option", { value: one }, shown)));
  made.value = value;
  return made;
}

/** Shows what the first rows have in a column. */
function sample(list: List, at: number): string {
  return list.rows.slice(0, 3).map(({ cells }) => showCell(cells[at]).slice(0, 24)).join(" · ");
}

/** Price changes that are listed; the preview has every cell. */
const mostChanged = 20;

function listChanged(changed: readonly PriceChange[]): HTMLElement {
  const left = changed.length - mostChanged;
  const share = ({ before, after }: PriceChange): string => (before === 0 ? "" : ` (${after > before ? "+" : ""}${formatPercent(after / before - 1)})`);
  return make(
    "details",
    { open: true },
    make("summary", {}, `${countOf(changed.length, "price")} ${changed.length === 1 ? "changes" : "change"}`),
    make("ul", { class: "bay-list" }, changed.slice(0, mostChanged).map((one) => make("li", {}, `${one.part}: ${one.before} to ${one.after}${share(one)}`))),
    left > 0 && make("p", { class: "soft small" }, `${left} more, by less.`),
  );
}

function listRefused(refused: readonly string[]): HTMLElement {
  const left = refused.length - mostRefused;
  return make(
    "details",
    { open: true },
    make("summary", {}, `Left out: ${refused.length}`),
    make("ul", { class: "bay-list" }, refused.slice(0, mostRefused).map((text) => make("li", {}, text))),
    left > 0 && make("p", { class: "soft small" }, `${left} more.`),
  );
}
