import { areaAddress, cellAddress, type Area } from "../../sheet";
import type { BarRule, CellFormat, FormatPoint, Look } from "../document/workbook-document";
import { argb } from "./argb";
import { toFileFormula } from "./formula-text";
import { barId, readFormats, textFormula, type FormatReading } from "./read-formats";
import { addresses } from "./write-rules";
import { child, childrenOf, escapeXml, parseXml, splice, writeAttributes, type Splice, type XmlNode } from "./xml";

/** The conditional formats of a sheet as its file is to have them. */
export interface WrittenFormats {
  /** The elements of the sheet, the first with the highest priority. */
  readonly elements: string;
  /** What the extensions of the sheet say of new bars, and the ids of bars that went. */
  readonly bars: readonly string[];
  readonly gone: ReadonlySet<string>;
}

/** Reading that tells which formats are told of, whatever their colours. */
const blind: FormatReading = { looks: [], readColor: () => "#000000", bars: new Map() };

/**
 * Writes conditional formats. `standing` are the elements of the file, of which `before` tells: a format that did not change keeps all that its element says,
 * and what is not told of stays behind the others.
 */
export function writeFormats(
  prefix: string,
  before: readonly CellFormat[],
  after: readonly CellFormat[],
  standing: readonly string[],
  lookOf: (look: Look) => number,
): WrittenFormats {
  const rules = standing
    .flatMap((xml) => {
      const element = parseXml(xml);
      return readFormats(element, blind).map(({ rule, priority, format }) => ({ xml, attributes: element.attributes, rule, priority, isTold: format !== null }));
    })
    .sort((one, other) => one.priority - other.priority);
  const told = rules.filter(({ isTold }) => isTold);
  const unchanged = new Map<string, number[]>();
  if (told.length === before.length) before.forEach((format, place) => void unchanged.set(JSON.stringify(format), [...(unchanged.get(JSON.stringify(format)) ?? []), place]));
  const ids = new Set(told.flatMap(({ rule }) => barId(rule) ?? []));
  const gone = new Set(ids);
  const bars: string[] = [];
  const keep = ({ xml, attributes, rule }: (typeof rules)[number], priority: number) => {
    const opening = `<${prefix}cfRule${writeAttributes({ ...rule.attributes, priority })}`;
    const inside = rule.inner === rule.end ? "/>" : `>${xml.slice(rule.inner, rule.end)}`;
    return `<${prefix}conditionalFormatting${writeAttributes(attributes)}>${opening}${inside}</${prefix}conditionalFormatting>`;
  };
  const written = after.map((format, index) => {
    const place = unchanged.get(JSON.stringify(format))?.shift();
    if (place !== undefined) {
      gone.delete(barId(told[place]!.rule) ?? "");
      return keep(told[place]!, index + 1);
    }
    const id = format.kind === "bar" && format.more !== undefined ? freeId(ids) : undefined;
    if (format.kind === "bar" && id !== undefined) bars.push(barExtension(format, format.areas, id));
    return `<${prefix}conditionalFormatting sqref="${addresses(format.areas)}">${writeRule(prefix, format, index + 1, lookOf, id)}</${prefix}conditionalFormatting>`;
  });
  const others = rules.filter(({ isTold }) => !isTold).map((one, index) => keep(one, after.length + index + 1));
  return { elements: [...written, ...others].join(""), bars, gone };
}

function freeId(taken: Set<string>): string {
  let number = taken.size + 1;
  const named = () => `{00000000-0000-4000-8000-${number.toString(16).toUpperCase().padStart(12, "0")}}`;
  while (taken.has(named())) number += 1;
  taken.add(named());
  return named();
}

