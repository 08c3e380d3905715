import { readFileSync, writeFileSync } from "node:fs";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openHeadless } from "../../../src/headless/open-headless";
import { cellAddress, isError, type CellValue } from "../../../src/sheet";
import { readSnapshot } from "../../../src/workbook/xlsx/read-snapshot";
import { escapeXml } from "../../../src/workbook/xlsx/xml";
import { hasLibreOffice, saveInLibreOffice } from "../../support/libre-office";
import { ourFormulas, partsOf } from "../../support/our-formulas";
import { rawWorkbook } from "../../support/raw-workbook";

// The engine against LibreOffice: what the native functions of our tables and tabs answer of what people type. The answers of LibreOffice were made in
// one batch; where it is installed they are made anew, and UPDATE_GOLDEN=1 writes them.
const file = join(__dirname, "native-functions.json");

/** What may stand in a cell: an empty one, or the XML of one. */
const cells = {
  "blank": "",
  "empty text": "<f>\"\"</f>",
  "0": "<v>0</v>",
  "12": "<v>12</v>",
  "-2.5": "<v>-2.5</v>",
  "0.1+0.2": "<f>0.1+0.2</f>",
  "0.3": "<v>0.3</v>",
  "a day": "<v>45000</v>",
  "yes": "<v>1</v>",
  "no": "<v>0</v>",
  "#N/A": "<f>NA()</f>",
  "#DIV/0!": "<f>1/0</f>",
  "text 12": "12",
  "text 0": "0",
  "text 2026-03-02": "2026-03-02",
  "text 1e3": "1e3",
  "text Yes": "Yes",
  "text yes": "yes",
  "text TRUE": "TRUE",
  "text of a blank": " ",
  "text with blanks": " a b ",
  "text with a hard blank": "a\u00a0b",
  "text with signs": "a*?~b",
  "text ß": "Straße",
} as const;
type CellName = keyof typeof cells;
const names = Object.keys(cells) as CellName[];
/** What is compared with each of them, beside themselves. */
const others = ["blank", "empty text", "0", "12", "yes", "#N/A", "text 12", "text yes", "text with signs"] as const satisfies readonly CellName[];

/** Formulas of one cell, `x`, or of two; `all` is the column of every cell above, `beside` numbers beside it. */
const ofOne = [
  'x=""', 'x<>""', 'x="12"', "x=0", 'x="Yes"', "x>0", "x<>0", "x>=0.3", "x<=0", 'x&""', "1*x", "1+x", "x/2", "-x", "IF(x,1,2)", 'IF(x="",1,2)', "NOT(x)",
  'NOT(x="")', 'OR(x="",x="Yes")',
  'AND(ISTEXT(x),x="12")', "ISNUMBER(x)", "ISTEXT(x)", "ISLOGICAL(x)", "ISERROR(x)", 'IFERROR(x,"no")', 'IFERROR(1*x,"no")', "LEN(x)",
  'SUBSTITUTE(x," ","")', 'LEN(SUBSTITUTE(SUBSTITUTE(x," ",""),"\u00a0",""))',
  "LOWER(x)", "LEFT(x,2)", 'LEFT(x,2)="12"', 'FIND("2",x)', 'ISERROR(FIND(" ",x))', "ROUND(x*10,0)", "INT(x)", "COUNT(x)", "COUNTA(x)", "SUM(x)",
  "SUMPRODUCT(1*(x=0))",
] as const;
const ofTwo = [
  "x=y", "x<>y", "x<y", "x>=y", "x&y", "x*y", "OR(x=y,x=0)", "AND(x>=y,x<=y)", "EXACT(x,y)", "EXACT(LOWER(x),LOWER(y))", 'IF(x=y,"yes","no")',
  'IFERROR(IF(x=y,"yes","no"),"eye")', "SUBSTITUTE(x,y,1)", "ISNUMBER(SEARCH(x,y))",
] as const;
const ofColumn = [
  "MATCH(x,all,0)", 'IFERROR(INDEX(beside,MATCH(x,all,0)),"none")', "COUNTIF(all,x)", "SUMIF(all,x,beside)", "SUMIFS(beside,all,x)",
  "SUMPRODUCT((all=x)*beside)", "COUNT(all)", "COUNTA(all)",
  'SUMPRODUCT(1*(LEFT(beside,1)="1"))', "SUM(beside)", "SUMPRODUCT((beside=x)*1)",
] as const;

/** Native functions of ours that LibreOffice had no word for when the answers were made. */
const unknownThere = ["FILTER"];

