import { showCell, type SheetSnapshot, type WorkbookSnapshot } from "../../sheet";
import { readCell, type Reading } from "../plan/read";
import { foldName, invalid, noAnswer, quote } from "../text";
import { designLines, needLines, type InputLine } from "./lines";
import { mostDesigns, optionsMark } from "./options-sheet";

type ReadLines<Lines extends Readonly<Record<string, InputLine>>> = {
  readonly [Key in keyof Lines]: Lines[Key] extends { readonly optional: true } ? Reading<Lines[Key]> : NonNullable<Reading<Lines[Key]>>;
};

/** What is needed, as the sheet says it. */
export type Needs = ReadLines<Pick<typeof needLines, (typeof needKeys)[number]>>;

/** A design, as far as plan and quote take it over: what it comes to and risks stands on the sheet. */
export type Design = ReadLines<Pick<typeof designLines, (typeof capacityKeys)[number]>> & {
  /** What rows of Models and of Quote take from it; null where it is not said. */
  readonly [Key in (typeof laterKeys)[number]]: Reading<(typeof designLines)[Key]>;
};

/** The needs and the designs of a sheet, in the order of their columns. */
export interface Options {
  readonly needs: Needs;
  readonly designs: readonly Design[];
}

const needKeys = ["dataNow", "growth", "years", "begins", "fillLimit", "currency", "margin"] as const;
const capacityKeys = ["design", "model", "drives", "driveSize", "scheme", "spares", "across", "arrays"] as const;
const laterKeys = ["watts", "units", "cost", "support"] as const;

/** Finds the sheet of options in a workbook; null where there is none. */
export function findOptions({ sheets }: WorkbookSnapshot): SheetSnapshot | null {
  return sheets.find(({ values }) => showCell(values[0]?.[0]) === optionsMark) ?? null;
}

/**
 * Reads the needs and the designs of the sheet of options: what people typed, by the text at the left of each line, whatever rows were put between.
 *
 * Designs without a name are none. Refuses what cannot be read or is not there yet, two designs of one name, and fewer than one; no answer without the sheet.
 */
export function readOptions(workbook: WorkbookSnapshot): Options {
  const sheet = findOptions(workbook);
  if (sheet === null) throw noAnswer("Options", null, "The workbook has no sheet of options. Choose Options sheet first, and fill its yellow cells.");
  const rows = new Map(sheet.values.map((line, at) => [foldName(showCell(line[0])), at]));
  const read = (line: InputLine, column: number, of: string) => {
    const row = rows.get(foldName(line.header));
    if (row === undefined) throw invalid(line.header, null, `The sheet ${sheet.name} has no line ${line.header} in column A. Make the sheet anew, or write the line back.`);
    const value = readCell(sheet.values[row]?.[column] ?? null, { ...line, header: `${line.header}${of}` });
    if ((value === null || value === "") && line.optional !== true) throw invalid(line.header, null, `${line.header}${of} is empty. ${line.meaning}`);
    return value;
  };
  const readAll = (lines: Readonly<Record<string, InputLine>>, keys: readonly string[], column: number, of: string) => keys.map((key) => [key, read(lines[key]!, column, of)] as const);

  const needs = Object.fromEntries(readAll(needLines, needKeys, 1, "")) as unknown as Needs;
  if (needs.years < 1 || needs.years > 50) throw invalid("Years", needs.years, `Years is ${needs.years}. Write a whole number from 1 to 50, such as 5.`);
  if (needs.growth <= -1) throw invalid("Growth a year", needs.growth, `Growth a year is ${needs.growth}, which leaves nothing. Write a number above -100%, such as 20%.`);
  const names = sheet.values[rows.get(foldName(designLines.design.header)) ?? -1] ?? [];
  const columns = Array.from({ length: mostDesigns }, (_, at) => 1 + at).filter((column) => showCell(names[column] ?? null).trim() !== "");
  const designs = columns.map((column) => {
    const of = ` of ${showCell(names[column]).trim()}`;
    const later = laterKeys.map((key) => [key, read({ ...designLines[key], optional: true }, column, of)] as const);
    return Object.fromEntries([...readAll(designLines, capacityKeys, column, of), ...later]) as unknown as Design;
  });
  if (designs.length === 0) throw invalid("Design", null, `No design on the sheet ${sheet.name} has a name. Write one into the line Design, such as One large array.`);
  const twice = designs.find(({ design }, at) => designs.findIndex((other) => foldName(other.design) === foldName(design)) !== at);
  if (twice !== undefined) throw invalid("Design", twice.design, `Two designs are called ${quote(twice.design)}. Give each a name of its own.`);
  return { needs, designs };
}
