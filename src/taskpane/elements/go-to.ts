import { cellArea, type CellPlace } from "../../sheet";
import type { PaneContext } from "../views/view";

/** Selects a cell of a sheet; `title` names the work where it fails. */
export function goTo({ port, status }: PaneContext, title: string, sheet: string, place: CellPlace): Promise<void> {
  return status.run(title, async () => {
    await port.apply([{ kind: "select", sheet, area: cellArea(place) }]);
    return null;
  });
}
