import { showCell } from "../../../sheet";
import { foldName } from "../../text";
import type { PlanRow } from "../read";
import { columnsOfLayer, derivedFieldsOf, forEachKinds, forEachOf, layerTables, tablesOfLayer, type ForEach, type LayerName, type TableKey } from "../schema";
import { gather } from "./gather";
import { once, oncePer } from "./once";
import type { PlanRows } from "./plan-rows";

/** A layer of fields in reach of a step, under the name by which `{{Rack.Units}}` calls it. */
export interface ReachedLayer {
  readonly name: LayerName;
  /** Null for what has no table of its own: a controller, a drive. */
  readonly table: TableKey | null;
  /** Names of its fields in lower case: columns, the user's own included, and derived ones. */
  readonly fields: ReadonlySet<string>;
}

/** A step with what its section is repeated for. */
export interface PlacedStep {
  readonly row: PlanRow<"steps">;
  readonly section: PlanRow<"procedures">;
}

/** What the steps of the procedures of a plan can name. */
export class StepReach {
  /** Lists the steps whose section is one of their procedure. */
  readonly steps = once((): readonly PlacedStep[] => {
    const sections = new Map(this.rows.rows("procedures").map((row) => [sectionOf(row), row]));
    return gather(this.rows.rows("steps"), (row): PlacedStep[] => {
      const section = sections.get(sectionOf(row));
      return section === undefined ? [] : [{ row, section }];
    });
  });

  private readonly layers = oncePer((kind: ForEach): readonly ReachedLayer[] => forEachKinds[kind].reach.map((name) => this.layer(name)));

  private readonly layer = oncePer((name: LayerName): ReachedLayer => ({ name, table: layerTables[name], fields: this.fieldsOf(name) }));

  constructor(private readonly rows: PlanRows) {}

  /** Lists the layers in reach of the steps of a section, nearest first; a section that says nothing is about the site. */
  layersOf(forEach: ForEach | ""): readonly ReachedLayer[] {
    return this.layers(forEachOf(forEach));
  }

  private fieldsOf(name: LayerName): ReadonlySet<string> {
    const headers = tablesOfLayer(name).flatMap((key) => {
      const table = this.rows.table(key);
      return table === null ? [] : (this.rows.sheet(table.sheet)?.values[table.headerRow] ?? []).slice(table.firstColumn, table.lastColumn + 1);
    });
    const fields = [...columnsOfLayer(name).map(([, { header }]) => header), ...headers.map(showCell), ...derivedFieldsOf(name).map(([field]) => field)];
    return new Set(fields.map(foldName).filter((field) => field !== ""));
  }
}

/** Makes one text of a procedure and a section of it, without case. */
export function sectionOf({ procedure, section }: { readonly procedure: string; readonly section: string }): string {
  return `${foldName(procedure)}\n${foldName(section)}`;
}

/** Finds the layers that a field may come from: the one it names outright, else every one in reach that has it, nearest first. */
export function ownersOf(reached: readonly ReachedLayer[], field: string): readonly ReachedLayer[] {
  const folded = foldName(field);
  const bare = reached.filter(({ fields }) => fields.has(folded));
  const dot = folded.indexOf(".");
  if (bare.length > 0 || dot < 0) return bare;
  const named = reached.find(({ name }) => foldName(name) === folded.slice(0, dot).trim());
  return named?.fields.has(folded.slice(dot + 1).trim()) ? [named] : [];
}
