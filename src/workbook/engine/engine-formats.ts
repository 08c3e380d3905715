import type { IRange } from "@univerjs/core";
import type { CFRuleType, CFSubRuleType, IConditionFormattingRule, IConditionalFormattingRuleConfig, IFormulaHighlightCell, IIconSet, IValueConfig } from "@univerjs/sheets-conditional-formatting";
import { areaAddress, cellAddress } from "../../sheet";
import type { CellFormat, FormatPoint, FormatRule, LookRule } from "../document/workbook-document";
import { hexColor, lookOfStyle, styleOfLook } from "./look-style";
import { toArea, toRange } from "./stored-sheet";

// The engine's enumerations by value: whoever reads a file must not load the plug-in for conditional formats, which brings a canvas.

/** Makes a conditional format: cells of `ranges` take on the look where `formula`, written for the first cell, is true. */
export function formulaFormat(cfId: string, ranges: IRange[], formula: string, { bl, it, ul, st, cl, bg }: IFormulaHighlightCell["style"]): IConditionFormattingRule {
  /* eslint-disable @typescript-eslint/no-unsafe-enum-assignment */
  const rule = { type: "highlightCell" as CFRuleType.highlightCell, subType: "formula" as CFSubRuleType.formula, value: formula, style: { bl, it, ul, st, cl, bg } };
  /* eslint-enable @typescript-eslint/no-unsafe-enum-assignment */
  return { cfId, ranges, stopIfTrue: false, rule };
}

/** Turns a conditional format into the engine's. */
export function openFormat(format: CellFormat, cfId: string): IConditionFormattingRule {
  const ranges = format.areas.map(toRange);
  const rule = engineRule(format) as unknown as IConditionalFormattingRuleConfig;
  return { cfId, ranges, stopIfTrue: format.stops === true, rule };
}

function engineRule(format: FormatRule): object {
  switch (format.kind) {
    case "scale":
      return { type: "colorScale", config: format.points.map((point, index) => ({ index, color: point.color, value: enginePoint(point) })) };
    case "bar": {
      const ends = { min: enginePoint(format.least), max: enginePoint(format.most) };
      const config = { ...ends, isGradient: format.more?.isPlain !== true, positiveColor: format.color, nativeColor: format.more?.below ?? belowZero };
      return { type: "dataBar", isShowValue: format.hidesValue !== true, config };
    }
    case "icons":
      return { type: "iconSet", isShowValue: format.hidesValue !== true, config: engineIcons(format) };
    default: {
      const { bl, it, ul, st, cl, bg } = styleOfLook(format.look);
      return { type: "highlightCell", style: { bl, it, ul, st, cl, bg }, ...engineCondition(format) };
    }
  }
}

function engineCondition(format: LookRule): object {
  switch (format.kind) {
    case "formula":
      return { subType: "formula", value: format.formula };
    case "compare":
      return { subType: "number", operator: format.operator, value: format.bounds.length === 2 ? [...format.bounds] : format.bounds[0] };
    case "text":
      return { subType: "text", operator: format.operator, value: format.text };
    case "period":
      return { subType: "timePeriod", operator: format.period };
    case "rank":
      return { subType: "rank", isBottom: format.isBottom, isPercent: format.isPercent, value: format.count };
    case "average":
      return { subType: "average", operator: format.operator };
    case "repeats":
      return { subType: format.isUnique ? "uniqueValues" : "duplicateValues" };
  }
}

/** The colour of a bar below 0 where a file says none. */
const belowZero = "#ff0000";

function enginePoint({ at, value }: FormatPoint): { type: string; value?: number | string } {
  return { type: at, ...(value !== undefined && { value }) };
}

/** Sets whose icons the engine lists from the lowest to the highest, where files begin with the lowest for all of them; it lists the others the other way round. */
const risingSets: ReadonlySet<string> = new Set(["4Rating", "5Rating"]);

/** The engine goes through icons from the highest number down; the last one is for what is left. */
function engineIcons({ set, points, isReversed }: Extract<FormatRule, { kind: "icons" }>): object[] {
  const last = points.length - 1;
  return points.map((_, place) => {
    const step = last - place;
    const isTurned = (isReversed === true) !== risingSets.has(set);
    const icon = { iconType: set, iconId: String(isTurned ? step : place) };
    if (step === 0) return { operator: "lessThanOrEqual", value: { type: "num", value: Number.MIN_SAFE_INTEGER }, ...icon };
    return { operator: points[step]!.excludes === true ? "greaterThan" : "greaterThanOrEqual", value: enginePoint(points[step]!), ...icon };
  });
}

/** Turns a conditional format of the engine into that of a document; nothing where no file can say it. */
export function formatOf({ ranges, rule, stopIfTrue }: IConditionFormattingRule): CellFormat[] {
  const areas = ranges.map(toArea);
  const read = areas.length === 0 ? null : ruleOf(rule, ranges);
  return read === null ? [] : [{ ...read, areas, ...(stopIfTrue && { stops: true as const }) }];
}

