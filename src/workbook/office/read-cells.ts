import type { Area, CellValue, SheetSnapshot } from "../../sheet";
import { rangeOf } from "./range-of";

/** A sheet of which the used area is known. */
export interface UsedSheet {
  readonly sheet: Excel.Worksheet;
  readonly used: Area;
  /** False where only values are wanted. */
  readonly hasFormulas: boolean;
}

/** Rows of one sheet that are read together. */
interface Block extends UsedSheet {
  readonly index: number;
}

/**
 * Most cells that one request reads. At the forty bytes a cell that commissioning tabs come to, and the eight that their values do, an answer is
 * 0.8 MB; the host on the web refuses 5 MB. Where cells hold more, a refused request is asked again in halves.
 */
const requestCells = 20_000;
/** How many cells without their formulas count as one with it. */
const valuesAsOne = 5;

export type Cells = Pick<SheetSnapshot, "values" | "formulas">;

/** Reads the cells of sheets, each from A1 to the last one used, in as many requests as their number asks for. */
export async function readCells(context: Excel.RequestContext, sheets: readonly UsedSheet[]): Promise<Cells[]> {
  const found = sheets.map(emptyCells);
  for (const request of requestsOf(sheets)) await readBlocks(context, request, found);
  return found;
}

function emptyCells({ used: { row, column, rows, columns }, hasFormulas }: UsedSheet): { values: CellValue[][]; formulas: (string | null)[][] } {
  const grid = <T>(): (T | null)[][] => Array.from({ length: row + rows }, () => new Array<T | null>(column + columns).fill(null));
  return { values: grid(), formulas: hasFormulas ? grid() : [] };
}

function requestsOf(sheets: readonly UsedSheet[]): Block[][] {
  const requests: Block[][] = [];
  let cells = Infinity;
  for (const [index, { sheet, used, hasFormulas }] of sheets.entries()) {
    const cost = used.columns / (hasFormulas ? 1 : valuesAsOne);
    const most = Math.max(1, Math.floor(requestCells / cost));
    for (let from = 0; from < used.rows; from += most) {
      const rows = Math.min(most, used.rows - from);
      if (cells + rows * cost > requestCells) {
        requests.push([]);
        cells = 0;
      }
      requests.at(-1)!.push({ index, sheet, used: { ...used, row: used.row + from, rows }, hasFormulas });
      cells += rows * cost;
    }
  }
  return requests;
}

/** Rows as the client gives them. */
type Rows = readonly (readonly unknown[])[];

async function readBlocks(context: Excel.RequestContext, blocks: readonly Block[], found: readonly { values: CellValue[][]; formulas: (string | null)[][] }[]): Promise<void> {
  const ranges = blocks.map(({ sheet, used, hasFormulas }) => rangeOf(sheet, used).load(hasFormulas ? "values,formulas" : "values"));
  try {
    await context.sync();
  } catch (thrown) {
    const halves = isTooLarge(thrown) ? halved(blocks) : null;
    if (halves === null) throw thrown;
    for (const half of halves) await readBlocks(context, half, found);
    return;
  }
  const unclear: { readonly block: Block; readonly formulas: Rows; readonly again: Excel.Range }[] = [];
  for (const [at, block] of blocks.entries()) {
    const { values } = ranges[at]!;
    const formulas: Rows = block.hasFormulas ? ranges[at]!.formulas : [];
    // With their values: what was busy a moment ago may be computed by now, and would be told as a text.
    if (takeOver(block, values, formulas, found[block.index]!)) unclear.push({ block, formulas, again: rangeOf(block.sheet, block.used).load("values,valueTypes") });
  }
  if (unclear.length === 0) return;
  await context.sync();
  for (const { block, formulas, again } of unclear) {
    takeOver(block, again.values, formulas, found[block.index]!);
    tellErrors(block.used, again.valueTypes, found[block.index]!.values);
  }
}

function isTooLarge(thrown: unknown): boolean {
  return thrown instanceof Error && "code" in thrown && thrown.code === "ResponsePayloadSizeLimitExceeded";
}

function halved(blocks: readonly Block[]): readonly (readonly Block[])[] | null {
  const [first] = blocks;
  if (blocks.length > 1) return [blocks.slice(0, blocks.length / 2), blocks.slice(blocks.length / 2)];
  if (first === undefined || first.used.rows < 2) return null;
  const rows = Math.floor(first.used.rows / 2);
  return [[{ ...first, used: { ...first.used, rows } }], [{ ...first, used: { ...first.used, row: first.used.row + rows, rows: first.used.rows - rows } }]];
}

/** What every error of a cell looks like, and few texts do. */
const looksLikeError = /^#[A-Z][A-Z0-9/_]*[!?]?$/;

/** Takes what was read; tells whether one of the values may be a text or an error, which only their types can tell. */
function takeOver({ used }: Block, shown: Rows, written: Rows, { values, formulas }: { values: CellValue[][]; formulas: (string | null)[][] }): boolean {
  let isUnclear = false;
  for (let y = 0; y < used.rows; y += 1) {
    for (let x = 0; x < used.columns; x += 1) {
      const [value, formula] = [shown[y]![x], written[y]?.[x]];
      // A text cell that begins with an equals sign shows the same text as its value and as its formula.
      const isFormula = typeof formula === "string" && formula.startsWith("=") && formula !== value;
      if (isFormula) formulas[used.row + y]![used.column + x] = formula;
      values[used.row + y]![used.column + x] = cellValue(value, isFormula);
      isUnclear ||= typeof value === "string" && looksLikeError.test(value);
    }
  }
  return isUnclear;
}

/** An empty cell shows an empty text, and so does a formula that answers one. */
function cellValue(value: unknown, isFormula: boolean): CellValue {
  if (typeof value === "string") return value === "" && !isFormula ? null : value;
  return typeof value === "number" || typeof value === "boolean" ? value : null;
}

function tellErrors({ row, column }: Area, types: readonly (readonly string[])[], values: CellValue[][]): void {
  types.forEach((line, y) => {
    line.forEach((type, x) => {
      const value = values[row + y]![column + x];
      if (type === "Error" && typeof value === "string") values[row + y]![column + x] = { error: value };
    });
  });
}
