import type { Cell } from "../../../sheet";
import { inWords, type Bench, type Trial } from "./trial";

/** Texts that a cell loses where its format does not keep them. */
const texts: Readonly<Record<string, string>> = {
  "text-formula": "=1",
  "text-zeros": "007",
  "text-date": "1-2",
  "text-plus": "+x",
  "text-at": "@x",
  "text-apostrophe": "'",
  "text-after-apostrophe": "'x",
  "text-exponent": "1e5",
  "text-truth": "TRUE",
  "text-error": "#N/A",
  "text-blanks": " x ",
};

/** Column A: text as the add-in writes it. */
export const textTrial: Trial = {
  subject: "Text",
  probes: Object.entries(texts).map(([id, text]) => ({ id, tried: `The text ${text} is written into a cell`, expected: inWords(text) })),
  find: async (bench) => {
    const written = Object.values(texts);
    await bench.write(0, 0, written.map((value) => [{ value }]));
    const { values, formulas } = await bench.read();
    return written.map((_, row) => inWords(values[row]?.[0], formulas[row]?.[0]));
  },
};

/** A cell that is handed to a formula of ours in the same row; the formula names it as {cell}. */
interface ArgumentProbe {
  readonly id: string;
  readonly tried: string;
  readonly given: Cell;
  readonly formula: string;
  readonly expected: string;
}

const usableOfDrives = '=BAY.USABLE("RAID 6",{cell},4)';
const usableWithSpares = '=BAY.USABLE("RAID 6",12,4,{cell})';
const nameOfMonth = '=BAY.ISCSINAME({cell},"example.com","a1")';

const argumentProbes: readonly ArgumentProbe[] = [
  { id: "argument-none", tried: "A formula with its arguments in it", given: {}, formula: '=BAY.USABLE("RAID 6",12,4)', expected: "the number 40" },
  { id: "argument-blank", tried: "An empty cell where a number is needed", given: {}, formula: usableOfDrives, expected: "the error #VALUE!" },
  { id: "argument-blank-optional", tried: "An empty cell where an argument may be left out", given: {}, formula: usableWithSpares, expected: "the number 40" },
  { id: "argument-empty-text", tried: 'A formula that answers "" where an argument may be left out', given: { formula: '=""' }, formula: usableWithSpares, expected: "the number 40" },
  { id: "argument-number", tried: "A number in a cell", given: { value: 12 }, formula: usableOfDrives, expected: "the number 40" },
  { id: "argument-truth", tried: "A truth value where a number is needed", given: { formula: "=TRUE" }, formula: usableOfDrives, expected: "the error #VALUE!" },
  { id: "argument-text", tried: "A text in a cell", given: { value: "RAID 6" }, formula: "=BAY.USABLE({cell},12,4)", expected: "the number 40" },
  { id: "argument-error", tried: "An error where a number is needed", given: { formula: "=1/0" }, formula: usableOfDrives, expected: "the error #VALUE!" },
  { id: "argument-date", tried: "A date where a month is needed", given: { formula: "=DATE(2026,3,1)" }, formula: nameOfMonth, expected: "the text iqn.2026-03.com.example:a1" },
  { id: "argument-time", tried: "A time where a ratio is needed", given: { formula: "=TIME(3,1,0)" }, formula: "=BAY.EFFECTIVE(40,{cell})", expected: "the error #VALUE!" },
  { id: "argument-sum", tried: "A sum that is not exact in binary", given: { formula: "=0.1+0.2" }, formula: "=BAY.CONVERTSIZE({cell})", expected: "the number 0.3" },
  { id: "argument-sentence", tried: "A scheme without its groups", given: { value: "RAID 60" }, formula: "=BAY.USABLE({cell},12,4)", expected: "the error #VALUE!" },
];

function formulaIn(row: number): string {
  return argumentProbes[row]!.formula.replace("{cell}", `C${row + 1}`);
}

/** Columns C and D: cells, and formulas of ours that look at them. */
export const argumentTrial: Trial = {
  subject: "Arguments",
  probes: argumentProbes.map(({ id, tried, expected }, row) => ({ id, tried: `${tried}: ${formulaIn(row)}`, expected })),
  find: async (bench) => {
    await bench.write(0, 2, argumentProbes.map(({ given }, row) => [given, { formula: formulaIn(row) }]));
    const { values } = await bench.read();
    return argumentProbes.map((_, row) => inWords(values[row]?.[3]));
  },
};

