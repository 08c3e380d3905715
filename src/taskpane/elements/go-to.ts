import { cellArea, type CellPlace } from "../../sheet";
import type { PaneContext } from "../views/view";

/** Selects a cell of a sheet, into which goes what is typed then; `title` names the work where it fails. */
export function goTo({ port, host, status }: PaneContext, title: string, sheet: string, place: CellPlace): Promise<void> {
  return status.run(title, async () => {
    await port.apply([{ kind: "select", sheet, area: cellArea(place) }]);
    host.enterSheet();
    return null;
  });
}
