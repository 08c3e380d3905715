import { parseAreas, sheetNameOf, type Area } from "../../sheet";

/**
 * Lets the box that names the selected cell lead to a cell of another sheet, such as Racks!B5; the engine takes the address and stays on its sheet.
 *
 * `lead` goes to the area; false where there is no such sheet, which `say` is told. `reveal` is told where on the sheet in front the engine goes itself.
 */
export function followSheetNames(container: HTMLElement, lead: (sheet: string, area: Area) => boolean, reveal: (area: Area) => void, say: (sentence: string) => void): void {
  container.addEventListener("keydown", (event) => {
    const box = event.target;
    if (event.key !== "Enter" || !(box instanceof HTMLInputElement) || box.closest("[data-u-comp=defined-name]") === null) return;
    const place = placeOn(box.value, null);
    if (place === null) {
      // Within the sheet the engine leads there.
      const [area] = parseAreas(box.value.trim().toUpperCase());
      if (area !== undefined) reveal(area);
      return;
    }
    event.preventDefault();
    event.stopPropagation();
    const { sheet, area } = place;
    if (!lead(sheet, area)) say(`There is no sheet "${sheet}". Write the name as it stands on its tab.`);
  }, { capture: true });
}

/** Reads a place such as Racks!B5; without a sheet it is on `own`. Null where it names no cells. */
export function placeOn(text: string, own: string | null): { readonly sheet: string; readonly area: Area } | null {
  const [, prefix, address = ""] = /^(.+!)?([^!]+)$/.exec(text.trim()) ?? [];
  const [area] = parseAreas(address.replaceAll("$", "").toUpperCase());
  const sheet = prefix === undefined ? own : sheetNameOf(prefix);
  return area === undefined || sheet === null ? null : { sheet, area };
}
