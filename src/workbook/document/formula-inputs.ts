import { foldSheetName, formulaReferences, formulaTokens, type Area } from "../../sheet";
import { looksAnywhere } from "./formula-kind";
import type { DocumentSheet, WorkbookDocument } from "./workbook-document";

/** What a formula looks at; `anything` where that cannot be read off it. */
export interface FormulaInputs {
  readonly areas: readonly { readonly sheet: string; readonly area: Area }[];
  readonly anything: boolean;
}

/** Reads what formulas look at: cells, names that stand for cells, columns of tables, the same cells of several sheets. */
export class InputReader {
  private readonly sheets: ReadonlyMap<string, { readonly sheet: DocumentSheet; readonly place: number }>;
  /** What stands behind a name, on every sheet that has one of its own. */
  private readonly names = new Map<string, readonly string[]>();
  private readonly tables: ReadonlyMap<string, { readonly sheet: string; readonly area: Area }>;
  private depth = 0;

  constructor(private readonly document: WorkbookDocument) {
    this.sheets = new Map(document.sheets.map((sheet, place) => [foldSheetName(sheet.name), { sheet, place }]));
    for (const { name, formula } of document.names) this.names.set(name.toUpperCase(), [...(this.names.get(name.toUpperCase()) ?? []), formula]);
    this.tables = new Map(document.sheets.flatMap(({ id, tables }) => tables.map(({ name, area }) => [foldSheetName(name), { sheet: id, area }] as const)));
  }

  inputsOf(own: DocumentSheet, formula: string): FormulaInputs {
    const tokens = formulaTokens(formula);
    const areas: { sheet: string; area: Area }[] = [];
    // A range to or from something that is computed, such as A1:INDEX(B:B,4).
    const isLoose = (text: string, at: number) => text.includes(":") && !(text === ":" && tokens[at - 1]?.kind === "cell" && tokens[at + 1]?.kind === "cell");
    let anything = looksAnywhere(formula) || tokens.some(({ kind, text }, at) => kind === "other" && isLoose(text, at));
    for (const { sheet, lastSheet, area } of formulaReferences(formula)) {
      const first = sheet === undefined ? own : this.sheets.get(foldSheetName(sheet))?.sheet;
      // A sheet of another workbook, or none.
      if (first === undefined) continue;
      areas.push(...this.span(first, lastSheet).map((id) => ({ sheet: id, area })));
    }
    for (const { kind, text } of tokens) {
      // The columns of a table go without its name inside it.
      if (kind === "bracket") areas.push(...own.tables.map(({ area }) => ({ sheet: own.id, area })));
      // A name may stand for a function, too.
      if (kind !== "name" && kind !== "function") continue;
      const table = this.tables.get(foldSheetName(text));
      if (table !== undefined) areas.push(table);
      for (const named of this.names.get(text.toUpperCase()) ?? []) {
        const behind = this.behind(own, named);
        areas.push(...behind.areas);
        anything ||= behind.anything;
      }
    }
    return { areas, anything };
  }

  /** Reads what a name stands for; names that stand for each other without end may look at anything. */
  private behind(own: DocumentSheet, named: string): FormulaInputs {
    if (this.depth >= 8) return { areas: [], anything: true };
    this.depth += 1;
    const inputs = this.inputsOf(own, named);
    this.depth -= 1;
    return inputs;
  }

  private span(first: DocumentSheet, lastName: string | undefined): string[] {
    const from = this.document.sheets.indexOf(first);
    const to = lastName === undefined ? from : (this.sheets.get(foldSheetName(lastName))?.place ?? from);
    return this.document.sheets.slice(Math.min(from, to), Math.max(from, to) + 1).map(({ id }) => id);
  }
}
