import ts from "typescript";

/** One small change of one source file. */
export interface Mutant {
  readonly file: string;
  readonly start: number;
  readonly end: number;
  readonly replacement: string;
  readonly kind: string;
}

type Change = Omit<Mutant, "file">;

/** What stands in for an operator, by the usual kinds of mutation testing. */
const otherOperators: Readonly<Record<string, readonly [kind: string, other: string][]>> = {
  "<": [["boundary", "<="], ["condition", ">="]],
  "<=": [["boundary", "<"], ["condition", ">"]],
  ">": [["boundary", ">="], ["condition", "<="]],
  ">=": [["boundary", ">"], ["condition", "<"]],
  "===": [["condition", "!=="]],
  "!==": [["condition", "==="]],
  "&&": [["logic", "||"]],
  "||": [["logic", "&&"]],
  "+": [["arithmetic", "-"]],
  "-": [["arithmetic", "+"]],
  "*": [["arithmetic", "/"]],
  "/": [["arithmetic", "*"]],
  "%": [["arithmetic", "*"]],
  "**": [["arithmetic", "*"]],
  "&": [["arithmetic", "|"]],
  "|": [["arithmetic", "&"]],
  "^": [["arithmetic", "&"]],
  "<<": [["arithmetic", ">>"]],
  ">>": [["arithmetic", "<<"]],
  ">>>": [["arithmetic", "<<"]],
  "+=": [["arithmetic", "-="]],
  "-=": [["arithmetic", "+="]],
  "*=": [["arithmetic", "/="]],
  "/=": [["arithmetic", "*="]],
  "|=": [["arithmetic", "&="]],
  "&=": [["arithmetic", "|="]],
  "<<=": [["arithmetic", ">>="]],
  ">>=": [["arithmetic", "<<="]],
  "??=": [["logic", "="]],
};

/** Lists every mutant of a source file, types, imports and names of properties left out, in the order of the text. */
export function findMutants(file: string, text: string): Mutant[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const found: Mutant[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node)) return;
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    for (const change of changesOf(node)) found.push({ file, ...change });
    ts.forEachChild(node, visit);
  };
  ts.forEachChild(source, visit);
  return found;
}

function* changesOf(node: ts.Node): Generator<Change> {
  yield* operatorChanges(node);
  yield* conditionChanges(node);
  yield* literalChanges(node);
  yield* chainChanges(node);
  yield* removals(node);
}

function* operatorChanges(node: ts.Node): Generator<Change> {
  if (ts.isBinaryExpression(node)) {
    const { left, operatorToken, right } = node;
    for (const [kind, other] of otherOperators[operatorToken.getText()] ?? []) yield change(kind, operatorToken, other);
    if (operatorToken.kind === ts.SyntaxKind.QuestionQuestionToken) {
      yield change("arm", node, left.getText());
      yield change("arm", node, right.getText());
    }
  }
  if (ts.isPrefixUnaryExpression(node) || ts.isPostfixUnaryExpression(node)) {
    const step = ts.isPostfixUnaryExpression(node) ? [node.operand.end, node.end] as const : [node.getStart(), node.operand.getStart()] as const;
    const kind = node.operator === ts.SyntaxKind.ExclamationToken ? "condition" : "arithmetic";
    const other = { [ts.SyntaxKind.PlusPlusToken]: "--", [ts.SyntaxKind.MinusMinusToken]: "++" }[node.operator as number] ?? "";
    yield { kind, start: step[0], end: step[1], replacement: other };
  }
}

/** Negates the conditions whose own operator does not do so already. */
function* conditionChanges(node: ts.Node): Generator<Change> {
  const condition = ts.isIfStatement(node) || ts.isWhileStatement(node) || ts.isDoStatement(node) ? node.expression : conditionOf(node);
  const hasOther = condition && (ts.isPrefixUnaryExpression(condition) || (ts.isBinaryExpression(condition) && condition.operatorToken.getText() in otherOperators));
  if (condition && !hasOther) yield change("condition", condition, `!(${condition.getText()})`);
  if (ts.isConditionalExpression(node)) {
    yield change("arm", node, node.whenTrue.getText());
    yield change("arm", node, node.whenFalse.getText());
  }
}

function conditionOf(node: ts.Node): ts.Expression | undefined {
  return ts.isForStatement(node) || ts.isConditionalExpression(node) ? node.condition : undefined;
}

function* literalChanges(node: ts.Node): Generator<Change> {
  if (isNameOf(node.parent, node)) return;
  if (node.kind === ts.SyntaxKind.TrueKeyword) yield change("boolean", node, "false");
  if (node.kind === ts.SyntaxKind.FalseKeyword) yield change("boolean", node, "true");
  if (ts.isNumericLiteral(node)) {
    for (const by of [1, -1]) yield change("number", node, inBrackets(String(Number(node.text) + by)));
  }
  if (ts.isBigIntLiteral(node)) {
    for (const by of [1n, -1n]) yield change("number", node, inBrackets(`${BigInt(node.getText().replaceAll("_", "").slice(0, -1)) + by}n`));
  }
  if ((ts.isStringLiteralLike(node) || ts.isTemplateExpression(node)) && !ts.isTaggedTemplateExpression(node.parent) && !isInConstTable(node)) {
    yield change("string", node, ts.isStringLiteralLike(node) && node.text === "" ? '"filled"' : '""');
  }
  if (ts.isArrayLiteralExpression(node) && node.elements.length > 0 && !isAssignedTo(node)) yield change("array", node, "[]");
}

function* chainChanges(node: ts.Node): Generator<Change> {
  if (!ts.isPropertyAccessExpression(node) && !ts.isElementAccessExpression(node) && !ts.isCallExpression(node)) return;
  if (node.questionDotToken) yield change("chain", node.questionDotToken, ts.isPropertyAccessExpression(node) ? "!." : "!");
}

function* removals(node: ts.Node): Generator<Change> {
  if (ts.isExpressionStatement(node)) yield change("statement", node, ";");
  if (ts.isReturnStatement(node) && node.expression) yield change("return", node, "return;");
  // A block of one expression is emptied already by removing that expression.
  if (ts.isBlock(node) && node.statements.some((statement, _, { length }) => length > 1 || !ts.isExpressionStatement(statement))) yield change("block", node, "{}");
}

function change(kind: string, node: ts.Node, replacement: string): Change {
  return { kind, start: node.getStart(), end: node.end, replacement };
}

function inBrackets(number: string): string {
  return number.startsWith("-") ? `(${number})` : number;
}

function isNameOf(parent: ts.Node, node: ts.Node): boolean {
  if (ts.isBindingElement(parent)) return parent.propertyName === node;
  return (ts.isPropertyAssignment(parent) || ts.isPropertyDeclaration(parent) || ts.isMethodDeclaration(parent)) && parent.name === node;
}

function isAssignedTo(node: ts.Node): boolean {
  return ts.isBinaryExpression(node.parent) && node.parent.left === node && node.parent.operatorToken.kind === ts.SyntaxKind.EqualsToken;
}

function isInConstTable(node: ts.Node): boolean {
  for (let above = node.parent; ts.isExpression(above) || ts.isPropertyAssignment(above); above = above.parent) {
    if (ts.isAsExpression(above) && ts.isConstTypeReference(above.type)) return true;
  }
  return false;
}
