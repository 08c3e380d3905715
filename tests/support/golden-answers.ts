import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { catalogue } from "../../src/functions/catalogue";
import { installCustomFunctions } from "../../src/functions/support/custom-functions";
import { cellAnswer } from "./cell-answer";
import { parseCall } from "./formula-call";

const folder = join(__dirname, "..", "golden");

/** Where the answers are recorded. */
export const answersFile = join(folder, "answers.json");

/** An answer and the release that first gave it. */
export interface RecordedAnswer {
  readonly release: string;
  readonly answer: unknown;
}

/** Reads the recorded answers by formula; the last of each is the one that holds. */
export function recordedAnswers(): Record<string, RecordedAnswer[]> {
  return existsSync(answersFile) ? (JSON.parse(readFileSync(answersFile, "utf8")) as Record<string, RecordedAnswer[]>) : {};
}

/** Lists the formulas that are held: those of the file, and what the help shows. The answer of VERSION is meant to change. */
export function goldenFormulas(): string[] {
  const listed = readFileSync(join(folder, "formulas.txt"), "utf8").split("\n").filter((line) => line.startsWith("="));
  const shown = catalogue.flatMap(({ examples, mistakes }) => [...examples, ...mistakes]);
  return [...new Set([...listed, ...shown])].filter((formula) => !formula.startsWith("=BAY.VERSION("));
}

/** Answers a formula as a cell does: a value, a table, or the code of its error (its sentence may be put better); numbers at the 15 digits a sheet keeps. */
export function answerOf(formula: string): unknown {
  installCustomFunctions();
  const { id, args } = parseCall(formula);
  const found = catalogue.find((one) => one.id === id);
  if (found === undefined) throw new Error(`${formula} calls no function of ours`);
  return shown(cellAnswer(() => found.call(...args)));
}

/** Tells whether two answers are the same cell by cell. */
export function sameAnswer(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function shown(answer: unknown): unknown {
  if (Array.isArray(answer)) return answer.map(shown);
  if (typeof answer === "string") return /^#(?:VALUE!|N\/A)(?= )/.exec(answer)?.[0] ?? answer;
  return typeof answer === "number" ? Number(answer.toPrecision(15)) : answer;
}
