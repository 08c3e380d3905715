// Writes the function pages, and the answers in every block marked `formulas` of the guides, by evaluating the formulas.
// `--check` writes nothing and fails when a page is stale.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { catalogue, families, type CatalogueEntry } from "../src/functions/catalogue";
import { installCustomFunctions } from "../src/functions/support/custom-functions";
import { createEvaluator, type Evaluation } from "../src/headless/evaluate";

const root = join(__dirname, "..");
const docs = join(root, "docs");

function signature(one: CatalogueEntry): string {
  const parameters = one.parameters.map(({ name, optional }) => (optional ? `[${name}]` : name));
  return `BAY.${one.id}(${parameters.join(", ")})`;
}

function functionPage(one: CatalogueEntry): string {
  const [page, title] = families.find(({ name }) => name === one.family)!.guide;
  const parameters = one.parameters.map(({ name, description, optional }) => `| ${name} | ${description.replaceAll("|", "\\|")} | ${optional ? "may be left out" : "needed"} |`);
  return [
    `# BAY.${one.id}`,
    one.description,
    `\`\`\`\n${signature(one)}\n\`\`\``,
    parameters.length > 0 ? ["| argument | what belongs there | |", "|---|---|---|", ...parameters].join("\n") : "It takes no argument.",
    `Answers: ${one.answers.returns}`,
    "## Examples",
    formulaBlock(one.examples),
    ...(one.mistakes.length === 0 ? [] : ["## When it cannot answer", formulaBlock(one.mistakes)]),
    `See also: [${title}](../${page}), [Models and their sources](../models.md), [all functions](index.md).`,
  ].join("\n\n").concat("\n");
}

function functionIndex(): string {
  const sections = families.map(({ name: family }) => {
    const rows = catalogue.filter((one) => one.family === family).map((one) => `| [${one.id}](${one.id}.md) | ${one.description.replaceAll("|", "\\|")} |`);
    return [`## ${family}`, ["| function | answers |", "|---|---|", ...rows].join("\n")].join("\n\n");
  });
  return ["# Functions", "All stand under `BAY.`. An argument in brackets may be left out.", ...sections].join("\n\n").concat("\n");
}

const formulaBlock = (formulas: readonly string[]): string => `\`\`\`formulas\n${formulas.join("\n")}\n\`\`\``;

/** Writes the answer of each formula below it: one value, an aligned table, or the error with its sentence. */
async function answerBlocks(markdown: string, evaluate: (formula: string) => Promise<Evaluation>): Promise<string> {
  const parts = markdown.split(/(```formulas\n[\s\S]*?```)/);
  const answered: string[] = [];
  for (const part of parts) {
    const formulas = part.startsWith("```formulas\n") ? part.split("\n").filter((line) => line.startsWith("=")) : null;
    if (formulas === null) {
      answered.push(part);
      continue;
    }
    const lines: string[] = [];
    for (const formula of formulas) lines.push(formula, ...render(await evaluate(formula)));
    answered.push(["```formulas", ...lines, "```"].join("\n"));
  }
  return answered.join("");
}

function render(answer: Evaluation): string[] {
  if ("error" in answer) return [`  ${answer.error}  ${answer.message}`];
  if ("value" in answer) return [`  ${show(answer.value)}`];
  const cells = answer.values.map((row) => row.map(show));
  const widths = cells[0]!.map((_, column) => Math.max(...cells.map((row) => row[column]!.length)));
  return cells.map((row) => `  ${row.map((cell, column) => cell.padEnd(widths[column]!)).join("  ").trimEnd()}`);
}

const show = (value: string | number | boolean): string =>
  typeof value === "boolean" ? String(value).toUpperCase() : typeof value === "number" ? String(Number(value.toPrecision(15))) : value;

async function main(check: boolean): Promise<void> {
  installCustomFunctions();
  const evaluate = createEvaluator();
  const faults: string[] = [];

  const drafts = new Map<string, string>();
  for (const name of readdirSync(docs).filter((file) => file.endsWith(".md"))) drafts.set(join(docs, name), readFileSync(join(docs, name), "utf8"));
  drafts.set(join(docs, "functions", "index.md"), functionIndex());
  for (const one of catalogue) drafts.set(join(docs, "functions", `${one.id}.md`), functionPage(one));

  const stale: string[] = [];
  for (const [path, draft] of drafts) {
    const page = await answerBlocks(draft, evaluate);
    const before = existsSync(path) ? readFileSync(path, "utf8") : null;
    if (before === page) continue;
    stale.push(relative(root, path));
    if (!check) {
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, page);
    }
  }
  for (const name of existsSync(join(docs, "functions")) ? readdirSync(join(docs, "functions")) : []) {
    if (drafts.has(join(docs, "functions", name))) continue;
    stale.push(`docs/functions/${name}`);
    if (!check) rmSync(join(docs, "functions", name));
  }

  if (check && stale.length > 0) faults.push(`Stale: ${stale.join(", ")}. Run: npm run pages`);
  console.log(check ? `${drafts.size} pages checked` : `${stale.length} of ${drafts.size} pages written`);
  if (faults.length > 0) {
    console.error(faults.join("\n"));
    process.exitCode = 1;
  }
}

void main(process.argv.includes("--check"));
