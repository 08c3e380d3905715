import { fill, make } from "../taskpane/elements/make";

/** Where a cell stands on the page. */
export interface CellBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
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

export function makeNoteCard(): NoteCard {
  const element = make("div", { class: "note-card", role: "status", hidden: true, on: { focusout } });
  let end: ((goesBack: boolean) => void) | null = null;

  const place = ({ left, right, top }: CellBox) => {
    element.hidden = false;
    const { offsetWidth: width, offsetHeight: height } = element;
    const beside = right + 6 + width <= window.innerWidth ? right + 6 : Math.max(0, left - 6 - width);
    Object.assign(element.style, { left: `${beside}px`, top: `${Math.max(0, Math.min(top, window.innerHeight - height - 6))}px` });
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
      const field = make("textarea", { rows: 4, "aria-label": `Note on ${name}`, on: { keydown } });
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

  function focusout({ relatedTarget }: FocusEvent): void {
    if (!element.contains(relatedTarget as Node | null)) end?.(false);
  }

  function keydown(event: KeyboardEvent): void {
    // The grid takes every key that it sees.
    event.stopPropagation();
    if (event.key !== "Escape" && !(event.key === "Enter" && (event.ctrlKey || event.metaKey))) return;
    event.preventDefault();
    end?.(true);
  }
}
