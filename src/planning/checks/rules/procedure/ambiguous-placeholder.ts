import { orNull, ownersOf, type ReachedLayer } from "../../../plan/model";
import { columnsOf } from "../../../plan/schema";
import { fieldsOf, foldName, parseTemplate, quote } from "../../../text";
import { type Remark, remarkAt, type Rule } from "../../finding";

const filled = ["do", "expect", "caution", "makersGuide"] as const;

export const ambiguousPlaceholder: Rule = {
  name: "ambiguous-placeholder",
  family: "procedure",
  weight: "warn",
  meaning: "Where two tables in reach have a column of their own by one name, a step says which it means, such as {{Rack.Units}}; else the nearest is taken.",
  check: (model) =>
    model.reach.steps().flatMap(({ row, section }) => {
      const scope = model.reach.layersOf(section.forEach);
      return filled.flatMap((column): Remark[] => {
        const fields = orNull(() => fieldsOf(parseTemplate(row[column], "Step"))) ?? [];
        return [...new Set(fields)].flatMap((field): Remark[] => {
          const owners = ownersOf(scope, field).filter((owner) => ownsColumn(owner, field));
          const [nearest, other] = owners;
          if (nearest === undefined || other === undefined) return [];
          const sentence = `${quote(field)} is a column of ${nearest.name} and of ${other.name}; ${nearest.name} is taken. Write {{${nearest.name}.${field}}} or {{${other.name}.${field}}}.`;
          return [remarkAt(model, "steps", row, column, sentence)];
        });
      });
    }),
};

/** Tells whether a table says something of its own there: a column that names the row, or one of another table, says the same everywhere. */
function ownsColumn({ table }: ReachedLayer, field: string): boolean {
  if (table === null) return false;
  const column = columnsOf(table).map(([, described]) => described).find(({ header }) => foldName(header) === foldName(field));
  return column !== undefined && column.from === undefined && column.required !== true;
}
