import type { Paper, PrintPlan } from "../sheet";
import { make } from "../taskpane/elements/make";

/** Asks how a sheet is to be printed; null where the person leaves it as it is. What is not asked for stays as it was. */
export function askPrint(sheet: string, print: PrintPlan): Promise<PrintPlan | null> {
  const paper = choice("Paper", print.paper ?? "", [["", "As it is in the file"], ["A4", "A4"], ["Letter", "Letter"]]);
  const orientation = choice("Orientation", print.orientation, [["portrait", "Portrait"], ["landscape", "Landscape"]]);
  const fit = make("input", { type: "checkbox", ...(print.fitToWidth && { checked: true }) });
  const titles = make("input", { type: "text", size: 8, value: titleText(print), "aria-describedby": "print-titles-fault" });
  const fault = make("p", { id: "print-titles-fault", class: "fault", role: "status" });
  const form = make(
    "form",
    {},
    make("h2", { id: "print-set-up" }, `Print set-up of ${sheet}`),
    make("label", {}, "Paper", paper),
    make("label", {}, "Orientation", orientation),
    make("label", {}, fit, "Fit the columns to the width of a page"),
    make("label", {}, "Rows that stand again on every page, such as 1:4", titles),
    fault,
    make("div", { class: "buttons" }, make("button", { type: "submit" }, "Keep"), make("button", { type: "button", on: { click: () => { dialog.close(); } } }, "Leave as it is")),
    make("p", {}, "Save the workbook and print it in your spreadsheet program: a browser prints the page around the cells."),
  );
  const dialog = make("dialog", { class: "page-dialog", "aria-labelledby": "print-set-up" }, form);
  document.body.append(dialog);
  return new Promise((resolve) => {
    let answer: PrintPlan | null = null;
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      const titleRows = readTitles(titles.value);
      if (titleRows === null) {
        fault.textContent = `"${titles.value}" is no run of rows. Write such as 1:4, or nothing.`;
        titles.focus();
        return;
      }
      const chosen: Paper | undefined = paper.value === "A4" || paper.value === "Letter" ? paper.value : undefined;
      answer = { ...print, paper: chosen, orientation: orientation.value === "landscape" ? "landscape" : "portrait", fitToWidth: fit.checked, titleRows: titleRows[0] };
      dialog.close();
    });
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(answer);
    });
    dialog.showModal();
  });
}

function choice(name: string, value: string, options: readonly (readonly [value: string, label: string])[]): HTMLSelectElement {
  return make("select", { name }, options.map(([one, label]) => make("option", { value: one, ...(one === value && { selected: true }) }, label)));
}

function titleText({ titleRows }: PrintPlan): string {
  return titleRows === undefined ? "" : `${titleRows.row + 1}:${titleRows.row + titleRows.rows}`;
}

/** Reads a run of rows, in a list that is empty where none are wanted; null where the text is none. */
function readTitles(text: string): readonly NonNullable<PrintPlan["titleRows"]>[] | null {
  if (text.trim() === "") return [];
  const [, first, last = first] = /^\s*(\d{1,7})\s*(?::\s*(\d{1,7}))?\s*$/.exec(text) ?? [];
  const [row, rows] = [Number(first) - 1, Number(last) - Number(first) + 1];
  return first === undefined || row < 0 || rows < 1 ? null : [{ row, rows }];
}
