import { noAnswer } from "../../planning/text";
import { foldSheetName, sameSheetName, type CellPlace } from "../../sheet";
import { checkEdits } from "../check-edits";
import type { Edit, WorkbookPort } from "../port";
import { formulaReferences } from "./formula-tokens";
import { outOfDate, type SheetCell } from "./out-of-date";
import { documentSnapshot } from "./document-snapshot";
import { sheetOfPlan } from "./sheet-of-plan";
import { cellAt, putCell, type DocumentCell, type DocumentSheet, type Look, type WorkbookDocument } from "./workbook-document";

/** A document that can be read and changed like a workbook, without anything that computes. */
export interface DocumentPort {
  readonly port: WorkbookPort;
  /** The document as it is now; sheets that were not touched are the very ones it began with. */
  readonly document: () => WorkbookDocument;
  /** Formulas that have no result, or no longer follow from what they look at, by the id of their sheet. */
  readonly open: () => ReadonlyMap<string, readonly CellPlace[]>;
  /** True where a formula names a sheet that was renamed or deleted, which it does not follow here. */
  readonly losesReferences: () => boolean;
}

/** Joins a document to the rest of the program: what is written stands there, and formulas keep the results that they came with. */
export function openDocumentPort(base: WorkbookDocument): DocumentPort {
  let sheets = [...base.sheets];
  const looks: Look[] = [...base.looks];
  const known = new Map<string, number>();
  const written: SheetCell[] = [];
  const renamed = new Set<string>();
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
    // A copy of the rows that change: what the file said stays to be compared with.
    const cells = new Map(sheet.cells);
    block.forEach((line, down) => {
      if (line.every((cell) => cell === null)) return;
      cells.set(row + down, new Map(cells.get(row + down)));
      line.forEach((cell, across) => {
        if (cell === null) return;
        const place = { row: row + down, column: column + across };
        const look = cellAt(cells, place.row, place.column)?.look ?? 0;
        const isText = typeof cell.value === "string" && cell.value !== "" && cell.formula === undefined;
        const made: DocumentCell = {
          value: cell.value === "" ? null : (cell.value ?? null),
          look: isText ? formatted(look, "@") : cell.formula !== undefined && looks[look]?.format === "@" ? formatted(look, undefined) : look,
          ...(cell.formula !== undefined && { formula: cell.formula, hasResult: cell.value !== undefined && cell.value !== null }),
        };
        putCell(cells, place.row, place.column, made.value === null && made.formula === undefined && made.look === 0 ? undefined : made);
        written.push({ sheet: sheet.id, ...place });
      });
    });
    change(name, { cells });
  }

  function formatted(look: number, format: string | undefined): number {
    const { format: old, ...rest } = looks[look] ?? {};
    if (old === format) return look;
    return keepLook({ ...rest, ...(format !== undefined && { format }), ...(look < base.looks.length && { basedOn: look }) });
  }

  function carryOut(edit: Edit): void {
    switch (edit.kind) {
      case "add-sheet": {
        const at = edit.after === undefined ? sheets.length : sheets.indexOf(named(edit.after)) + 1;
        sheets = [...sheets.slice(0, at), sheetOfPlan(edit.plan, `added${(added += 1)}`, keepLook), ...sheets.slice(at)];
        return;
      }
      case "write":
        write(edit);
        return;
      case "resize-table":
        change(edit.sheet, { tables: named(edit.sheet).tables.map((table) => (sameSheetName(table.name, edit.table) ? { ...table, area: edit.area } : table)) });
        return;
      case "rename-sheet":
        renamed.add(foldSheetName(edit.sheet));
        change(edit.sheet, { name: edit.name });
        return;
      case "show-sheet":
      case "hide-sheet":
        change(edit.sheet, { state: edit.kind === "show-sheet" ? "visible" : "hidden" });
        return;
      case "delete-sheet": {
        const gone = named(edit.sheet);
        renamed.add(foldSheetName(edit.sheet));
        sheets = sheets.filter((sheet) => sheet !== gone);
        return;
      }
      case "select":
    }
  }

  const document = (): WorkbookDocument => ({ sheets, looks, names: base.names });
  return {
    document,
    open() {
      const open = new Map<string, CellPlace[]>();
      const add = (sheet: string, place: CellPlace) => open.set(sheet, [...(open.get(sheet) ?? []), place]);
      for (const { id, cells } of sheets) {
        for (const [row, line] of cells) for (const [column, { formula, hasResult }] of line) if (formula !== undefined && hasResult === false) add(id, { row, column });
      }
      for (const { sheet, row, column } of outOfDate(document(), written, () => true)) add(sheet, { row, column });
      return open;
    },
    losesReferences: () => renamed.size > 0 && sheets.some((sheet) => namesAny(sheet, renamed)),
    port: {
      read: (choice) => Promise.resolve(documentSnapshot(document(), choice)),
      // What is refused is to come out of the promise, not past it.
      // eslint-disable-next-line @typescript-eslint/require-await
      async apply(edits) {
        checkEdits(edits, sheets.map(({ name, state, isProtected }) => ({ name, visible: state === "visible", protected: isProtected })));
        for (const edit of edits) carryOut(edit);
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

/** Tells whether a formula of a sheet names one of these sheets. */
function namesAny({ cells }: DocumentSheet, names: ReadonlySet<string>): boolean {
  return [...cells.values()].some((line) =>
    [...line.values()].some(({ formula }) => formula?.includes("!") === true && formulaReferences(formula).some(({ sheet }) => sheet !== undefined && names.has(foldSheetName(sheet)))),
  );
}
