import { parseCondition, type Comparison } from "../../../text";
import { quote } from "../../../text";
import type { PlanRow } from "../../../plan/read";
import { tableKeys, tables, type Table } from "../../../plan/schema";
import { remarkAt, type Remark, type Rule } from "../../finding";
import { nameColumn, orNull, textIn, type PlanIndex } from "../../../plan/model";
import { foldName } from "../../../text";
import { ownersOf, placedSteps, tablesInReach } from "../../step-reach";

export const impossibleCondition: Rule = {
  name: "impossible-condition",
  family: "procedure",
  weight: "warn",
  meaning: "In a procedure that an open job follows, the condition of a section or step can be met by some value.",
  check: (index) => {
    const open = new Set(index.rows("jobs").filter(({ state }) => foldName(state) !== "closed").map(({ procedure }) => foldName(procedure)));
    const isOpen = ({ procedure }: { readonly procedure: string }): boolean => open.has(foldName(procedure));
    return [
      ...index.rows("procedures").filter(isOpen).flatMap((row) => remarksOf(index, "procedures", row, row.forEach)),
      ...placedSteps(index).filter(({ row }) => isOpen(row)).flatMap(({ row, section }) => remarksOf(index, "steps", row, section.forEach)),
    ];
  },
};

function remarksOf(index: PlanIndex, key: "procedures" | "steps", row: PlanRow<"procedures"> | PlanRow<"steps">, forEach: string): Remark[] {
  const comparisons = orNull(() => parseCondition(row.when, "When")) ?? [];
  const asked = new Map<string, string>();
  return comparisons.flatMap(({ field, value }: Comparison): Remark[] => {
    const earlier = asked.get(foldName(field));
    asked.set(foldName(field), value);
    if (earlier !== undefined && foldName(earlier) !== foldName(value)) {
      return [remarkAt(index, key, row, "when", `${field} cannot be ${quote(earlier)} and ${quote(value)} at once, so this never appears. Keep one of them.`)];
    }
    const values = possibleValues(index, forEach, field);
    if (value === "" || values === null || values.some((one) => foldName(one) === foldName(value))) return [];
    const some = values.slice(0, 4).join(", ");
    return [remarkAt(index, key, row, "when", `${field} is never ${quote(value)}, so this never appears. It can be ${some}${values.length > 4 ? " ..." : ""}.`.slice(0, 160))];
  });
}

/** Fields that follow from the plan and take one of a few values. */
const derived: Readonly<Record<string, readonly string[]>> = { "cluster act": ["create", "join"], "first controller": ["yes", "no"] };

/** Lists every value that a field can have; null where it can have any. */
function possibleValues(index: PlanIndex, forEach: string, field: string): readonly string[] | null {
  const owner = ownersOf(tablesInReach(index, forEach), field)[0];
  const name = foldName(field).split(".").at(-1)!.trim();
  if (owner === undefined) return null;
  if (owner.table === null || derived[name] !== undefined) return derived[name] ?? null;
  const column = Object.values((tables[owner.table] as Table).columns).find(({ header }) => foldName(header) === name);
  if (column?.choices !== undefined) return column.choices;
  const target = column?.from === undefined ? undefined : tableKeys.find((key) => tables[key].name === column.from);
  if (target === undefined || column?.several === true || target === "feeds") return null;
  return index.rows(target).map((row) => textIn(row, nameColumn(target)));
}
