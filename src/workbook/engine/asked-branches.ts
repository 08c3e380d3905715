import {
  BooleanValueObject, Interpreter, type ArrayValueObject, type BaseAstNode, type BaseReferenceObject, type BaseValueObject, type FunctionVariantType,
} from "@univerjs/engine-formula";

/** What of the engine's interpreter is private, and works out what nobody asks for. */
interface Interpreting {
  readonly _runtimeService: { isStopExecution(): boolean };
  _execute(node: BaseAstNode, refOffsetX?: number, refOffsetY?: number): number;
}

/** What stands where a branch was not asked for; IF never looks at it. */
const unasked = BooleanValueObject.create(false);

/**
 * Works out only the branch of IF that its test asks for, as spreadsheet programs do.
 *
 * Left alone the engine works out both, so that a row nobody has filled costs as much as a full one. Where the test is a range, every branch is worked out.
 * Applies to every engine of the page or process; calling it again does nothing.
 */
export function leaveUnaskedBranches(): void {
  const interpreter = Interpreter.prototype as unknown as Interpreting & { leavesUnaskedBranches?: true };
  if (interpreter.leavesUnaskedBranches) return;
  interpreter.leavesUnaskedBranches = true;
  // What is called is the engine's own, with the interpreter it is called on.
  // eslint-disable-next-line @typescript-eslint/unbound-method
  const execute = interpreter._execute;
  interpreter._execute = function (node, refOffsetX, refOffsetY) {
    const [test, ...branches] = isIf(node) ? node.getChildren() : [];
    if (!test || isLambda(test) || branches.some(isLambda) || this._runtimeService.isStopExecution()) return execute.call(this, node, refOffsetX, refOffsetY);
    this._execute(test, refOffsetX, refOffsetY);
    const answer = single(test.getValue() ?? null);
    branches.forEach((branch, place) => {
      if (answer === null || isAsked(place, answer)) this._execute(branch, refOffsetX, refOffsetY);
      else branch.setValue(unasked);
    });
    node.execute();
    return 0;
  };
}

/** What the engine calls a node that is a function. */
const aFunction = 4;

function isIf(node: { readonly nodeType: number; getToken(): string }): boolean {
  return node.nodeType === aFunction && node.getToken().toUpperCase() === "IF";
}

function isLambda(node: BaseAstNode): boolean {
  return node.getToken().toUpperCase() === "LAMBDA";
}

/** The one value of a test; null where it has several, or none. */
function single(value: FunctionVariantType | null): BaseValueObject | null {
  if (!value) return null;
  if (!value.isArray() && !value.isReferenceObject()) return value as BaseValueObject;
  const cells = value as ArrayValueObject | BaseReferenceObject;
  if (cells.getRowCount() !== 1 || cells.getColumnCount() !== 1) return null;
  return (cells.isReferenceObject() ? (cells as BaseReferenceObject).toArrayValueObject() : (cells as ArrayValueObject)).get(0, 0) ?? null;
}

/** Tells whether the engine's IF answers with the branch in that place: with none of them where its test is an error. */
function isAsked(place: number, answer: BaseValueObject): boolean {
  return !answer.isError() && Boolean(answer.getValue()) === (place === 0);
}
