import { parseAreas } from "../../sheet";
import type { Comparison, FilterColumn, FilterCondition, SheetFilter } from "../document/workbook-document";
import { child, childrenOf, isOn, numberOf, type XmlNode } from "./xml";

/** Reads an `autoFilter` element, of a sheet or a table; null where it says no area. `xml` is the text that the element was read from. */
export function readFilter(element: XmlNode, xml: string): SheetFilter | null {
  const area = parseAreas(element.attributes["ref"] ?? "")[0];
  return area === undefined ? null : { area, columns: childrenOf(element, "filterColumn").flatMap((column) => readColumn(column, xml)) };
}

/** Reads the filter of a table; null where it shows no arrows. */
export function readTableFilter(table: XmlNode, xml: string): SheetFilter | null {
  const name = table.attributes["displayName"] ?? table.attributes["name"];
  const element = child(table, "autoFilter");
  const filter = element === undefined || name === undefined ? null : readFilter(element, xml);
  return filter === null ? null : { table: name, columns: filter.columns };
}

function readColumn(node: XmlNode, xml: string): FilterColumn[] {
  const column = numberOf(node.attributes["colId"]);
  if (column === undefined || column < 0) return [];
  const hidesArrow = isOn(node.attributes["hiddenButton"]) || !isOn(node.attributes["showButton"], true) || undefined;
  return [{ column, hidesArrow, condition: readCondition(node, xml) }];
}

function readCondition(node: XmlNode, xml: string): FilterCondition | undefined {
  const [one, ...others] = node.children;
  if (one === undefined) return undefined;
  if (others.length === 0 && one.name === "filters" && one.attributes["calendarType"] === undefined && one.children.every(({ name }) => name === "filter")) {
    return { kind: "list", texts: one.children.map(({ attributes }) => attributes["val"] ?? ""), blank: isOn(one.attributes["blank"]) };
  }
  if (others.length === 0 && one.name === "customFilters") {
    const comparisons = one.children.flatMap(({ attributes: { operator: name = "equal", val = "" } }): Comparison[] => {
      const operator = operators.find((known) => known === name);
      return operator === undefined ? [] : [{ operator, value: val }];
    });
    // LibreOffice writes an operator that there is none of where cells are to be empty, or not.
    if (comparisons.length > 0 && comparisons.length === one.children.length) return { kind: "compare", joins: comparisons.length > 1 && isOn(one.attributes["and"]), comparisons };
  }
  return { kind: "other", xml: xml.slice(node.inner, node.innerEnd) };
}

const operators = ["equal", "notEqual", "greaterThan", "greaterThanOrEqual", "lessThan", "lessThanOrEqual"] as const;
