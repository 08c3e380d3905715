import { fill, make } from "../taskpane/elements/make";
import { cellEditors } from "./regions";

/** Where a cell stands on the page, and where the cells end on the right. */
export interface CellBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly edge: number;
}

/** A note to be shown; `caption` says what it is where it is no plain note. */
export interface ShownNote {
  readonly text: string;
  readonly caption?: string | undefined;
}

/** The card on which notes of cells are read and written. */
export interface NoteCard {
  readonly element: HTMLElement;
  /** Shows a note beside its cell, or none; while one is being written it stays. */
  show(note: ShownNote | null, cell?: CellBox): void;
  /**
   * Gives the keyboard to the note of a cell. `end` is told what is to stand there once the card is left, by whatever way: what was written is not lost.
   * `goesBack` tells that the keyboard belongs to the cells again.
   */
  write(name: string, text: string, cell: CellBox, end: (text: string, goesBack: boolean) => void): void;
  /** Ends what is being written, as leaving the card does. */
  finish(): void;
}

/** Pixels between a cell and its note. */
const gap = 6;

export function makeNoteCard(): NoteCard {
  const element = make("div", { class: "note-card", role: "status", hidden: true, on: { focusout } });
  let end: ((goesBack: boolean) => void) | null = null;
  let isLeaving = false;
  // Seen before anybody acts on them.
  window.addEventListener("pointerdown", ({ target }) => { isLeaving = !element.contains(target as Node); }, { capture: true });
  window.addEventListener("keydown", ({ key }) => { isLeaving = key === "Tab" || key === "F6"; }, { capture: true });

  const place = ({ left, right, top, bottom, edge }: CellBox) => {
    element.hidden = false;
    const { offsetWidth: width, offsetHeight: height } = element;
    // On the right of its cell, else on the left, and below it where neither has room.
    const [x, y] = right + gap + width <= edge ? [right + gap, top] : left - gap - width >= 0 ? [left - gap - width, top] : [Math.min(left, edge - width), bottom + gap];
    Object.assign(element.style, { left: `${Math.max(0, x)}px`, top: `${Math.max(0, Math.min(y, window.innerHeight - height - gap))}px` });
  };
  const leave = () => {
    element.hidden = true;
    element.classList.remove("is-open");
    fill(element);
  };

  return {
    element,
    show(note, cell) {
      if (end !== null) return;
      if (note === null || cell === undefined) {
        leave();
        return;
      }
      fill(element, note.caption !== undefined && make("p", { class: "caption" }, note.caption), make("p", { class: "words" }, note.text));
      place(cell);
    },
    write(name, text, cell, told) {
      end?.(false);
      isLeaving = false;
      const field = make("textarea", { rows: rowsFor(text), "aria-label": `Note on ${name}`, on: { keydown } });
      field.value = text;
      const remove = make("button", { type: "button", on: { click: () => { field.value = ""; end?.(true); } } }, "Delete the note");
      const done = make("button", { type: "button", on: { click: () => end?.(true) } }, "Done");
      fill(element, make("p", { class: "caption" }, `Note on ${name}`), field, make("p", { class: "hands" }, text !== "" && remove, done));
      element.classList.add("is-open");
      end = (goesBack) => {
        end = null;
        const written = field.value.trim() === "" ? "" : field.value;
        leave();
        told(written, goesBack);
      };
      place(cell);
      field.focus();
    },
    finish() {
      end?.(false);
    },
  };

  function focusout({ target, relatedTarget }: FocusEvent): void {
    const to = relatedTarget as Element | null;
    if (end === null || element.contains(to)) return;
    // The engine gives the keyboard to the cells some time after a click, when a note may be open already: nobody has left it.
    if (!isLeaving && to?.closest(cellEditors)) (target as HTMLElement).focus();
    else end(false);
  }

  function keydown(event: KeyboardEvent): void {
    // The grid takes every key that it sees.
    event.stopPropagation();
    if (event.key !== "Escape" && !(event.key === "Enter" && (event.ctrlKey || event.metaKey))) return;
    event.preventDefault();
    end?.(true);
  }
}

/** How many rows a text takes on the card, within what looks like a card. */
function rowsFor(text: string): number {
  const rows = text.split("\n").reduce((sum, line) => sum + 1 + Math.floor(line.length / 34), 0);
  return Math.min(12, Math.max(4, rows));
}