/** Columns F to L: formulas that spill, and what stands in their way. */
export const spillTrial: Trial = {
  subject: "Spilled tables",
  probes: [
    { id: "spill-size", tried: "The table of a subnet spills", expected: "14 rows, 3 columns" },
    { id: "spill-header", tried: "Its first cell", expected: "the text Fact" },
    { id: "spill-blank", tried: "A cell of the table that is blank", expected: "an empty cell" },
    { id: "spill-formula", tried: "The formula that is read in a cell it spills into", expected: null },
    { id: "spill-is-formula", tried: "Cells of the table that count as formulas", expected: "the number 1" },
    { id: "spill-blocked", tried: "A table with a text in its way", expected: "the error #SPILL!" },
  ],
  find: async (bench) => {
    await bench.write(0, 5, [[{ formula: '=BAY.SUBNET("192.0.2.0/26")' }]]);
    await bench.write(0, 9, [[{ formula: "=SUMPRODUCT(--ISFORMULA(F1:H14))" }]]);
    await bench.write(2, 11, [[{ value: "in the way" }]]);
    await bench.write(0, 11, [[{ formula: '=BAY.SPLITPREFIX("192.0.2.0/24",26)' }]]);
    const { values } = await bench.read();
    const size = await bench.spill(0, 5);
    const shown = await toldOf(bench, "formulas", 1, 5);
    const blank = values.slice(1, size?.rows).find((line) => line[7] === "" || line[7] === null || line[7] === 0)?.[7];
    return [
      size === null ? "it does not spill" : `${size.rows} rows, ${size.columns} columns`,
      inWords(values[0]?.[5]),
      inWords(blank),
      shown.startsWith("=") ? "the formula of the first cell" : "what the cell shows",
      inWords(values[0]?.[9]),
      inWords(values[0]?.[11]),
    ];
  },
};

const kept: Cell = { value: "kept" };

/** Columns O to Q: what writing leaves alone, and number formats. */
export const writeTrial: Trial = {
  subject: "Writing",
  probes: [
    { id: "write-null", tried: "A row is written with nothing for its first cell", expected: "the text kept" },
    { id: "write-empty", tried: "A cell is emptied", expected: "an empty cell" },
    { id: "format-text", tried: "The number format of a cell that text is written into", expected: "@" },
    { id: "format-share", tried: "A cell of 0.5 in the format 0.0% shows", expected: "50.0%" },
    { id: "format-kept", tried: "The format of that cell once a formula is written into it", expected: "0.0%" },
    { id: "format-null", tried: "Formats are set with nothing for the first cell, which keeps", expected: "0.0%" },
  ],
  find: async (bench) => {
    await bench.write(0, 14, [[kept, kept]]);
    await bench.write(0, 14, [[null, {}]]);
    await bench.write(1, 14, [[{ value: 0.5 }, { value: 0.5 }]]);
    await bench.set((sheet) => (sheet.getRangeByIndexes(1, 14, 1, 1).numberFormat = [["0.0%"]]));
    const shown = await toldOf(bench, "text", 1, 14);
    await bench.write(1, 14, [[{ formula: "=1/4" }]]);
    const afterFormula = await toldOf(bench, "numberFormat", 1, 14);
    await bench.set((sheet) => (sheet.getRangeByIndexes(1, 14, 1, 2).numberFormat = [[null, "0.00"]]));
    const { values } = await bench.read();
    return [inWords(values[0]?.[14]), inWords(values[0]?.[15]), await toldOf(bench, "numberFormat", 0, 14), shown, afterFormula, await toldOf(bench, "numberFormat", 1, 14)];
  },
};

/** Asks what the program tells of one cell. */
function toldOf(bench: Bench, property: "formulas" | "numberFormat" | "text", row: number, column: number): Promise<string> {
  return bench.ask((sheet) => {
    const range = sheet.getRangeByIndexes(row, column, 1, 1).load(property);
    return () => String(range[property][0]?.[0]);
  });
}

/** Columns T to AC: as many cells as one request of the add-in reads. */
export const sizeTrial: Trial = {
  subject: "Size",
  probes: [{ id: "size-cells", tried: "20,000 cells of 40 letters are written and read", expected: "20000 cells as they were written" }],
  find: async (bench) => {
    const textAt = (row: number, column: number) => `row ${row} column ${column} `.padEnd(40, "x");
    await bench.write(0, 19, Array.from({ length: 2_000 }, (_, row) => Array.from({ length: 10 }, (__, column): Cell => ({ value: textAt(row, column) }))));
    const { values } = await bench.read();
    const same = Array.from({ length: 20_000 }, (_, cell) => [Math.floor(cell / 10), cell % 10] as const).filter(([row, column]) => values[row]?.[19 + column] === textAt(row, column));
    return [`${same.length} cells as they were written`];
  },
};

/** Column N: whether the program tells of a change. */
export const eventTrial: Trial = {
  subject: "Events",
  probes: [{ id: "event-change", tried: "A cell is written while the add-in listens", expected: "the change was told" }],
  find: async (bench) => [(await bench.changesDuring(() => bench.write(0, 13, [[{ value: "heard" }]]))) > 0 ? "the change was told" : "nothing was told"],
};
