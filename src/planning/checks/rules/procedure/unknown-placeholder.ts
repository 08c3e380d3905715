import { fieldsOf, parseCondition, parseTemplate } from "../../../text";
import { quote } from "../../../text";
import type { PlanRow } from "../../../plan/read";
import type { TableKey } from "../../../plan/schema";
import { remarkAt, type Remark, type Rule } from "../../finding";
import { orNull, refusalOf, type PlanIndex } from "../../../plan/model";
import { ownersOf, placedSteps, tablesInReach, type ReachedTable } from "../../step-reach";

const filled = ["do", "expect", "caution", "makersGuide"] as const;

export const unknownPlaceholder: Rule = {
  name: "unknown-placeholder",
  family: "procedure",
  weight: "stop",
  meaning: "What a step, a condition or a prompt names between {{ and }}, or before =, is a column of a table in reach, or follows from the plan.",
  check: (index) => [
    ...index.rows("procedures").flatMap((row) => inCondition(index, "procedures", row, tablesInReach(index, row.forEach))),
    ...placedSteps(index).flatMap(({ row, section }) => {
      const scope = tablesInReach(index, section.forEach);
      return [...inCondition(index, "steps", row, scope), ...filled.flatMap((column) => inText(index, "steps", row, column, row[column], scope))];
    }),
    ...index.rows("prompts").flatMap((row) => inText(index, "prompts", row, "value", row.value, tablesInReach(index, "array"))),
  ],
};

function inCondition(index: PlanIndex, key: "procedures" | "steps", row: PlanRow<"procedures"> | PlanRow<"steps">, scope: readonly ReachedTable[]): Remark[] {
  const refusal = refusalOf(() => parseCondition(row.when, "When"));
  if (refusal !== null) return [remarkAt(index, key, row, "when", refusal)];
  return parseCondition(row.when, "When").filter(({ field }) => ownersOf(scope, field).length === 0).map(({ field }) => remarkAt(index, key, row, "when", sentenceOf(field, scope)));
}

function inText(index: PlanIndex, key: TableKey, row: { readonly row: number }, column: string, text: string, scope: readonly ReachedTable[]): Remark[] {
  const refusal = refusalOf(() => parseTemplate(text, "This cell"));
  if (refusal !== null) return [remarkAt(index, key, row, column as never, refusal)];
  const fields = orNull(() => fieldsOf(parseTemplate(text, "This cell"))) ?? [];
  return [...new Set(fields)].filter((field) => ownersOf(scope, field).length === 0).map((field) => remarkAt(index, key, row, column as never, sentenceOf(field, scope)));
}

function sentenceOf(field: string, scope: readonly ReachedTable[]): string {
  return `No table in reach has a column ${quote(field)}, so nothing fills it. In reach: ${scope.map(({ name }) => name).join(", ")}.`;
}