function writeRule(p: string, format: CellFormat, priority: number, lookOf: (look: Look) => number, id: string | undefined): string {
  const cell = cellAddress(format.areas[0]!);
  const rule = (type: string, attributes: Readonly<Record<string, string | number | undefined>>, inside: string) =>
    `<${p}cfRule${writeAttributes({ type, dxfId: "look" in format ? lookOf(format.look) : undefined, priority, stopIfTrue: format.stops ? 1 : undefined, ...attributes })}>${inside}</${p}cfRule>`;
  const formula = (text: string) => `<${p}formula>${escapeXml(text)}</${p}formula>`;
  const point = ({ at, value }: FormatPoint, more: Readonly<Record<string, number | undefined>> = {}) => `<${p}cfvo${writeAttributes({ type: at, val: pointText(value), ...more })}/>`;
  const color = (one: string) => `<${p}color rgb="${argb(one)}"/>`;
  switch (format.kind) {
    case "formula":
      return rule("expression", {}, formula(toFileFormula(format.formula)));
    case "compare":
      return rule("cellIs", { operator: format.operator }, format.bounds.map((bound) => formula(String(bound))).join(""));
    case "text": {
      const { operator, text } = format;
      const said = formula(textFormula(operator, text, cell));
      if (operator === "equal" || operator === "notEqual") return rule("cellIs", { operator }, said);
      return rule(operator, { operator: operator === "notContainsText" ? "notContains" : /Blanks|Errors/.test(operator) ? undefined : operator, text: text === "" ? undefined : text }, said);
    }
    case "period":
      return rule("timePeriod", { timePeriod: format.period }, formula(periods[format.period]?.(cell) ?? "FALSE"));
    case "rank":
      return rule("top10", { rank: format.count, percent: format.isPercent ? 1 : undefined, bottom: format.isBottom ? 1 : undefined }, "");
    case "average": {
      const [isBelow, isEqual] = [format.operator.startsWith("less"), format.operator.endsWith("Equal")];
      return rule("aboveAverage", { aboveAverage: isBelow ? 0 : undefined, equalAverage: isEqual ? 1 : undefined }, "");
    }
    case "repeats":
      return rule(format.isUnique ? "uniqueValues" : "duplicateValues", {}, "");
    case "scale":
      return rule("colorScale", {}, `<${p}colorScale>${format.points.map((one) => point(one)).join("")}${format.points.map((one) => color(one.color)).join("")}</${p}colorScale>`);
    case "bar": {
      const bar = `<${p}dataBar${writeAttributes({ showValue: format.hidesValue ? 0 : undefined })}>${point(format.least)}${point(format.most)}${color(format.color)}</${p}dataBar>`;
      const link = id === undefined ? "" : `<${p}extLst><${p}ext xmlns:x14="${younger}" uri="{B025F937-C7B1-47D3-B67F-A62EFF666E3E}"><x14:id>${id}</x14:id></${p}ext></${p}extLst>`;
      return rule("dataBar", {}, bar + link);
    }
    case "icons": {
      const attributes = { iconSet: format.set, showValue: format.hidesValue ? 0 : undefined, reverse: format.isReversed ? 1 : undefined };
      return rule("iconSet", {}, `<${p}iconSet${writeAttributes(attributes)}>${format.points.map((one) => point(one, { gte: one.excludes ? 0 : undefined })).join("")}</${p}iconSet>`);
    }
  }
}

function pointText(value: FormatPoint["value"]): string | undefined {
  return value === undefined ? undefined : typeof value === "number" ? String(value) : toFileFormula(value);
}

