import { noAnswer } from "../../planning/text";
import { foldSheetName, sameSheetName, sheetNamesIn } from "../../sheet";
import { checkEdits } from "../check-edits";
import type { Edit, WorkbookPort } from "../port";
import { answerSheets, withoutResults, type AnswersOf } from "./answer-sheets";
import { snapshotReader } from "./document-snapshot";
import { lacksResult } from "./formula-kind";
import { loseReferences, renameReferences } from "./move-lines";
import { outOfDate, type SheetCell } from "./out-of-date";
import { sheetOfPlan } from "./sheet-of-plan";
import { cellAt, changedFormat, putCell, type CellGrid, type DocumentCell, type DocumentSheet, type Look, type WorkbookDocument } from "./workbook-document";

/** A document that can be read and changed like a workbook, without anything that computes. */
export interface DocumentPort {
  readonly port: WorkbookPort;
  /**
   * The document as it is now; sheets that were not touched are the very ones it began with.
   *
   * Formulas that no longer follow from what they look at have no result, but for those whose answers are known.
   */
  readonly finish: () => WorkbookDocument;
  /**
   * Hands every sheet that was added and is whole to `write`, and holds it no longer: from then on it is read without its cells, and may not be
   * written to.
   */
  readonly putAway: (write: (sheet: DocumentSheet, looks: readonly Look[]) => void) => void;
}

/**
 * Joins a document to the rest of the program: what is written stands there, formulas keep the results that they came with, and follow a sheet to
 * its new name. What formulas of a changed sheet answer is asked of `answersOf`.
 */
