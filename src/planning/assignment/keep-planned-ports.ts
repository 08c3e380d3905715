import { isError, showCell, type Area, type WorkbookSnapshot } from "../../sheet";
import { formatAddress, parseAddress, type Address } from "../addressing";
import { appendRows, type CellWrite, type Changes } from "../plan/changes";
import { PlanModel } from "../plan/model";
import { requireTables, type PlanRow } from "../plan/read";
import type { TableRow } from "../plan/schema";
import { foldName, invalid, quote } from "../text";

/** Where a spilled table stands: its sheet and its cells, header row included. */
export interface SpillPlace {
  readonly sheet: string;
  readonly area: Area;
}

const headers = ["array", "controller", "port", "network", "address"] as const;
type Header = (typeof headers)[number];

/**
 * Freezes a spilled PORTPLAN table as rows of the Ports table, so that its addresses are kept from then on.
 *
 * A port that has a row with that address already is passed over; one whose row lacks an address gets it there; the rest are added.
 * Refuses an area that does not begin with PORTPLAN's headers, an error in it, and an address other than the one a port has already.
 */
export function keepPlannedPorts(workbook: WorkbookSnapshot, { sheet, area }: SpillPlace): Changes {
  const model = new PlanModel(workbook);
  requireTables(model.plan, ["ports"]);
  const spilled = readSpill(workbook, sheet, area);
  const rows = new Map<string, PlanRow<"ports">>();
  for (const { row, network, address } of model.ports.all()) rows.set(slot(row, address?.family ?? network?.prefix?.family ?? null), row);

  const writes: CellWrite[] = [];
  const added: TableRow<"ports">[] = [];
  for (const one of spilled) {
    const address = formatAddress(one.address);
    const row = rows.get(slot(one, one.address.family)) ?? rows.get(slot(one, null));
    if (row === undefined) added.push({ array: one.array, controller: one.controller, port: one.port, network: one.network, address });
    else if (row.address === "") writes.push(...writesTo(model, row, one.network, address));
    else if (formatAddress(parseAddress(row.address, `Ports row ${row.row + 1} address`)) !== address) {
      const port = `${one.array} ${one.controller}/${one.port}`;
      throw invalid("Ports", row.address, `Ports row ${row.row + 1} has ${row.address} for ${port}, the table says ${address}. Give the plan the kept rows.`);
    }
  }
  const appended = appendRows(workbook, model.table("ports")!, "ports", added);
  return { writes: [...writes, ...appended.writes], growths: appended.growths };
}

function writesTo(model: PlanModel, row: PlanRow<"ports">, network: string, address: string): CellWrite[] {
  const cell = { table: "ports", row: row.row } as const;
  const writes = [model.write({ ...cell, column: "address" }, address), row.network === "" ? model.write({ ...cell, column: "network" }, network) : null];
  return writes.filter((write) => write !== null);
}

interface SpilledPort {
  readonly array: string;
  readonly controller: string;
  readonly port: string;
  readonly network: string;
  readonly address: Address;
}

function readSpill(workbook: WorkbookSnapshot, sheet: string, area: Area): SpilledPort[] {
  const values = workbook.sheets.find(({ name }) => name === sheet)?.values ?? [];
  const lines = values.slice(area.row, area.row + area.rows).map((line) => line.slice(area.column, area.column + area.columns));
  const titles = (lines[0] ?? []).map((cell) => foldName(showCell(cell)));
  if (headers.some((header) => !titles.includes(header))) {
    throw invalid("selection", titles.join(", "), `The selected table has no columns array, controller, port, network and address. Select the table of a BAY.PORTPLAN formula.`);
  }
  return lines.slice(1).map((line, at) => {
    const place = `${sheet} row ${area.row + at + 2}`;
    const wrong = line.find(isError);
    if (wrong !== undefined) throw invalid(place, wrong, `${place} shows ${quote(showCell(wrong))}. Mend the formula first.`);
    const text = (header: Header): string => showCell(line[titles.indexOf(header)]).trim();
    return {
      array: text("array"), controller: text("controller"), port: text("port"), network: text("network"),
      address: parseAddress(text("address"), `${place} address`),
    };
  });
}

function slot({ array, controller, port }: { readonly array: string; readonly controller: string; readonly port: string }, family: number | null): string {
  return [array, controller, port].map(foldName).join("\n") + `\n${family ?? ""}`;
}
