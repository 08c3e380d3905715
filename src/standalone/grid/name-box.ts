import { parseAreas, sheetNameOf, type Area } from "../../sheet";

/** A cell, or anything with a colon: whole columns and rows are written with one, and a word by itself is a name. */
const isAddress = /^(\$?[a-z]+\$?\d+|[^\s:]+:[^\s:]+)$/i;

/** What the box that names the selected cell asks of the grid. */
export interface NameBoxWays {
  /** Goes to an area; false where there is no such sheet. */
  readonly lead: (sheet: string, area: Area) => boolean;
  /** The name of the sheet in front. */
  readonly own: () => string;
  /** Tells whether a text is a name that somebody gave to cells, to which the engine leads. */
  readonly isName: (text: string) => boolean;
  /** Gives the keyboard to the cells. */
  readonly focus: () => void;
  readonly say: (sentence: string) => void;
}

/**
 * Lets the box that names the selected cell lead to what is written into it: B5, B5:D9, C:C, 5:7, with another sheet too, such as Racks!B5.
 *
 * The engine stays on its sheet, selects nothing that is a cell for whole columns and rows, and is silent where it can lead nowhere. Escape leads back to the cells.
 */
export function followAddresses(container: HTMLElement, { lead, own, isName, focus, say }: NameBoxWays): void {
  container.addEventListener("keydown", (event) => {
    const box = event.target;
    if (!(box instanceof HTMLInputElement) || box.closest("[data-u-comp=defined-name]") === null) return;
    // The engine writes back first what stood there.
    if (event.key === "Escape") setTimeout(focus);
    const text = box.value.trim();
    if (event.key !== "Enter" || isName(text)) return;
    event.preventDefault();
    event.stopPropagation();
    const place = placeOn(text, own());
    if (place === null) say(`"${text}" is no address of cells. Write one such as B5, B5:D9 or Racks!B5.`);
    else if (!lead(place.sheet, place.area)) say(`There is no sheet "${place.sheet}". Write the name as it stands on its tab.`);
  }, { capture: true });
}

/** Reads a place such as Racks!B5; without a sheet it is on `own`. Null where it names no cells. */
export function placeOn(text: string, own: string): { readonly sheet: string; readonly area: Area } | null {
  const [, prefix, address = ""] = /^(.+!)?([^!]+)$/.exec(text.trim()) ?? [];
  const [area] = isAddress.test(address.trim()) ? parseAreas(address.toUpperCase()) : [];
  return area === undefined ? null : { sheet: prefix === undefined ? own : sheetNameOf(prefix), area };
}