export function openDocumentPort(base: WorkbookDocument, answersOf: AnswersOf = () => []): DocumentPort {
  let sheets = base.sheets;
  let names = base.names;
  const looks: Look[] = [...base.looks];
  const known = new Map<string, number>();
  const written: SheetCell[] = [];
  const answered = new Map<string, SheetCell>();
  /** Sheets of the list of edits at hand: whoever adds a sheet knows what its formulas answer once the list is carried out. */
  const fresh = new Set<string>();
  /** Other sheets that the list at hand writes to. */
  const changed = new Set<string>();
  const namedSheets = new WeakMap<CellGrid, ReadonlySet<string>>();
  let added = 0;
  const keepLook = (look: Look): number => {
    const text = JSON.stringify(look);
    const place = known.get(text) ?? looks.push(look) - 1;
    known.set(text, place);
    return place;
  };
  const named = (name: string): DocumentSheet => {
    const found = sheets.find((sheet) => sameSheetName(sheet.name, name));
    if (found === undefined) throw noAnswer("sheet", name, `There is no sheet "${name}" any more. It may have been renamed or deleted.`);
    return found;
  };
  const change = (name: string, by: Partial<DocumentSheet>): void => {
    const old = named(name);
    sheets = sheets.map((sheet) => (sheet === old ? { ...old, ...by } : sheet));
  };

  function write({ sheet: name, row, column, cells: block }: Extract<Edit, { kind: "write" }>): void {
    const sheet = named(name);
    if (sheet.cells === nothing) throw new Error(`Sheet ${name} was put away and is written to.`);
    // A copy of the rows that change: what the file said stays to be compared with.
    const cells = new Map(sheet.cells);
    block.forEach((line, down) => {
      if (line.every((cell) => cell === null)) return;
      cells.set(row + down, new Map(cells.get(row + down)));
      line.forEach((cell, across) => {
        if (cell === null) return;
        const place = { row: row + down, column: column + across };
        const { look = 0, link } = cellAt(cells, place.row, place.column) ?? {};
        const isText = typeof cell.value === "string" && cell.value !== "" && cell.formula === undefined;
        const made: DocumentCell = {
          value: cell.value === "" ? null : (cell.value ?? null),
          look: isText ? formatted(look, "@") : cell.formula !== undefined && looks[look]?.format === "@" ? formatted(look, undefined) : look,
          ...(link !== undefined && { link }),
          ...(cell.formula !== undefined && { formula: cell.formula, hasResult: cell.value !== undefined && cell.value !== null }),
        };
        putCell(cells, place.row, place.column, made.value === null && made.formula === undefined && made.link === undefined && made.look === 0 ? undefined : made);
        if (fresh.has(sheet.id)) return;
        written.push({ sheet: sheet.id, ...place });
        changed.add(sheet.id);
      });
    });
    change(name, { cells });
  }

  function formatted(look: number, format: string | undefined): number {
    const { format: old, ...rest } = looks[look] ?? {};
    if (old === format) return look;
    return keepLook({ ...rest, ...(format !== undefined && { format }), ...(look < base.looks.length && { basedOn: look }) });
  }

  /** Changes what formulas say of the sheet called `about`. */
  function follow(about: string, change: (formula: string) => string): void {
    const name = foldSheetName(about);
    sheets = sheets.map((sheet) => {
      const cells = sheetsNamedIn(sheet.cells).has(name) ? changeFormulas(sheet.cells, change) : sheet.cells;
      const typingRules = changeAll(sheet.typingRules, (rule) => {
        const formulas = changeAll(rule.formulas, (formula) => (formula.startsWith("=") ? change(formula) : formula));
        return formulas === rule.formulas ? rule : { ...rule, formulas };
      });
      const formats = changeAll(sheet.formats, (format) => changedFormat(format, change));
      return cells === sheet.cells && typingRules === sheet.typingRules && formats === sheet.formats ? sheet : { ...sheet, cells, typingRules, formats };
    });
    names = changeAll(names, (name) => changedFormula(name, change));
  }

  /** Names of sheets in the formulas of a grid, which mostly name none; read once a grid. */
  function sheetsNamedIn(cells: CellGrid): ReadonlySet<string> {
    const known = namedSheets.get(cells);
    if (known !== undefined) return known;
    const found = new Set<string>();
    for (const line of cells.values()) {
      line.forEach(({ formula }) => {
        if (formula !== undefined) for (const name of sheetNamesIn(formula)) found.add(foldSheetName(name));
      });
    }
    namedSheets.set(cells, found);
    return found;
  }

  function carryOut(edit: Edit): void {
    switch (edit.kind) {
      case "add-sheet": {
        const at = edit.after === undefined ? sheets.length : sheets.indexOf(named(edit.after)) + 1;
        const sheet = sheetOfPlan(edit.plan, `${addedId}${(added += 1)}`, keepLook);
        fresh.add(sheet.id);
        sheets = [...sheets.slice(0, at), sheet, ...sheets.slice(at)];
        return;
      }
      case "write":
        write(edit);
        return;
      case "resize-table":
        change(edit.sheet, { tables: named(edit.sheet).tables.map((table) => (sameSheetName(table.name, edit.table) ? { ...table, area: edit.area } : table)) });
        return;
      case "rename-sheet":
        change(edit.sheet, { name: edit.name });
        follow(edit.sheet, (formula) => renameReferences(formula, new Map([[foldSheetName(edit.sheet), edit.name]])));
        return;
      case "show-sheet":
      case "hide-sheet":
        change(edit.sheet, { state: edit.kind === "show-sheet" ? "visible" : "hidden" });
        return;
      case "delete-sheet": {
        const gone = named(edit.sheet);
        sheets = sheets.filter((sheet) => sheet !== gone);
        follow(edit.sheet, (formula) => loseReferences(formula, edit.sheet));
        return;
      }
      case "select":
    }
  }

  /** Gives formulas of changed sheets the answers that are known of them. */
  function answer(): void {
    const given = answerSheets(document(), answersOf, ({ id }) => changed.has(id));
    sheets = given.document.sheets;
    for (const cell of given.cells) answered.set(keyOf(cell), cell);
    fresh.clear();
    changed.clear();
  }

  const document = (): WorkbookDocument => ({ sheets, looks, names });
  const readAgain = snapshotReader();
  return {
    putAway(write) {
      sheets = sheets.map((sheet) => {
        if (!sheet.id.startsWith(addedId) || sheet.cells === nothing || lacksResult(sheet)) return sheet;
        write(sheet, looks);
        return { ...sheet, cells: nothing, typingRules: [], formats: [] };
      });
    },
    finish: () => withoutResults(document(), outOfDate(document(), [...written, ...answered.values()], (cell) => !answered.has(keyOf(cell)))),
    port: {
      read: (choice) => Promise.resolve(readAgain(document(), choice)),
      // What is refused is to come out of the promise, not past it.
      // eslint-disable-next-line @typescript-eslint/require-await
      async apply(edits) {
        checkEdits(edits, sheets.map(({ name, state, isProtected }) => ({ name, visible: state === "visible", protected: isProtected })));
        for (const edit of edits) carryOut(edit);
        answer();
      },
      spillAreas: (cells) =>
        Promise.resolve(
          cells.map(({ sheet, row, column }) => {
            const array = sheets.flatMap((one) => (sameSheetName(one.name, sheet) ? [cellAt(one.cells, row, column)?.array] : []))[0];
            return array === undefined || array.rows * array.columns < 2 ? null : array;
          }),
        ),
      selection: () => Promise.resolve({ sheet: sheets[0]!.name, area: { row: 0, column: 0, rows: 1, columns: 1 } }),
      watch: () => Promise.resolve(() => undefined),
    },
  };
}

/** How the ids of sheets begin that the file does not have. */
const addedId = "added";

/** Cells of sheets that were put away. */
const nothing: CellGrid = new Map();

function keyOf({ sheet, row, column }: SheetCell): string {
  return `${sheet} ${row} ${column}`;
}

/** Changes the members of a list; the very list where none changes. */
function changeAll<Item>(list: readonly Item[], change: (item: Item) => Item): readonly Item[] {
  const changed = list.map(change);
  return changed.every((item, index) => item === list[index]) ? list : changed;
}

function changedFormula<Item extends { readonly formula: string }>(item: Item, change: (formula: string) => string): Item {
  const formula = change(item.formula);
  return formula === item.formula ? item : { ...item, formula };
}

function changeFormulas(cells: CellGrid, change: (formula: string) => string): CellGrid {
  return new Map([...cells].map(([row, line]) => [row, new Map([...line].map(([column, cell]) => {
    return [column, cell.formula?.includes("!") === true ? changedFormula({ ...cell, formula: cell.formula }, change) : cell];
  }))]));
}
