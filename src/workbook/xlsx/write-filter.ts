import { areaAddress, type Area } from "../../sheet";
import type { FilterColumn, FilterCondition } from "../document/workbook-document";
import { escapeXml, parseXml, writeAttributes } from "./xml";

/** Writes an `autoFilter` element anew; of the one that stands there, whatever is neither its area nor its columns stays. */
export function writeFilter(standing: string | undefined, prefix: string, area: Area, columns: readonly FilterColumn[]): string {
  const node = standing === undefined ? undefined : parseXml(standing);
  const rest = node?.children.filter(({ name }) => name !== "filterColumn").map(({ start, end }) => standing!.slice(start, end)).join("") ?? "";
  const inside = columns.map((column) => writeColumn(prefix, column)).join("") + rest;
  const opening = `<${prefix}autoFilter${writeAttributes({ ...node?.attributes, ref: areaAddress(area) })}`;
  return inside === "" ? `${opening}/>` : `${opening}>${inside}</${prefix}autoFilter>`;
}

function writeColumn(prefix: string, { column, hidesArrow, condition }: FilterColumn): string {
  const opening = `<${prefix}filterColumn${writeAttributes({ colId: column, hiddenButton: hidesArrow === true ? 1 : undefined })}`;
  return condition === undefined ? `${opening}/>` : `${opening}>${writeCondition(prefix, condition)}</${prefix}filterColumn>`;
}

function writeCondition(p: string, condition: FilterCondition): string {
  switch (condition.kind) {
    case "other":
      return condition.xml;
    case "list": {
      const texts = condition.texts.map((text) => `<${p}filter val="${escapeXml(text)}"/>`).join("");
      return `<${p}filters${writeAttributes({ blank: condition.blank ? 1 : undefined })}>${texts}</${p}filters>`;
    }
    default: {
      const written = condition.comparisons.map(({ operator, value }) => `<${p}customFilter${writeAttributes({ operator: operator === "equal" ? undefined : operator, val: value })}/>`);
      return `<${p}customFilters${writeAttributes({ and: condition.joins ? 1 : undefined })}>${written.join("")}</${p}customFilters>`;
    }
  }
}
