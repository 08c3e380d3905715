/** A part of the page that the keyboard can be in. */
export interface Region {
  readonly holds: (element: Element) => boolean;
  /** Gives it the keyboard; false where there is nothing in it to give it to. */
  readonly enter: () => boolean;
}

/** What takes the keys for the cells: the engine makes it, out of sight and at the end of the page. */
export const cellEditors = "[data-u-comp=editor]";
/** What the engine draws on, which gives the keyboard on to the cells. */
const canvases = "[data-u-comp=render-canvas]";

/** The cells, which `enter` gives the keyboard to. */
export function cellRegion(enter: () => boolean): Region {
  return { holds: (element) => element.closest(cellEditors) !== null, enter };
}

/** What opens the drop-downs of the toolbar: the engine makes it of what the keyboard passes over. */
const dropDowns = "[data-u-comp^=ribbon-toolbar] [aria-haspopup]";

/** What takes Escape for itself while it is open. */
const opened = "dialog[open], :popover-open, [role=menu]:not([hidden]):has(:focus)";

/** Keys that by themselves do nothing in a cell. */
const held = new Set(["Shift", "Control", "Alt", "Meta", "CapsLock", "Tab"]);

/**
 * Gives the cells, by `enter`, every key pressed while nothing on the page has the keyboard: after a click on the edge of the grid, say, or on the name of the plan.
 *
 * Else a search, a paste or a figure that is typed would go nowhere, unsaid.
 */
export function giveStrayKeys(enter: () => boolean): void {
  window.addEventListener("keydown", (event) => {
    const isStray = event.isTrusted && document.activeElement === document.body && document.getSelection()?.type !== "Range" && document.querySelector(opened) === null;
    if (!isStray || held.has(event.key) || /^F\d/.test(event.key) || !enter()) return;
    // What is typed goes to where the keyboard is now; a key that does something is looked for where it was pressed.
    if (event.key.length === 1 && !event.ctrlKey && !event.metaKey) return;
    event.stopPropagation();
    if (!document.activeElement!.dispatchEvent(new KeyboardEvent("keydown", event))) event.preventDefault();
  }, { capture: true });
}

/**
 * Lets F6 lead from one part of the page to the next, with Shift to the one before, and Escape from any of them to the first, the cells.
 *
 * The cells take Tab, which there goes to the next cell: without another key nobody would come out of them. So Tab from outside passes them over.
 */
export function leadThroughRegions(regions: readonly Region[]): void {
  // Before the grid has the key, which takes all of them.
  window.addEventListener("keydown", (event) => {
    if (event.key === "Tab") for (const one of document.querySelectorAll<HTMLElement>(`${cellEditors}, ${canvases}`)) one.tabIndex = -1;
    if (event.key === "Tab") for (const one of document.querySelectorAll<HTMLElement>(dropDowns)) one.tabIndex = 0;
    if (event.key !== "F6" || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    event.stopPropagation();
    const from = regions.findIndex(isIn);
    const step = event.shiftKey ? -1 : 1;
    for (let tries = 1; tries <= regions.length; tries += 1) {
      if (regions[(from + step * tries + tries * regions.length) % regions.length]!.enter()) return;
    }
  }, { capture: true });
  window.addEventListener("keydown", (event) => {
    const [cells] = regions;
    if (event.key !== "Escape" || event.defaultPrevented || document.querySelector(opened) !== null) return;
    if (regions.slice(1).some(isIn)) cells!.enter();
  });
}

function isIn({ holds }: Region): boolean {
  return document.activeElement !== null && holds(document.activeElement);
}

/** A part of the page whose first element that takes the keyboard is entered; it is looked up when it is asked for, as it may come late. */
export function regionOf(selector: string, first: string): Region {
  return {
    holds: (element) => element.closest(selector) !== null,
    enter() {
      const found = [...document.querySelectorAll<HTMLElement>(`${selector} :is(${first})`)].find((one) => one.checkVisibility());
      found?.focus();
      return found !== undefined;
    },
  };
}
