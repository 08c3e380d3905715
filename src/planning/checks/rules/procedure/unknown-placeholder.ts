import { gather, orNull, ownersOf, refusalOf, type PlanCell, type PlanModel, type ReachedLayer } from "../../../plan/model";
import type { PlanRow } from "../../../plan/read";
import { fieldsOf, parseCondition, parseTemplate, quote } from "../../../text";
import { remarkAt, remarkOn, type Remark, type Rule } from "../../finding";

const filled = ["do", "expect", "caution", "makersGuide"] as const;

export const unknownPlaceholder: Rule = {
  name: "unknown-placeholder",
  family: "procedure",
  weight: "stop",
  meaning: "What a step, a condition or a prompt names between {{ and }}, or before =, is a column of a table in reach, or follows from the plan.",
  check: (model) => [
    ...gather(model.rows("procedures"), (row) => inCondition(model, "procedures", row, model.reach.layersOf(row.forEach))),
    ...model.reach.steps().flatMap(({ row, section }) => {
      const scope = model.reach.layersOf(section.forEach);
      return [...inCondition(model, "steps", row, scope), ...filled.flatMap((column) => inText(model, { table: "steps", row: row.row, column }, row[column], scope))];
    }),
    ...gather(model.rows("prompts"), (row) => inText(model, { table: "prompts", row: row.row, column: "value" }, row.value, model.reach.layersOf("array"))),
  ],
};

function inCondition(model: PlanModel, key: "procedures" | "steps", row: PlanRow<"procedures"> | PlanRow<"steps">, scope: readonly ReachedLayer[]): Remark[] {
  const refusal = refusalOf(() => parseCondition(row.when, "When"));
  if (refusal !== null) return [remarkAt(model, key, row, "when", refusal)];
  return parseCondition(row.when, "When").filter(({ field }) => ownersOf(scope, field).length === 0).map(({ field }) => remarkAt(model, key, row, "when", sentenceOf(field, scope)));
}

function inText(model: PlanModel, cell: PlanCell, text: string, scope: readonly ReachedLayer[]): Remark[] {
  const refusal = refusalOf(() => parseTemplate(text, "This cell"));
  if (refusal !== null) return [remarkOn(model, cell, refusal)];
  const fields = orNull(() => fieldsOf(parseTemplate(text, "This cell"))) ?? [];
  return [...new Set(fields)].filter((field) => ownersOf(scope, field).length === 0).map((field) => remarkOn(model, cell, sentenceOf(field, scope)));
}

function sentenceOf(field: string, scope: readonly ReachedLayer[]): string {
  return `No table in reach has a column ${quote(field)}, so nothing fills it. In reach: ${scope.map(({ name }) => name).join(", ")}.`;
}
