import { isBlank, showCell, type CellValue, type Scalar, type SheetSnapshot } from "../../../sheet";
import {
  answersOf, isSnagClosed, results, rowResultOf, rowsOfSteps, snagAnswersOf, snagName, type JobRecords, type Result, type Snag, type SnagAnswers, type StepAnswers, type StepRow,
} from "../record";
import { snagColumnsOf, snagHeaders } from "./snag-columns";
import { slotColumns, tabColumns, tags, type TabColumn } from "./tab-columns";
import { untouchedSnag } from "./tab-formulas";
import type { TabPlaces, TabReading } from "./tab-reading";

/** A cell of a tab that holds a formula of ours, and what it must show. */
export interface TwinCell {
  /** Row and column of the sheet, from 0. */
  readonly row: number;
  readonly column: number;
  /** Names it in a sentence: `Result` of `No. 4 T-12`; a cell that is the only one of its name is of nothing. */
  readonly label: string;
  readonly of: string | null;
  readonly value: Scalar;
}

/** Labels of the figures above the steps, with what stands below each. */
export const figureLabels = {
  next: "Next open step",
  done: "Done",
  open: "Required open",
  differ: "Differ",
  again: "To see again",
  eye: "By eye",
  secondName: "Second name",
  snags: "Snags open",
  minutes: "Minutes left",
  seal: "Seal",
} as const;

type Figure = keyof typeof figureLabels;

/** Lists every cell of a tab that holds a formula of ours, with what it must show by what was typed: the twin of the whole sheet. */
export function twinCells(sheet: Pick<SheetSnapshot, "values">, tab: TabReading): TwinCell[] {
  return [...summaryCells(sheet, tab), ...rowsOfSteps(tab.steps).flatMap((row) => rowCells(row, tab)), ...tab.snags.flatMap((snag) => snagCells(snag, tab))];
}

/** Lists what the formulas of a tab answer: the twin's cells, and those of rows for snags in which nothing stands yet. */
export function tabAnswers(sheet: Pick<SheetSnapshot, "values">, tab: TabReading): Pick<TwinCell, "row" | "column" | "value">[] {
  const { key } = tab.places.columns;
  const columns = snagColumnsOf(tab.places.layout);
  const filled = new Set(tab.snags.map(({ row }) => row));
  const blank = sheet.values.flatMap((line, row) => (key !== undefined && line[key] === tags.snag && !filled.has(row) ? [row] : []));
  const answers = Object.keys(untouchedSnag) as (keyof SnagAnswers)[];
  return [...twinCells(sheet, tab), ...blank.flatMap((row) => answers.flatMap((answer) => cellIn(tab.places, columns[answer], { row, label: "", of: null, value: untouchedSnag[answer] })))];
}

function rowCells(stepRow: StepRow, { snags, places }: TabReading): TwinCell[] {
  const { row, no, stepId, records, settled } = stepRow;
  const cells: TwinCell[] = [];
  // Plain loops: a plan of a hundred jobs has half a million of these cells.
  const put = (key: TabColumn, of: string, value: Scalar): void => {
    const column = places.columns[key];
    if (column !== undefined) cells.push({ row, column, label: tabColumns[key].header, of, value });
  };
  for (const record of records) {
    const { slot, stepId: name } = record;
    const of = `No. ${no} ${name}`;
    const answers = answersOf(record, snags);
    if (slot !== null) put(slotColumns[slot.place]!.compares, of, answers.compares);
    else for (const answer of Object.keys(answers) as (keyof StepAnswers)[]) put(answer, of, answers[answer]);
  }
  if (records[0]!.slot !== null) {
    const of = `No. ${no} ${stepId}`;
    put("result", of, rowResultOf(stepRow));
    put("settled", of, settled ? 1 : 0);
  }
  return cells;
}

function snagCells(snag: Snag, tab: TabReading): TwinCell[] {
  const columns = snagColumnsOf(tab.places.layout);
  const answers = snagAnswersOf(snag, tab);
  // A snag whose step is gone holds what it was about as text.
  const isComputed = (answer: keyof SnagAnswers): boolean => typeof snag.typed.about === "number" || (answer !== "stepId" && answer !== "key");
  return (Object.keys(answers) as (keyof SnagAnswers)[]).filter(isComputed).flatMap((answer) =>
    cellIn(tab.places, columns[answer], { row: snag.row, label: snagHeaders[answer], of: snagName(snag), value: answers[answer] }),
  );
}

