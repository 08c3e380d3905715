import { DependencyManagerService, FormulaDependencyGenerator } from "@univerjs/engine-formula";

/** What the engine keeps by names, numbers or ids, with gaps. */
type Listed<T> = Readonly<Record<string, T | null | undefined>>;

/** The formula of a cell, or with which other cell it shares one. */
interface FormulaItem {
  readonly f: string;
  readonly si?: string;
  readonly x?: number;
  readonly y?: number;
}

/** Formulas by workbook, sheet, row and column. */
type Formulas = Listed<Listed<Listed<Listed<FormulaItem>>>>;

/** Workbooks by id, and their sheets. */
type Units = Listed<Listed<{ readonly rowCount: number; readonly columnCount: number }>>;

/** What the engine knows of a formula at its place; one that it shares is read, and looks up its ranges, at the first place alone. */
interface Node {
  readonly treeId: number;
  readonly formula: string;
  readonly isVirtual: boolean;
  readonly refTree?: Node | null;
  isDirty: boolean;
  rangeList: readonly object[];
  resetState(): void;
}

/** A formula taken apart, and the ranges it looks at. */
interface Reading {
  readonly syntax: object;
  readonly ranges: readonly object[];
}

/** What of the engine's generator is private, and stands in the way of large tabs. */
interface Generating {
  readonly _currentConfigService: { isForceCalculate(): boolean } & Readonly<Record<"getDirtyNameMap" | "getDirtyDefinedNameMap" | "getDirtySuperTableMap", () => Listed<object>>>;
  readonly _dependencyManagerService: object;
  readonly _dependencyTreeCache: Map<number, Node>;
  readonly _featureCalculationManagerService: { getReferenceExecutorMap(): ReadonlyMap<string, unknown> };
  _generateTreeList(formulas: Formulas, others: object, units: Units): Promise<readonly Node[]>;
  _getTreeNode(node: Node): object;
  _getAddressFunctionNodeList(syntax: object): readonly object[];
  _includeTree(node: Node, syntax: object): boolean;
  _nodeTraversalRef(syntax: object, found: { readonly nodeType: number }[]): void;
}

/** The nodes of a calculation, and what they were made of. */
interface Kept {
  readonly formulas: Formulas;
  readonly others: string;
  readonly sizes: string;
  readonly nodes: readonly Node[];
  readonly readings: ReadonlyMap<Node, Reading>;
}

/** What the engine calls the sign behind a reference that stands for all that a formula fills, which is another range each time. */
const suffix = 12;

/** By the index in which the ranges of the nodes stand. */
const kept = new WeakMap<object, Kept>();

/**
 * Lets the engine keep what it knows of formulas from one calculation to the next where none of them is another one.
 *
 * Left alone it makes a node of each formula, and of each cell with a conditional format, with every entry anew and looks up their ranges, whatever has
 * changed: of a tab of 1,700 steps seventeen thousand, to compute eighteen. Applies to every engine of the page or process; calling it again does nothing.
 */
export function keepNodes(): void {
  const generator = FormulaDependencyGenerator.prototype as unknown as Generating & { keepsNodes?: true };
  if (generator.keepsNodes) return;
  generator.keepsNodes = true;
  // What is called is the engine's own, with the generator it is called on.
  // eslint-disable-next-line @typescript-eslint/unbound-method
  const generate = generator._generateTreeList;
  generator._generateTreeList = async function (formulas, others, units) {
    const index = this._dependencyManagerService;
    const made = { formulas, others: JSON.stringify(others), sizes: sizesOf(units) };
    const before = kept.get(index);
    if (before && knowsAll(this) && !this._currentConfigService.isForceCalculate() && isSame(made, before)) return revive(this, before);
    kept.delete(index);
    const nodes = await generate.call(this, formulas, others, units);
    const readings = knowsAll(this) ? readingsOf(this, nodes) : null;
    if (readings) kept.set(index, { ...made, nodes, readings });
    return nodes;
  };
  forgetWhatIsTakenOut();
}

/** Tells whether formulas mean what they meant before: no sheet, name or table has become another one, and no plug-in adds formulas of its own. */
function knowsAll({ _currentConfigService: told, _featureCalculationManagerService: features }: Generating): boolean {
  const changed = [told.getDirtyNameMap(), told.getDirtyDefinedNameMap(), told.getDirtySuperTableMap()];
  return features.getReferenceExecutorMap().size === 0 && changed.every((units) => Object.values(units).every((names) => Object.keys(names ?? {}).length === 0));
}

/** Notes what each formula says and looks at; null where one looks at other ranges from time to time. */
function readingsOf(generator: Generating, nodes: readonly Node[]): Map<Node, Reading> | null {
  const readings = new Map<Node, Reading>();
  for (const node of nodes) {
    if (node.isVirtual || !node.formula) continue;
    const syntax = generator._getTreeNode(node);
    const found: { readonly nodeType: number }[] = [];
    generator._nodeTraversalRef(syntax, found);
    if (found.some(({ nodeType }) => nodeType === suffix) || generator._getAddressFunctionNodeList(syntax).length > 0) return null;
    readings.set(node, { syntax, ranges: [...node.rangeList] });
  }
  return readings;
}

/** Makes the nodes of the calculation before as the engine makes new ones: what is to be computed is found out anew, and it empties their lists of ranges. */
function revive(generator: Generating, { nodes, readings }: Kept): readonly Node[] {
  for (const [node, { ranges }] of readings) node.rangeList = [...ranges];
  for (const node of nodes) {
    const reading = readings.get(node.refTree ?? node);
    node.resetState();
    node.isDirty = reading !== undefined && generator._includeTree(node, reading.syntax);
    generator._dependencyTreeCache.set(node.treeId, node);
  }
  return nodes;
}

/** Forgets the nodes of an engine that takes ranges out of its index: some of theirs may be among them. */
function forgetWhatIsTakenOut(): void {
  const index = DependencyManagerService.prototype as unknown as Record<"reset" | "_removeAllTreeMap" | "_removeDependencyRTreeCacheById", (this: object, ...which: unknown[]) => void>;
  for (const name of ["reset", "_removeAllTreeMap", "_removeDependencyRTreeCacheById"] as const) {
    const take = index[name];
    index[name] = function (...which) {
      kept.delete(this);
      take.apply(this, which);
    };
  }
}

function sizesOf(units: Units): string {
  return JSON.stringify(Object.entries(units).map(([unit, sheets]) => [unit, Object.entries(sheets ?? {}).map(([sheet, size]) => [sheet, size?.rowCount, size?.columnCount])]));
}

type Made = Pick<Kept, "formulas" | "others" | "sizes">;

function isSame(one: Made, other: Made): boolean {
  return one.sizes === other.sizes && one.others === other.others && isSameFormulas(one.formulas, other.formulas);
}

const isSameFormulas = sameLists(sameLists(sameLists(sameLists(isSameFormula))));

function sameLists<T>(isSameEntry: (one: T, other: T) => boolean) {
  return (one: Listed<T>, other: Listed<T>): boolean => {
    const keys = Object.keys(one);
    if (keys.length !== Object.keys(other).length) return false;
    return keys.every((key) => {
      const [mine, its] = [one[key], other[key]];
      return mine && its ? isSameEntry(mine, its) : !mine && !its;
    });
  };
}

function isSameFormula(one: FormulaItem, other: FormulaItem): boolean {
  return one.f === other.f && one.si === other.si && one.x === other.x && one.y === other.y;
}
