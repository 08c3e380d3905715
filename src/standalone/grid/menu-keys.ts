import { RANGE_TYPE, type Univer } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import type { IMouseEvent } from "@univerjs/engine-render";
import { ContextMenuPosition, IContextMenuService, ILayoutService } from "@univerjs/ui";
import type { CellPlace } from "../../sheet";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";
import { cellOnPage } from "./cell-on-page";
import { filterCommands } from "./show-filters";

/** What the engine opens: menus of cells and tabs, menus within these, the list of what a cell may hold, and further tools of the toolbar. */
const [menuPanels, innerPanels] = [".univer-popup > section > div", "[data-u-context-menu-submenu] > div"] as const;
const [listPanels, toolPanels] = ["[data-u-comp=sheets-dropdown-list]", "[data-slot=popover-content]"] as const;
/** What stands side by side in a panel: the borders. */
const inRows = `${toolPanels} a.univer-cursor-pointer`;
const panels = [menuPanels, innerPanels, listPanels, toolPanels].join();
/** What can be chosen in them; some of it the engine makes of what takes no key. */
const choices = `button:enabled, input:enabled, ${listPanels} .univer-cursor-pointer, ${inRows}, ${toolPanels} [aria-haspopup]`;
/** What opens further tools. */
const moreTools = "[data-u-comp^=ribbon-toolbar] [data-slot=popover-trigger]";
/** How many frames a panel may take to come up. */
const mostFrames = 30;

/**
 * Lets the keyboard open the menu of the selected cells and of a sheet's tab, with the menu key or Shift+F10, the list of a cell or the filter of a
 * header, with Alt+Down, and what the toolbar has no room for; and lets arrows, Enter and Escape go through what is open. The engine opens all of these, but knows only the mouse in them.
 */