/** What programs write beside a rule about days, for those that compute it; a week begins with its Sunday. */
const periods: Readonly<Record<string, (cell: string) => string>> = {
  today: (cell) => `FLOOR(${cell},1)=TODAY()`,
  yesterday: (cell) => `FLOOR(${cell},1)=TODAY()-1`,
  tomorrow: (cell) => `FLOOR(${cell},1)=TODAY()+1`,
  last7Days: (cell) => `AND(TODAY()-FLOOR(${cell},1)<=6,FLOOR(${cell},1)<=TODAY())`,
  thisMonth: (cell) => `AND(MONTH(${cell})=MONTH(TODAY()),YEAR(${cell})=YEAR(TODAY()))`,
  lastMonth: (cell) => `AND(MONTH(${cell})=MONTH(EDATE(TODAY(),-1)),YEAR(${cell})=YEAR(EDATE(TODAY(),-1)))`,
  nextMonth: (cell) => `AND(MONTH(${cell})=MONTH(EDATE(TODAY(),1)),YEAR(${cell})=YEAR(EDATE(TODAY(),1)))`,
  thisWeek: (cell) => `AND(TODAY()-ROUNDDOWN(${cell},0)<=WEEKDAY(TODAY())-1,ROUNDDOWN(${cell},0)-TODAY()<=7-WEEKDAY(TODAY()))`,
  lastWeek: (cell) => `AND(TODAY()-ROUNDDOWN(${cell},0)>=WEEKDAY(TODAY()),TODAY()-ROUNDDOWN(${cell},0)<WEEKDAY(TODAY())+7)`,
  nextWeek: (cell) => `AND(ROUNDDOWN(${cell},0)-TODAY()>7-WEEKDAY(TODAY()),ROUNDDOWN(${cell},0)-TODAY()<15-WEEKDAY(TODAY()))`,
};

const younger = "http://schemas.microsoft.com/office/spreadsheetml/2009/9/main";
const formulas = "http://schemas.microsoft.com/office/excel/2006/main";
const formatsUri = "{78C0D931-6437-407d-A8EE-F0AAD7539E65}";

/** What the extensions of a sheet say of a bar: its colour below 0, and whether it fades ([MS-XLSX] section 2.6.24). */
function barExtension({ least, most, more }: BarRule, areas: readonly Area[], id: string): string {
  const point = ({ at, value }: FormatPoint) => {
    const text = pointText(value);
    return text === undefined ? `<x14:cfvo type="${at}"/>` : `<x14:cfvo type="${at}"><xm:f>${escapeXml(text)}</xm:f></x14:cfvo>`;
  };
  const colors = `<x14:negativeFillColor rgb="${argb(more!.below)}"/><x14:axisColor rgb="FF000000"/>`;
  const bar = `<x14:dataBar minLength="0" maxLength="100" gradient="${more!.isPlain ? 0 : 1}">${point(least)}${point(most)}${colors}</x14:dataBar>`;
  const sqref = areas.map(areaAddress).join(" ");
  return `<x14:conditionalFormatting xmlns:xm="${formulas}"><x14:cfRule type="dataBar" id="${id}">${bar}</x14:cfRule><xm:sqref>${sqref}</xm:sqref></x14:conditionalFormatting>`;
}

/** Brings the extensions of a sheet up to its conditional formats; "" where none is left. */
export function withBars(standing: string, prefix: string, { bars, gone }: WrittenFormats): string {
  const list = standing === "" ? undefined : parseXml(standing);
  const splices: Splice[] = [];
  const isGone = (rule: XmlNode) => gone.has(rule.attributes["id"] ?? "");
  for (const extension of list?.children ?? []) {
    const formats = childrenOf(child(extension, "conditionalFormattings"), "conditionalFormatting");
    const emptied = formats.filter((one) => childrenOf(one, "cfRule").every(isGone));
    if (formats.length > 0 && emptied.length === formats.length) splices.push({ start: extension.start, end: extension.end, text: "" });
    else for (const { start, end } of emptied) splices.push({ start, end, text: "" });
  }
  const left = splice(standing, splices);
  if (bars.length === 0) return /<[\w:]*ext\s/.test(left) ? left : "";
  const added = `<${prefix}ext xmlns:x14="${younger}" uri="${formatsUri}"><x14:conditionalFormattings>${bars.join("")}</x14:conditionalFormattings></${prefix}ext>`;
  // One list of them a sheet: a second one is not read by every program.
  const place = left.lastIndexOf("</x14:conditionalFormattings>");
  if (place >= 0) return `${left.slice(0, place)}${bars.join("")}${left.slice(place)}`;
  const end = left.lastIndexOf("</");
  return end < 0 ? `<${prefix}extLst>${added}</${prefix}extLst>` : `${left.slice(0, end)}${added}${left.slice(end)}`;
}