function cellIn({ columns }: TabPlaces, key: TabColumn | null, cell: Omit<TwinCell, "column">): TwinCell[] {
  const column = key === null ? undefined : columns[key];
  return column === undefined ? [] : [{ ...cell, column }];
}

/** Finds the figures above the steps by their labels; a figure whose label is gone is not there to be believed. */
function summaryCells(sheet: Pick<SheetSnapshot, "values">, tab: TabReading): TwinCell[] {
  const firstStep = tab.steps[0]?.row ?? tab.places.snagsRow;
  const shown = figuresOf(tab);
  const labels = sheet.values.findIndex((line, row) => row > tab.headerRow && row < firstStep && line.includes(figureLabels.next));
  const figures = labels < 0 ? [] : (Object.keys(figureLabels) as Figure[]).flatMap((figure): TwinCell[] => {
    const column = sheet.values[labels]!.indexOf(figureLabels[figure]);
    return column < 0 ? [] : [{ row: labels + 1, column, label: figureLabels[figure], of: null, value: shown[figure] }];
  });
  const { found } = tab.places.columns;
  const line = found === undefined ? [] : [{ row: tab.markRow, column: found, label: "The line of progress", of: null, value: progressLine(shown) }];
  return [...line, ...figures];
}

function figuresOf(records: JobRecords): Readonly<Record<Figure, Scalar>> {
  const { snags, seals } = records;
  const rows = rowsOfSteps(records.steps);
  const count = (result: Result): number => rows.filter((row) => row.result === result).length;
  const next = rows.find(({ settled }) => !settled);
  const hasSeal = seals.some(({ typed }) => typed.by !== null);
  return {
    next: next === undefined ? "none" : `No. ${next.no} ${next.stepId}`,
    done: `${rows.filter(({ settled }) => settled).length} of ${rows.filter(({ no }) => no !== "").length}`,
    open: rows.filter(({ required, settled }) => required && !settled).length,
    differ: count(results.differs),
    again: count(results.checkAgain),
    eye: count(results.compareByEye),
    secondName: count(results.needsSecondName),
    snags: snags.filter((snag) => !isSnagClosed(snag)).length,
    minutes: rows.reduce((sum, { settled, minutes }) => sum + (settled ? 0 : minutes), 0),
    seal: !hasSeal ? "not sealed" : seals.at(-1)?.typed.reopened === null ? (seals.at(-1)?.typed.code ?? "") : "reopened",
  };
}

function progressLine({ done, open, differ, again, snags }: Readonly<Record<Figure, Scalar>>): string {
  return `${showCell(done)} steps done, ${showCell(open)} required open, ${showCell(differ)} differ, ${showCell(again)} to see again, ${showCell(snags)} snags open`;
}

/** A cell of ours that says something else than it must. */
export interface ForgedCell {
  readonly row: number;
  readonly column: number;
  readonly fact: string;
  readonly sentence: string;
}

/**
 * Lists the cells of ours that hold no formula any more, or show something else than the twin's.
 *
 * One that was not computed shows nothing and is none. What a formula says is not looked at: other programs write it in their own way.
 */
export function forgedCells(sheet: SheetSnapshot, tab: TabReading): ForgedCell[] {
  return twinCells(sheet, tab).flatMap(({ row, column, label, of, value }) => {
    const shown = sheet.values[row]?.[column] ?? null;
    const hasFormula = (sheet.formulas[row]?.[column] ?? null) !== null;
    if (hasFormula && (isBlank(shown) || showsSame(shown, value))) return [];
    const what = hasFormula ? `shows ${quoteShort(shown)} where ${quoteShort(value)} is right` : "holds no formula any more";
    const fact = `${label}${of === null ? "" : ` of ${of}`} ${what}.`;
    return [{ row, column, fact, sentence: `${fact} Build the tab again: the formula comes back.` }];
  });
}

/** Compares what a cell shows with what it must, as other programs store it: numbers at 15 digits. */
export function showsSame(shown: CellValue, value: Scalar): boolean {
  return shown === value || showCell(shown) === showCell(value);
}

function quoteShort(value: CellValue): string {
  const text = showCell(value).replace(/\s+/g, " ");
  return text === "" ? "nothing" : `“${text.length > 30 ? `${text.slice(0, 29)}…` : text}”`;
}
