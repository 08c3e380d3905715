import { cellAddress, parseAreas } from "../../sheet";
import type { AverageOperator, BarRule, CellFormat, Comparison, FormatPoint, FormatRule, Look, LookRule, TextOperator } from "../document/workbook-document";
import { fromFileFormula } from "./formula-text";
import type { ReadColor } from "./read-looks";
import { child, childrenOf, isOn, numberOf, type XmlNode } from "./xml";

/** What reading conditional formats takes beside their elements. */
export interface FormatReading {
  /** The looks that conditional formats put over cells, by their number. */
  readonly looks: readonly Look[];
  readonly readColor: ReadColor;
  /** How bars look beyond what the standard says, by the id that their rule names. */
  readonly bars: ReadonlyMap<string, BarRule["more"]>;
}

/** A rule in an element of conditional formats; the format is null where it is of a kind that is not told of. */
export interface StandingFormat {
  readonly rule: XmlNode;
  readonly priority: number;
  readonly format: CellFormat | null;
}

/** Reads the rules of an element of conditional formats, in the order of the text. */
export function readFormats(element: XmlNode, reading: FormatReading): StandingFormat[] {
  const areas = parseAreas(element.attributes["sqref"] ?? "");
  return childrenOf(element, "cfRule").map((rule) => {
    const read = areas[0] === undefined ? null : readRule(rule, cellAddress(areas[0]), reading);
    const stops = isOn(rule.attributes["stopIfTrue"]) ? { stops: true as const } : {};
    return { rule, priority: numberOf(rule.attributes["priority"]) ?? 0, format: read === null ? null : { ...read, areas, ...stops } };
  });
}

/** Reads how bars look beyond what the standard says, out of the extensions of a sheet: [MS-XLSX] section 2.6.24. */
export function readBars(extensions: XmlNode | undefined, readColor: ReadColor): Map<string, BarRule["more"]> {
  const bars = new Map<string, BarRule["more"]>();
  for (const extension of extensions?.children ?? []) {
    for (const formats of childrenOf(child(extension, "conditionalFormattings"), "conditionalFormatting")) {
      for (const rule of childrenOf(formats, "cfRule")) {
        const bar = child(rule, "dataBar");
        const below = bar === undefined ? undefined : readColor(child(bar, "negativeFillColor"));
        if (below !== undefined) bars.set(rule.attributes["id"] ?? "", { isPlain: !isOn(bar!.attributes["gradient"], true), below });
      }
    }
  }
  return bars;
}

/** The id under which a rule has more to say in the extensions of its sheet. */
export function barId(rule: XmlNode): string | undefined {
  return childrenOf(child(rule, "extLst"), "ext").map((one) => child(one, "id")?.text.trim()).find((id) => id !== undefined && id !== "");
}

/** Stands for a colour of the old palette. */
const unknownColor = "#808080";

function readRule(rule: XmlNode, cell: string, { looks, readColor, bars }: FormatReading): FormatRule | null {
  switch (rule.attributes["type"]) {
    case "colorScale": {
      const scale = child(rule, "colorScale");
      const colors = childrenOf(scale, "color").map((node) => readColor(node) ?? unknownColor);
      const points = childrenOf(scale, "cfvo").map(readPoint);
      const coloured = points.flatMap((point, index) => (point === null || colors[index] === undefined ? [] : [{ ...point, color: colors[index] }]));
      return coloured.length < 2 || coloured.length < points.length ? null : { kind: "scale", points: coloured };
    }
    case "dataBar": {
      const bar = child(rule, "dataBar");
      const [least, most] = childrenOf(bar, "cfvo").map(readPoint);
      const color = child(bar, "color");
      if (!least || !most || color === undefined) return null;
      return { kind: "bar", least, most, color: readColor(color) ?? unknownColor, hidesValue: isOn(bar?.attributes["showValue"], true) ? undefined : true, more: bars.get(barId(rule) ?? "") };
    }
    case "iconSet": {
      const icons = child(rule, "iconSet");
      const points = childrenOf(icons, "cfvo").flatMap((node) => {
        const point = readPoint(node);
        return point === null ? [] : [{ ...point, excludes: isOn(node.attributes["gte"], true) ? undefined : (true as const) }];
      });
      const { iconSet: set = "3TrafficLights1", reverse, showValue } = icons?.attributes ?? {};
      if (points.length !== Number(set[0])) return null;
      return { kind: "icons", set, points, isReversed: isOn(reverse) ? true : undefined, hidesValue: isOn(showValue, true) ? undefined : true };
    }
    default: {
      const read = readLookRule(rule, cell);
      if (read === null) return null;
      const { bold, italic, underline, strike, color, fill } = looks[Number(rule.attributes["dxfId"])] ?? {};
      return { ...read, look: { bold, italic, underline, strike, color, fill } };
    }
  }
}

