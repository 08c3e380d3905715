import { FormulaDependencyGenerator } from "@univerjs/engine-formula";
import { formulaTokens, relativeForm } from "../../sheet";

/** A formula as the engine computes it: that of a cell so many columns and rows before it, where it shares one. */
interface FormulaItem {
  readonly f: string;
  readonly si?: string;
  readonly x?: number;
  readonly y?: number;
}

type Lines<T> = Record<number, Record<number, T | null | undefined> | null | undefined>;
type Sheets = Record<string, Lines<FormulaItem> | null | undefined>;

/** What of the engine's generator is private, and stands in the way of large tabs. */
interface Registering {
  _registerFormulas(units: string[], formulas: Record<string, Sheets | null | undefined>, ...rest: unknown[]): void;
}

/**
 * Lets the engine read formulas once that say the same of their own rows.
 *
 * Left alone it takes every formula apart, and keeps five thousand of them: of a tab with more each entry reads all anew. It knows formulas that share
 * one text, as where a cell was filled down; here it is told of them at each calculation, and nowhere else: cells, files and what moves with rows that
 * come and go keep the whole text. Applies to every engine of the page or process; calling it again does nothing.
 */
export function shareFormulas(): void {
  const generator = FormulaDependencyGenerator.prototype as unknown as Registering & { sharesFormulas?: true };
  if (generator.sharesFormulas) return;
  generator.sharesFormulas = true;
  // What is called is the engine's own, with the generator it is called on.
  // eslint-disable-next-line @typescript-eslint/unbound-method
  const register = generator._registerFormulas;
  generator._registerFormulas = function (units, formulas, ...rest) {
    const shared = Object.fromEntries(units.map((unit) => [unit, formulas[unit] && Object.fromEntries(Object.entries(formulas[unit]).map(([sheet, lines]) => [sheet, lines && shareOn(lines)]))]));
    register.call(this, units, shared, ...rest);
  };
}

/** Tells of each formula of a sheet with which one above it in its column it is the same. */
function shareOn(lines: Lines<FormulaItem>): Lines<FormulaItem> {
  const first = new Map<string, { readonly row: number; readonly item: FormulaItem }>();
  const shared: Record<number, Record<number, FormulaItem | null | undefined>> = {};
  for (const [rowText, line] of Object.entries(lines)) {
    const row = Number(rowText);
    const own: Record<number, FormulaItem | null | undefined> = (shared[row] = {});
    for (const [columnText, item] of Object.entries(line ?? {})) {
      const column = Number(columnText);
      const form = item && item.si === undefined ? formOf(item, row) : null;
      own[column] = item;
      if (!item || form === null) continue;
      const si = `${column} ${form}`;
      const source = first.get(si);
      if (source === undefined) {
        first.set(si, { row, item });
        own[column] = { f: item.f, si };
      } else own[column] = { f: source.item.f, si, x: 0, y: row - source.row };
    }
  }
  return shared;
}

const forms = new WeakMap<FormulaItem, { readonly row: number; readonly f: string; readonly form: string | null }>();

/** Writes a formula as it is in every row in which it says the same; null for one that may mean another thing elsewhere. */
function formOf(item: FormulaItem, row: number): string | null {
  const known = forms.get(item);
  if (known?.row === row && known.f === item.f) return known.form;
  const form = formulaTokens(item.f).some(standsAlone) ? null : relativeForm(item.f, row);
  forms.set(item, { row, f: item.f, form });
  return form;
}

/** Names and tables stand for cells that are not in the text, runs of sheets and looked-up addresses are read by the engine in ways of its own. */
function standsAlone({ kind, text }: ReturnType<typeof formulaTokens>[number]): boolean {
  switch (kind) {
    case "name":
      return !/^(?:TRUE|FALSE)$/i.test(text);
    case "function":
      return /^(?:INDIRECT|OFFSET)$/i.test(text);
    case "sheet":
      return text.includes(":");
    default:
      return kind === "bracket" || kind === "line" || kind === "error";
  }
}