export function openMenusByKey(univer: Univer, api: FUniver, live: LiveWorkbook, container: HTMLElement): void {
  const injector = univer.__getInjector();
  const [menus, layout] = [injector.get(IContextMenuService), injector.get(ILayoutService)];
  /** The choices that open menus were opened from, the last one last. */
  let from: HTMLElement[] = [];

  window.addEventListener("keydown", (event) => {
    const active = document.activeElement;
    if (!(active instanceof HTMLElement)) return;
    const panel = active.closest<HTMLElement>(panels);
    const done = panel === null ? open(event, active) : go(event, panel, active);
    if (!done) return;
    event.preventDefault();
    event.stopImmediatePropagation();
  }, { capture: true });

  // A tab that was typed over leaves the keyboard to nobody.
  container.addEventListener("focusout", ({ target }) => {
    if (target instanceof HTMLElement && target.closest("[data-u-comp=slide-tab-item]") !== null) takeUp(null);
  });

  function open(event: KeyboardEvent, active: HTMLElement): boolean {
    if (active.matches(moreTools) && ["Enter", " ", "ArrowDown"].includes(event.key)) {
      from = [];
      active.click();
      enterPanel(toolPanels);
      return true;
    }
    const tab = active.closest("[data-u-comp=slide-tab-item]:not(:has([contenteditable=true]))");
    const inCells = active.closest("[data-u-comp=editor]") !== null && !api.getActiveWorkbook()!.isCellEditing();
    if (tab === null && !inCells) return false;
    const asksMenu = event.key === "ContextMenu" || (event.key === "F10" && event.shiftKey);
    if (!asksMenu && !(inCells && event.key === "ArrowDown" && event.altKey)) return false;
    const header = asksMenu ? null : headerSelected();
    if (header !== null) {
      // The card of the filter takes the keyboard itself.
      void live.look(filterCommands.open, header);
      return true;
    }
    from = [];
    if (!asksMenu) openCellList();
    else if (tab !== null) tab.dispatchEvent(new MouseEvent("contextmenu", { bubbles: true, cancelable: true }));
    else openCellMenu();
    enterPanel(asksMenu ? menuPanels : listPanels);
    return true;
  }

  /** The selected cell, where it has the arrow of a filter. */
  function headerSelected(): CellPlace | null {
    const range = live.selectedRange();
    const place = range === null ? null : { row: range.startRow, column: range.startColumn };
    return place !== null && live.filters.arrowAt(live.workbook.getActiveSheet(), place) !== null ? place : null;
  }

  function openCellMenu(): void {
    const range = live.selectedRange();
    if (range === null) return;
    const { left, bottom } = cellOnPage(api, container, range.startRow, range.startColumn);
    const kind = range.rangeType === RANGE_TYPE.COLUMN ? ContextMenuPosition.COL_HEADER : range.rangeType === RANGE_TYPE.ROW ? ContextMenuPosition.ROW_HEADER : ContextMenuPosition.MAIN_AREA;
    menus.triggerContextMenu(new MouseEvent("contextmenu", { clientX: Math.max(left, 0), clientY: Math.max(bottom, 0) }) as unknown as IMouseEvent, kind);
  }

  function openCellList(): void {
    const range = live.selectedRange();
    const sheet = live.workbook.getActiveSheet();
    if (range !== null) void live.look("sheet.operation.show-data-validation-dropdown", { subUnitId: sheet.getSheetId(), row: range.startRow, column: range.startColumn });
  }

  /** Gives the keyboard to the panel of a kind that comes up now, which is none of those `before`. */
  function enterPanel(kind: string, before: readonly Element[] = [], frames = 0): void {
    requestAnimationFrame(() => {
      const [first] = shownPanels(kind).filter((panel) => !before.includes(panel)).flatMap(choicesOf);
      focusOn(first);
      // While it slides in, it takes no key.
      if ((first === undefined || document.activeElement !== first) && frames < mostFrames) enterPanel(kind, before, frames + 1);
    });
  }

  function go(event: KeyboardEvent, panel: HTMLElement, active: HTMLElement): boolean {
    const all = choicesOf(panel);
    const at = all.indexOf(active.closest<HTMLElement>(choices) ?? active);
    const isTyping = active instanceof HTMLInputElement;
    const step = (by: 1 | -1) => { focusOn(all[(at + by + all.length) % all.length]); };
    switch (event.key) {
      case "ArrowDown":
      case "ArrowUp":
        step(event.key === "ArrowDown" ? 1 : -1);
        return true;
      case "Home":
      case "End":
        if (isTyping) return false;
        focusOn(all.at(event.key === "Home" ? 0 : -1));
        return true;
      case "ArrowRight":
        if (active.matches(inRows)) {
          step(1);
          return true;
        }
        if (isTyping || !hasMenu(active)) return false;
        choose(active);
        return true;
      case "Enter":
      case " ":
        // A drop-down of the toolbar knows these keys itself, and a blank is typed.
        if (active.matches("[aria-haspopup=menu]") || (isTyping && event.key === " ")) return false;
        // A number is typed into a box on the entry that it is for.
        choose(active.closest("button") ?? active);
        return true;
      case "ArrowLeft":
        if (active.matches(inRows)) {
          step(-1);
          return true;
        }
        return !isTyping && goBack();
      case "Escape":
        if (goBack()) return true;
        layout.focus();
        void live.look("sheet.operation.hide-data-validation-dropdown", {});
        // Menus close themselves at this key, wherever it was pressed.
        document.body.dispatchEvent(new KeyboardEvent("keydown", { key: "Escape", bubbles: true }));
        return true;
      default:
        return false;
    }
  }

  function choose(choice: HTMLElement): void {
    if (hasMenu(choice)) {
      const before = shownPanels(innerPanels);
      choice.click();
      from.push(choice);
      enterPanel(innerPanels, before);
      return;
    }
    choice.click();
    // What was chosen may ask for more, and then has the keyboard.
    takeUp(choice);
  }

  /** Gives the keyboard to the cells where, some frames on, nobody has it any more, or only what is gone from the page. */
  function takeUp(gone: HTMLElement | null, frames = 6): void {
    requestAnimationFrame(() => {
      if (document.activeElement !== document.body && document.activeElement !== gone) return;
      if (frames === 0) layout.focus();
      else takeUp(gone, frames - 1);
    });
  }

  /** Leaves a menu for the one that it was opened from; false where there is none. */
  function goBack(): boolean {
    const choice = from.pop();
    if (choice === undefined) return false;
    // The engine closes a menu once the pointer leaves what it was opened from, for something else in the same menu.
    choice.dispatchEvent(new MouseEvent("mouseout", { bubbles: true, relatedTarget: choice.closest(panels) }));
    focusOn(choice);
    return true;
  }
}

/** Tells whether a choice opens a menu of its own: it ends with an arrow then. */
function hasMenu(choice: HTMLElement): boolean {
  return choice.lastElementChild?.tagName === "svg" && choice.closest("[data-u-comp=sheets-dropdown-list]") === null && !choice.matches(inRows);
}

/** Panels that can be seen: the engine moves closed ones out of the window. */
function shownPanels(kind: string): HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>(kind)].filter((panel) => panel.getBoundingClientRect().left >= 0 && panel.checkVisibility({ visibilityProperty: true }));
}

function choicesOf(panel: HTMLElement): HTMLElement[] {
  return [...panel.querySelectorAll<HTMLElement>(choices)].filter((choice) => choice.checkVisibility());
}

function focusOn(choice: HTMLElement | undefined): void {
  if (choice === undefined) return;
  // A link without an address counts as reached by Tab, and takes no key all the same.
  if (choice.tabIndex < 0 || choice.matches("a:not([href], [tabindex])")) choice.tabIndex = -1;
  choice.focus();
  choice.scrollIntoView({ block: "nearest" });
}
