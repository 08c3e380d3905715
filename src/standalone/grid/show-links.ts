import { CommandType, ICommandService, InterceptorEffectEnum, type IStyleData, LocaleService, LocaleType, type Univer } from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService, SheetsSelectionsService } from "@univerjs/sheets";
import { HoverManagerService } from "@univerjs/sheets-ui";
import { ContextMenuGroup, ContextMenuPosition, IMenuManagerService, MenuItemType } from "@univerjs/ui";
import { defer, of } from "rxjs";
import { yes } from "../../workbook/engine/engine-values";
import { linkOf } from "../../workbook/engine/cell-link";
import { hexColor } from "../../workbook/engine/look-style";
import type { LiveWorkbook } from "../../workbook/engine/live-workbook";
import { onceAFrame } from "./once-a-frame";

/** Opens what the selected cell leads to. */
const openLink = "baywright.operation.open-link";

/** What the menu of a cell calls it. */
const linksEnglish = { baywright: { links: { open: "Open the link (Ctrl+click)" } } };

/** How a cell that leads somewhere looks where its file does not say: as the links of pages do. */
const linkStyle: IStyleData = { ul: { s: yes }, cl: { rgb: "#0563c1" } };

/** Addresses that a page may open; what else a file leads to, such as a program or a script, stays where it is. */
const opened = /^(?:https?|mailto):/i;

/** What showing links takes from the page around the grid. */
export interface LinkDisplay {
  /** Shows where the selected cell leads, with a way to go there, or null. */
  readonly linked: (address: string | null, open: (() => void) | null) => void;
  readonly say: (sentence: string) => void;
  /** Selects the cells that a link within the workbook names; false where there are none. */
  readonly lead: (place: string) => boolean;
}

/** Shows which cells lead somewhere, and leads there: by Ctrl and a click, by the menu of the cell, and by the line under the cells. */
export function showLinks(univer: Univer, live: LiveWorkbook, { linked, say, lead }: LinkDisplay): void {
  const injector = univer.__getInjector();
  injector.get(LocaleService).load({ [LocaleType.EN_US]: linksEnglish });
  const linkAt = (row: number, column: number) => linkOf(live.workbook.getActiveSheet().getCellRaw(row, column));
  const selectedLink = () => {
    const range = live.selectedRange();
    return range === null ? undefined : linkAt(range.startRow, range.startColumn);
  };
  const open = (link: string) => {
    if (link.startsWith("#")) {
      if (!lead(link.slice(1))) say(`This workbook has no ${link.slice(1)}.`);
    } else if (opened.test(link)) window.open(link, "_blank", "noopener,noreferrer");
    else say(`This page opens addresses of the web and of mail only. The cell leads to ${link}`);
  };
  injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    effect: InterceptorEffectEnum.Style,
    handler(cell, place, next) {
      if (linkOf(place.rawData) === undefined) return next(cell);
      const own = !cell || cell === place.rawData ? { ...place.rawData } : cell;
      const style = live.workbook.getStyles().getStyleByCell(place.rawData);
      const isPlain = style?.ul?.s !== yes && (hexColor(style?.cl?.rgb) ?? "#000000") === "#000000";
      return next(isPlain ? { ...own, interceptorStyle: { ...linkStyle, ...own.interceptorStyle } } : own);
    },
  });
  let isHeld = false;
  for (const kind of ["pointerdown", "pointerup"] as const) window.addEventListener(kind, (event) => (isHeld = event.ctrlKey || event.metaKey), { capture: true });
  injector.get(HoverManagerService).currentClickedCell$.subscribe(({ location: { row, col } }) => {
    const link = isHeld ? linkAt(row, col) : undefined;
    if (link !== undefined) open(link);
  });
  const show = () => {
    const link = selectedLink();
    linked(link ?? null, link === undefined ? null : () => { open(link); });
  };
  const { selectionChanged$, selectionMoveEnd$, selectionSet$ } = injector.get(SheetsSelectionsService);
  for (const moves of [selectionChanged$, selectionMoveEnd$, selectionSet$]) moves.subscribe(show);
  live.onChange(onceAFrame(show));
  injector.get(ICommandService).registerCommand({
    id: openLink,
    type: CommandType.OPERATION,
    handler() {
      const link = selectedLink();
      if (link !== undefined) open(link);
      return link !== undefined;
    },
  });
  injector.get(IMenuManagerService).mergeMenu({
    [ContextMenuPosition.MAIN_AREA]: {
      [ContextMenuGroup.OTHERS]: {
        [openLink]: { order: 0, menuItemFactory: () => ({ id: openLink, title: "baywright.links.open", type: MenuItemType.BUTTON, hidden$: defer(() => of(selectedLink() === undefined)) }) },
      },
    },
  });
}