/** Where answers differ, and why that may stay. */
interface Known {
  readonly why: string;
  readonly cells: readonly CellName[];
  readonly formulas: readonly string[];
}
const known: readonly Known[] = [
  {
    why: "LibreOffice keeps a tick as the number 1 or 0; the spreadsheet host and the engine know it from a number.",
    cells: ["yes", "no"],
    formulas: [
      'x&""', "ISNUMBER(x)", "LEN(x)", 'SUBSTITUTE(x," ","")', 'LEN(SUBSTITUTE(SUBSTITUTE(x," ",""),"\u00a0",""))', "LOWER(x)", "LEFT(x,2)",
      "COUNT(x)", "SUM(x)", "x=0", "x>0", "x<>0", "x>=0.3", "x<=0", "SUMPRODUCT(1*(x=0))", "x&y", "x<y", "x>=y", "x*y", "OR(x=y,x=0)",
      "SUBSTITUTE(x,y,1)", "ISNUMBER(SEARCH(x,y))", "x=y", "x<>y", "AND(x>=y,x<=y)", 'IF(x=y,"yes","no")', 'IFERROR(IF(x=y,"yes","no"),"eye")', "EXACT(x,y)",
      "EXACT(LOWER(x),LOWER(y))", "COUNT(all)", "COUNTA(all)", "SUMPRODUCT((beside=x)*1)", "MATCH(x,all,0)",
      'IFERROR(INDEX(beside,MATCH(x,all,0)),"none")', "COUNTIF(all,x)", "SUMIF(all,x,beside)", "SUMIFS(beside,all,x)",
    ],
  },
  {
    why: "The engine keeps an empty text that a formula answers as an empty cell: ours ask for its length.",
    cells: ["empty text"],
    formulas: [
      "x=0", "x>0", "x<>0", "x>=0.3", "x<=0", "1*x", "1+x", "x/2", "-x", "IF(x,1,2)", "NOT(x)", "ISTEXT(x)", 'IFERROR(1*x,"no")', "ROUND(x*10,0)", "INT(x)",
      "COUNTA(x)", "SUMPRODUCT(1*(x=0))", "x=y", "x<>y", "x<y", "x>=y", "x*y", "AND(x>=y,x<=y)", 'IF(x=y,"yes","no")',
      'IFERROR(IF(x=y,"yes","no"),"eye")', "OR(x=y,x=0)", "MATCH(x,all,0)", 'IFERROR(INDEX(beside,MATCH(x,all,0)),"none")', "SUMIF(all,x,beside)",
      "SUMIFS(beside,all,x)", "COUNT(all)", "COUNTA(all)",
    ],
  },
  {
    why: "Nothing is found in any text by the spreadsheet host and the engine, and in none by LibreOffice: ours look for something.",
    cells: ["blank", "empty text"],
    formulas: ["ISNUMBER(SEARCH(x,y))"],
  },
  {
    why: "The column holds ticks and an empty text.",
    cells: names,
    formulas: ["COUNT(all)", "COUNTA(all)"],
  },
  {
    why:
      "A criterion of 12 means digits typed as text too, MATCH tells them apart, and an empty cell is looked for as 0, in the spreadsheet host and here; LibreOffice does otherwise. " +
      "Texts that read as a date or as 1e3 the engine alone does not find.",
    cells: names,
    formulas: ["SUMIF(all,x,beside)", "SUMIFS(beside,all,x)", "COUNTIF(all,x)", "MATCH(x,all,0)", 'IFERROR(INDEX(beside,MATCH(x,all,0)),"none")'],
  },
  {
    why: "The text TRUE is no number to the engine; ours never reckon with it.",
    cells: ["text TRUE"],
    formulas: ["1*x", "1+x", "x/2", "-x", 'IFERROR(1*x,"no")', "ROUND(x*10,0)", "INT(x)", "x*y"],
  },
  {
    why: "A text is no condition in other programs, and yes here; ours ask first whether it is a tick.",
    cells: names,
    formulas: ["IF(x,1,2)", "NOT(x)"],
  },
  {
    why: "Of two errors, or of an error and a text that is no number, programs answer with the one or the other.",
    cells: ["#N/A"],
    formulas: ["x&y", "EXACT(x,y)", "SUBSTITUTE(x,y,1)", "x*y"],
  },
  {
    why: "A formula that answers an empty cell shows nothing here, and 0 elsewhere.",
    cells: ["blank"],
    formulas: ['IFERROR(x,"no")'],
  },
  {
    why: "SUBSTITUTE takes a hard blank for a blank here; ours take both out.",
    cells: ["text with a hard blank"],
    formulas: ['SUBSTITUTE(x," ","")'],
  },
];

function cellOf(row: number, column: number, name: CellName): string {
  const inside: string = cells[name];
  const place = `r="${cellAddress({ row, column })}"`;
  if (name === "blank") return "";
  if (name === "yes" || name === "no") return `<c ${place} t="b">${inside}</c>`;
  return inside.startsWith("<") ? `<c ${place}>${inside}</c>` : `<c ${place} t="inlineStr"><is><t xml:space="preserve">${escapeXml(inside)}</t></is></c>`;
}

const firstFormula = 3;
const formulaCell = (row: number, column: number, formula: string) => `<c r="${cellAddress({ row, column: column + firstFormula })}"><f>${escapeXml(formula)}</f></c>`;
const written = (formula: string, row: number) => formula.replaceAll(/\bx\b/g, `$A${row + 1}`).replaceAll(/\by\b/g, `$B${row + 1}`);

