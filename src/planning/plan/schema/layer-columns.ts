import type { Column } from "./column";
import { layerTables, type LayerName } from "./for-each";
import type { TableKey } from "./table-keys";
import { columnsOf } from "./tables";

/** Tables from which a layer has fields: that of its name, nearest first, and for an array that of its model. */
export function tablesOfLayer(layer: LayerName): readonly TableKey[] {
  const own: TableKey | null = layerTables[layer];
  return own === null ? [] : layer === "Array" ? [own, "models"] : [own];
}

/** Lists the columns that a layer has as fields, each header once. */
export function columnsOfLayer(layer: LayerName): readonly (readonly [name: string, column: Column])[] {
  const all = tablesOfLayer(layer).flatMap(columnsOf);
  return all.filter(([, { header }], at) => all.findIndex(([, other]) => other.header === header) === at);
}