function readPoint({ attributes: { type, val } }: XmlNode): FormatPoint | null {
  switch (type) {
    case "min":
    case "max":
      return { at: type };
    case "num":
    case "percent":
    case "percentile": {
      const number = numberOf(val);
      if (number !== undefined) return { at: type, value: number };
      return type === "num" && val !== undefined ? { at: "formula", value: fromFileFormula(val) } : null;
    }
    case "formula":
      return val === undefined ? null : { at: type, value: fromFileFormula(val) };
    default:
      return null;
  }
}

/** A rule without its look. */
type Bare<Rule> = Rule extends LookRule ? Omit<Rule, "look"> : never;

function readLookRule(rule: XmlNode, cell: string): Bare<LookRule> | null {
  const { type, operator = "", text, rank, percent, bottom, timePeriod, aboveAverage, equalAverage, stdDev } = rule.attributes;
  const formulas = childrenOf(rule, "formula").map((one) => one.text);
  switch (type) {
    case "expression":
      return formulaRule(formulas[0]);
    case "cellIs":
      return readComparison(operator, formulas, cell);
    case "containsText":
    case "notContainsText":
    case "beginsWith":
    case "endsWith":
    case "containsBlanks":
    case "notContainsBlanks":
    case "containsErrors":
    case "notContainsErrors": {
      // Some programs say the text in the formula alone.
      const said = text ?? /"((?:[^"]|"")*)"/.exec(formulas[0] ?? "")?.[1]?.replaceAll('""', '"') ?? "";
      return formulas[0] === undefined || formulas[0] === textFormula(type, said, cell) ? { kind: "text", operator: type, text: said } : formulaRule(formulas[0]);
    }
    case "timePeriod":
      return timePeriod === undefined ? null : { kind: "period", period: timePeriod };
    case "top10":
      return { kind: "rank", count: numberOf(rank) ?? 10, isPercent: isOn(percent), isBottom: isOn(bottom) };
    case "aboveAverage": {
      const isAbove = isOn(aboveAverage, true);
      const name: AverageOperator = isOn(equalAverage) ? (isAbove ? "greaterThanOrEqual" : "lessThanOrEqual") : isAbove ? "greaterThan" : "lessThan";
      return stdDev === undefined || stdDev === "0" ? { kind: "average", operator: name } : null;
    }
    case "duplicateValues":
    case "uniqueValues":
      return { kind: "repeats", isUnique: type === "uniqueValues" };
    default:
      return null;
  }
}

function formulaRule(formula: string | undefined): Bare<LookRule> | null {
  return formula === undefined ? null : { kind: "formula", formula: fromFileFormula(formula) };
}

const comparisons: Readonly<Record<Comparison["operator"], string>> = { equal: "=", notEqual: "<>", greaterThan: ">", lessThan: "<", greaterThanOrEqual: ">=", lessThanOrEqual: "<=" };

function isComparison(operator: string): operator is Comparison["operator"] {
  return operator in comparisons;
}

/** Reads what a cell is held against: numbers, a text, or else the formula that says the same. */
function readComparison(operator: string, [first, second]: readonly string[], cell: string): Bare<LookRule> | null {
  if (first === undefined) return null;
  const isTwo = operator === "between" || operator === "notBetween";
  const bounds = (isTwo ? [first, second ?? first] : [first]).map(numberOf);
  if (!isTwo && !isComparison(operator)) return null;
  if (bounds.every((bound) => bound !== undefined)) return { kind: "compare", operator, bounds };
  const literal = /^"((?:[^"]|"")*)"$/.exec(first)?.[1];
  if (literal !== undefined && (operator === "equal" || operator === "notEqual")) return { kind: "text", operator, text: literal.replaceAll('""', '"') };
  if (operator === "between") return formulaRule(`AND(${cell}>=${first},${cell}<=${second ?? first})`);
  if (operator === "notBetween") return formulaRule(`OR(${cell}<${first},${cell}>${second ?? first})`);
  return formulaRule(`${cell}${comparisons[operator]}${first}`);
}

/** What programs write beside a rule about texts, for those that compute it: ECMA-376 part 1, section 18.18.12, by its examples. */
export function textFormula(operator: TextOperator, text: string, cell: string): string {
  const literal = `"${text.replaceAll('"', '""')}"`;
  switch (operator) {
    case "containsText":
      return `NOT(ISERROR(SEARCH(${literal},${cell})))`;
    case "notContainsText":
      return `ISERROR(SEARCH(${literal},${cell}))`;
    case "beginsWith":
      return `LEFT(${cell},${text.length})=${literal}`;
    case "endsWith":
      return `RIGHT(${cell},${text.length})=${literal}`;
    case "containsBlanks":
      return `LEN(TRIM(${cell}))=0`;
    case "notContainsBlanks":
      return `LEN(TRIM(${cell}))>0`;
    case "containsErrors":
      return `ISERROR(${cell})`;
    case "notContainsErrors":
      return `NOT(ISERROR(${cell}))`;
    default:
      return literal;
  }
}