function ruleOf(rule: IConditionalFormattingRuleConfig, ranges: readonly IRange[]): FormatRule | null {
  switch (rule.type as `${CFRuleType}`) {
    case "colorScale": {
      const { config } = rule as Extract<IConditionalFormattingRuleConfig, { config: { index: number }[] }>;
      const points = [...config].sort((one, other) => one.index - other.index).map(({ value, color }) => ({ ...pointOf(value), color: hexColor(color) ?? "#ffffff" }));
      return { kind: "scale", points };
    }
    case "dataBar": {
      const { config: { min, max, isGradient, positiveColor, nativeColor }, isShowValue } = rule as Extract<IConditionalFormattingRuleConfig, { config: { positiveColor: string } }>;
      const below = hexColor(nativeColor) ?? belowZero;
      const more = isGradient && below === belowZero ? undefined : { isPlain: !isGradient, below };
      return { kind: "bar", least: pointOf(min), most: pointOf(max), color: hexColor(positiveColor) ?? "#638ec6", hidesValue: isShowValue ? undefined : true, more };
    }
    case "iconSet":
      return iconsOf(rule as IIconSet);
    case "highlightCell": {
      const highlight = rule as Extract<IConditionalFormattingRuleConfig, { style: object }>;
      const { bold, italic, underline, strike, color, fill } = lookOfStyle(highlight.style);
      return { ...conditionOf(highlight, ranges), look: { bold, italic, underline, strike, color, fill } };
    }
  }
}

type Highlight = Extract<IConditionalFormattingRuleConfig, { style: object }>;
type Condition = LookRule extends infer Rule ? (Rule extends LookRule ? Omit<Rule, "look"> : never) : never;

function conditionOf(rule: Highlight, ranges: readonly IRange[]): Condition {
  const { operator, value } = rule as { operator?: string; value?: unknown };
  switch (rule.subType as `${CFSubRuleType}`) {
    case "formula":
      return { kind: "formula", formula: String(value) };
    case "number": {
      const numbers = (Array.isArray(value) ? value : [value]).map((one) => Number(one ?? 0));
      // The engine takes the two in either order.
      const bounds = operator === "between" || operator === "notBetween" ? numbers.sort((one, other) => one - other) : numbers.slice(0, 1);
      return { kind: "compare", operator: operator as Extract<Condition, { kind: "compare" }>["operator"], bounds };
    }
    case "text":
      return { kind: "text", operator: operator as Extract<Condition, { kind: "text" }>["operator"], text: typeof value !== "string" || /Blanks|Errors/.test(operator ?? "") ? "" : value };
    case "timePeriod":
      return { kind: "period", period: operator ?? "today" };
    case "rank": {
      const { isPercent, isBottom } = rule as { isPercent?: boolean; isBottom?: boolean };
      return { kind: "rank", count: Number(value ?? 10), isPercent: isPercent === true, isBottom: isBottom === true };
    }
    case "average":
      return averageOf(operator ?? "", ranges);
    case "duplicateValues":
    case "uniqueValues":
      return { kind: "repeats", isUnique: (rule.subType as string) === "uniqueValues" };
  }
}

/** What is just the mean, or just not, is said by a formula: files know only above and below. */
function averageOf(operator: string, ranges: readonly IRange[]): Condition {
  if (operator !== "equal" && operator !== "notEqual") return { kind: "average", operator: operator as Extract<Condition, { kind: "average" }>["operator"] };
  const [first] = ranges.map(toArea);
  return { kind: "formula", formula: `=${cellAddress(first!)}${operator === "equal" ? "=" : "<>"}AVERAGE(${ranges.map((range) => fixed(areaAddress(toArea(range)))).join(",")})` };
}

const fixed = (address: string) => address.replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");

function pointOf({ type, value }: IValueConfig): FormatPoint {
  const at = type as `${typeof type}`;
  if (at === "min" || at === "max") return { at };
  return { at, value: at === "formula" ? String(value) : Number(value ?? 0) };
}

/** Icons of one set in its order, or all of them the other way round; others no file has. */
function iconsOf({ config, isShowValue }: IIconSet): FormatRule | null {
  const [first] = config;
  const set = first === undefined ? "" : (first.iconType as string);
  const last = config.length - 1;
  const follows = (turned: boolean) => config.every(({ iconType, iconId }, place) => (iconType as string) === set && Number(iconId) === (turned ? last - place : place));
  const isTurned = !follows(false);
  if (config.length !== Number(set[0]) || (isTurned && !follows(true))) return null;
  const points = config
    .map(({ operator, value }, place) => (place === last ? { at: "percent" as const, value: 0 } : { ...pointOf(value), ...((operator as string) === "greaterThan" && { excludes: true as const }) }))
    .reverse();
  return { kind: "icons", set, points, isReversed: isTurned !== risingSets.has(set) ? true : undefined, hidesValue: isShowValue ? undefined : true };
}
