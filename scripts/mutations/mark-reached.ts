import ts from "typescript";
import type { Mutant } from "./find-mutants";

/**
 * Marks in the text of a file when the run reaches a mutant: `$reached(id)` stands before the statement, or in the short arrow function, that holds it.
 * A default value or a field of a class counts as reached when its file is loaded: rather too many tests than too few.
 */
export function markReached(file: string, text: string, mutants: readonly (readonly [id: number, Mutant])[]): string {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const insertions: [at: number, text: string][] = [];
  for (const [id, { start, end }] of mutants) {
    const holder = holderOf(source, start, end);
    if (ts.isArrowFunction(holder.parent)) insertions.push([holder.getStart(), `($reached(${id}), `], [holder.end, ")"]);
    else insertions.push([holder.getStart(), `$reached(${id}); `]);
  }
  let marked = text;
  for (const [at, insertion] of insertions.sort(([a], [b]) => b - a)) marked = marked.slice(0, at) + insertion + marked.slice(at);
  return marked;
}

/** Finds the smallest statement of a list of statements, or short body of an arrow function, around a stretch of text. */
function holderOf(source: ts.SourceFile, start: number, end: number): ts.Node {
  let holder: ts.Node = source.statements.find((statement) => statement.getStart() <= start && end <= statement.end)!;
  const visit = (node: ts.Node): void => {
    if (node.getStart() > start || node.end < end) return;
    const { parent } = node;
    const isListed = (ts.isBlock(parent) || ts.isCaseOrDefaultClause(parent)) && parent.statements.some((statement) => statement === node);
    const isShortBody = ts.isArrowFunction(parent) && parent.body === node && !ts.isBlock(node);
    if (isListed || isShortBody) holder = node;
    ts.forEachChild(node, visit);
  };
  visit(holder);
  return holder;
}
