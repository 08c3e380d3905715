import type { CellStyle, SheetPlan, Validation } from "../../sheet";
import { filtersOfTables } from "./sheet-filter";
import { noPrintPlan, type BorderLine, type CellGrid, type DocumentCell, type DocumentSheet, type LineSetting, type Look, type TypingRule } from "./workbook-document";

/** Turns a sheet plan into a sheet of a document. `keepLook` gives a look to the workbook and answers with its place. */
export function sheetOfPlan(plan: SheetPlan, id: string, keepLook: (look: Look) => number): DocumentSheet {
  const looks = new Map(Object.entries(plan.styles).map(([name, style]) => [name, keepLook(lookOf(style))]));
  const cells: CellGrid = new Map();
  plan.rows.forEach((line, row) => {
    const written = new Map<number, DocumentCell>();
    line.forEach(({ value = null, formula, style }, column) => {
      const look = style === undefined ? 0 : (looks.get(style) ?? 0);
      const shown = value === "" ? null : value;
      if (formula !== undefined) written.set(column, { value: shown, formula, look, hasResult: value !== null });
      else if (shown !== null || look !== 0) written.set(column, { value: shown, look });
    });
    if (written.size > 0) cells.set(row, written);
  });
  const columns = plan.columnWidths.flatMap((size, column): LineSetting[] => {
    const hidden = plan.hiddenColumns?.includes(column) === true ? true : undefined;
    return size === null && hidden === undefined ? [] : [{ first: column, last: column, size: size ?? undefined, hidden }];
  });
  const beyond = (plan.hiddenColumns ?? []).filter((column) => column >= plan.columnWidths.length).map((column): LineSetting => ({ first: column, last: column, hidden: true }));
  return {
    id,
    name: plan.name,
    state: "visible",
    tabColor: plan.tabColor?.toLowerCase(),
    cells,
    rows: Object.entries(plan.rowHeights ?? {}).map(([row, size]) => ({ first: Number(row), last: Number(row), size })),
    columns: [...columns, ...beyond],
    merges: plan.merges ?? [],
    frozen: plan.freeze ?? { rows: 0, columns: 0 },
    hidesGrid: false,
    isProtected: false,
    typingRules: (plan.validations ?? []).map(ruleOf),
    formats: (plan.conditionalFormats ?? []).map(({ area, formula, style }) => {
      const { bold, italic, color, fill } = lookOf(plan.styles[style] ?? {});
      return { areas: [area], kind: "formula" as const, formula, look: { bold, italic, color, fill } };
    }),
    otherFormats: 0,
    tables: plan.tables ?? [],
    filters: filtersOfTables(plan.tables ?? []),
    print: plan.print ?? noPrintPlan,
    notes: [],
    drawings: 0,
  };
}

function lookOf(style: CellStyle): Look {
  const line: BorderLine = { line: "thin", color: style.borderColor?.toLowerCase() ?? "#000000" };
  const look: Look = {
    bold: style.bold === true ? true : undefined,
    italic: style.italic === true ? true : undefined,
    color: style.color?.toLowerCase(),
    fill: style.fill?.toLowerCase(),
    size: style.fontSize,
    wrap: style.wrap === true ? true : undefined,
    across: style.align,
    down: style.vertical,
    format: style.format,
    unlocked: style.locked === false || undefined,
    ...(style.border === "all" ? { top: line, left: line, bottom: line, right: line } : style.border === "bottom" ? { bottom: line } : {}),
  };
  return Object.fromEntries(Object.entries(look).filter(([, value]) => value !== undefined));
}

function ruleOf({ area, rule, message, strict }: Validation): TypingRule {
  const common = { areas: [area], allowsBlank: true, refuses: true, shows: false, weight: strict ? ("stop" as const) : ("warning" as const), error: message };
  switch (rule.kind) {
    case "list":
      return { ...common, type: "list", formulas: [rule.items.join(",")] };
    case "list-of":
      return { ...common, type: "list", formulas: [rule.formula] };
    case "date":
      return { ...common, type: "date", operator: "greaterThanOrEqual", formulas: ["1900-01-01"] };
    default:
      return { ...common, type: rule.kind === "whole" ? "whole" : "decimal", ...bounds(rule.least, rule.most) };
  }
}

function bounds(least: number | undefined, most: number | undefined): Pick<TypingRule, "operator" | "formulas"> {
  if (least !== undefined && most !== undefined) return { operator: "between", formulas: [String(least), String(most)] };
  if (most !== undefined) return { operator: "lessThanOrEqual", formulas: [String(most)] };
  return { operator: "greaterThanOrEqual", formulas: [String(least ?? -1e300)] };
}
