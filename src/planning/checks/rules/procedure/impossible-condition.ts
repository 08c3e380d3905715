import { orNull, ownersOf, type PlanModel } from "../../../plan/model";
import { textOf, type PlanRow } from "../../../plan/read";
import { columnsOfLayer, derivedFieldsOf, nameColumn, type ForEach } from "../../../plan/schema";
import { cutSentence, foldName, parseCondition, quote, type Comparison } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const impossibleCondition: Rule = {
  name: "impossible-condition",
  family: "procedure",
  weight: "warn",
  meaning: "In a procedure that an open job follows, the condition of a section or step can be met by some value.",
  check: (model) => {
    const open = new Set(model.rows("jobs").filter(({ state }) => state !== "closed").map(({ procedure }) => foldName(procedure)));
    const isOpen = ({ procedure }: { readonly procedure: string }): boolean => open.has(foldName(procedure));
    return [
      ...model.rows("procedures").filter(isOpen).flatMap((row) => remarksOf(model, "procedures", row, row.forEach)),
      ...model.reach.steps().filter(({ row }) => isOpen(row)).flatMap(({ row, section }) => remarksOf(model, "steps", row, section.forEach)),
    ];
  },
};

function remarksOf(model: PlanModel, key: "procedures" | "steps", row: PlanRow<"procedures"> | PlanRow<"steps">, forEach: ForEach | ""): Remark[] {
  const comparisons = orNull(() => parseCondition(row.when, "When")) ?? [];
  const asked = new Map<string, readonly string[]>();
  return comparisons.flatMap(({ field, operator, values }: Comparison): Remark[] => {
    // What must not be, and what is above or below a number, leaves room.
    if (operator !== "=") return [];
    const earlier = asked.get(foldName(field));
    asked.set(foldName(field), values);
    if (earlier !== undefined && !values.some((value) => isOneOf(value, earlier))) {
      const sentence = `${field} cannot be ${quote(earlier.join("|"))} and ${quote(values.join("|"))} at once, so this never appears. Keep one of them.`;
      return [remarkAt(model, key, row, "when", cutSentence(sentence))];
    }
    const possible = possibleValues(model, forEach, field);
    if (possible === null || values.some((value) => value === "" || isOneOf(value, possible))) return [];
    const some = possible.slice(0, 4).join(", ");
    const sentence = `${field} is never ${quote(values.join("|"))}, so this never appears. It can be ${some}${possible.length > 4 ? " and others" : ""}.`;
    return [remarkAt(model, key, row, "when", cutSentence(sentence))];
  });
}

function isOneOf(value: string, values: readonly string[]): boolean {
  return values.some((one) => foldName(one) === foldName(value));
}

/** Lists every value that a field can have; null where it can have any. */
function possibleValues(model: PlanModel, forEach: ForEach | "", field: string): readonly string[] | null {
  const owner = ownersOf(model.reach.layersOf(forEach), field)[0];
  const name = foldName(field).split(".").at(-1)!.trim();
  if (owner === undefined) return null;
  const [, derived] = derivedFieldsOf(owner.name).find(([known]) => foldName(known) === name) ?? [];
  if (derived !== undefined) return derived.choices ?? null;
  const [, column] = columnsOfLayer(owner.name).find(([, { header }]) => foldName(header) === name) ?? [];
  if (column?.choices !== undefined) return column.choices;
  const target = column?.from;
  if (target === undefined || column?.several === true || target === "feeds") return null;
  return model.rows(target).map((row) => textOf(row, nameColumn(target)));
}