/** The cells that a sheet's formulas look at, row by row. */
const rowsOf = {
  One: names.map((name) => [name] as const),
  Two: names.flatMap((name) => others.map((other) => [name, other] as const)),
  Column: names.map((name) => [name] as const),
} as const;
const formulasOf = { One: ofOne, Two: ofTwo, Column: ofColumn } as const;
type Sheet = keyof typeof rowsOf;

function questions(): Uint8Array {
  const sheets = Object.fromEntries(
    (Object.keys(rowsOf) as Sheet[]).map((sheet) => {
      const column = (letter: string) => `$${letter}$1:$${letter}$${names.length}`;
      const rows = rowsOf[sheet].map(([one, other], row) => {
        const beside = sheet === "Column" ? `<c r="B${row + 1}"><v>${row + 1}</v></c>` : other === undefined ? "" : cellOf(row, 1, other);
        const formulas = formulasOf[sheet].map((formula, at) => {
          return formulaCell(row, at, written(formula.replaceAll(/\ball\b/g, column("A")).replaceAll(/\bbeside\b/g, column("B")), row));
        });
        return `<row r="${row + 1}">${cellOf(row, 0, one)}${beside}${formulas.join("")}</row>`;
      });
      return [sheet, `<sheetData>${rows.join("")}</sheetData>`];
    }),
  );
  return rawWorkbook({ sheets });
}

type Answers = Readonly<Record<string, unknown>>;

/** Reads what a workbook answers, by question: `x=y | 12 | text 12`. Numbers are taken to 12 digits, as programs round differently behind them. */
function answersOf(sheets: readonly { readonly name: string; readonly values: readonly (readonly CellValue[])[] }[]): Answers {
  return Object.fromEntries(
    sheets.flatMap(({ name, values }) => {
      const sheet = name as Sheet;
      return rowsOf[sheet].flatMap((asked, row) =>
        formulasOf[sheet].map((formula, at) => {
          const value = values[row]?.[at + firstFormula] ?? null;
          const answer = isError(value) ? value.error : typeof value === "number" ? Number(value.toPrecision(12)) : (value ?? "");
          return [`${formula} | ${asked.join(" | ")}`, answer];
        }),
      );
    }),
  );
}

async function answersOfEngine(): Promise<Answers> {
  const workbook = await openHeadless(questions(), { keepsFigures: false });
  await workbook.settle();
  const { sheets } = await workbook.port.read();
  workbook.dispose();
  return answersOf(sheets);
}

test("every native function and operator of our tables and tabs is asked for here", () => {
  const asked = new Set([...ofOne, ...ofTwo, ...ofColumn].flatMap((formula) => partsOf(`=${formula}`)));
  const used = new Set(ourFormulas().flatMap(partsOf));
  expect(used.size).toBeGreaterThan(30);
  expect([...used].filter((part) => !asked.has(part)).sort()).toEqual(unknownThere);
});

test("the engine answers what LibreOffice answers, but for what is known", async () => {
  const wanted = JSON.parse(readFileSync(file, "utf8")) as Answers;
  const answered = await answersOfEngine();
  expect(Object.keys(answered)).toEqual(Object.keys(wanted));
  const met = new Set<string>();
  const differing = Object.keys(wanted).filter((question) => {
    if (Object.is(wanted[question], answered[question])) return false;
    const [formula = "", ...asked] = question.split(" | ");
    const reasons = known.filter(({ cells, formulas }) => formulas.includes(formula) && cells.some((cell) => asked.includes(cell)));
    for (const { why } of reasons) met.add(`${why} ${formula}`);
    return reasons.length === 0;
  });
  expect(differing.map((question) => `${question}: ${String(wanted[question])} there, ${String(answered[question])} here`)).toEqual([]);
  // A reason that nothing needs any longer goes.
  expect(known.flatMap(({ why, formulas }) => formulas.map((formula) => `${why} ${formula}`)).filter((one) => !met.has(one))).toEqual([]);
});

(hasLibreOffice ? test : test.skip)("LibreOffice answers what is written here", async () => {
  const folder = await mkdtemp(join(tmpdir(), "native-functions-"));
  try {
    await writeFile(join(folder, "questions.xlsx"), questions());
    const answers = answersOf(readSnapshot(readFileSync(saveInLibreOffice(join(folder, "questions.xlsx"), join(folder, "answered"), { computes: true }))).sheets);
    if (process.env.UPDATE_GOLDEN === "1") writeFileSync(file, `{\n${Object.entries(answers).map(([question, answer]) => `${JSON.stringify(question)}:${JSON.stringify(answer)}`).join(",\n")}\n}\n`);
    expect(answers).toEqual(JSON.parse(readFileSync(file, "utf8")));
  } finally {
    await rm(folder, { recursive: true });
  }
});
