import ts from "typescript";

/** A member of the host's library that the code uses, and the API set it came with. */
export interface UsedMember {
  readonly file: string;
  readonly line: number;
  readonly member: string;
  readonly set: string;
  readonly version: string;
}

const label = /\[Api set: (\w+)[^\]]*?(\d+\.\d+)/;

/** Sets of other programs, whose labels stand on members that all programs share. */
const foreign = /^(Mailbox|Word|PowerPoint|OneNote)/;

/**
 * Lists every member of the host's library that `files` of a program use and that is newer than `declared` says, unguarded.
 *
 * The set of a member stands in its doc comment. Guarded is what stands in the branch of a condition that both asks the host for the set
 * (`supports("1.13")` or newer) and looks whether the member is there (`"resize" in table`).
 */
export function unguardedMembers(program: ts.Program, files: readonly string[], declared: Readonly<Record<string, string>>): UsedMember[] {
  return usedMembers(program, files).flatMap(({ node, ...used }) => {
    const most = declared[used.set];
    const fits = most !== undefined && !newer(used.version, most);
    return fits || isGuarded(node, used.version) ? [] : [used];
  });
}

/**
 * Lists every member of the host's library that `files` of a program use and that `has` does not find, unless a condition looks for it first
 * (`"notes" in sheet`): the types tell of members that a build of the library may not have yet.
 */
export function missingMembers(program: ts.Program, files: readonly string[], has: (owner: string, member: string) => boolean): UsedMember[] {
  return usedMembers(program, files).flatMap(({ node, ...used }) => {
    const [owner, name] = used.member.split(".") as [string, string];
    return has(owner, name) || isGuarded(node, used.version) ? [] : [used];
  });
}

/** Lists every member of the host's library that carries an API set and is used in `files`. */
export function usedMembers(program: ts.Program, files: readonly string[]): (UsedMember & { readonly node: ts.Node })[] {
  const checker = program.getTypeChecker();
  const found: (UsedMember & { readonly node: ts.Node })[] = [];
  for (const file of files) {
    const source = program.getSourceFile(file);
    if (source === undefined) throw new Error(`${file} is not part of the program`);
    const visit = (node: ts.Node): void => {
      const name = ts.isPropertyAccessExpression(node) ? node.name : ts.isBindingElement(node) ? (node.propertyName ?? node.name) : null;
      for (const declaration of name === null ? [] : declarationsOf(checker, node, name)) {
        const [, set, version] = label.exec(declaration.getFullText()) ?? [];
        if (set === undefined || version === undefined || foreign.test(set)) continue;
        const line = source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1;
        const owner = ts.isClassDeclaration(declaration.parent) || ts.isInterfaceDeclaration(declaration.parent) ? (declaration.parent.name?.text ?? "") : "";
        found.push({ file, line, member: `${owner}.${name!.getText(source)}`, set, version, node });
        break;
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return found;
}

function declarationsOf(checker: ts.TypeChecker, node: ts.Node, name: ts.Node): readonly ts.Declaration[] {
  const symbol = ts.isBindingElement(node) ? checker.getTypeAtLocation(node.parent).getProperty(name.getText()) : checker.getSymbolAtLocation(name);
  return (symbol?.declarations ?? []).filter((one) => one.getSourceFile().fileName.includes("@types/office-js"));
}

function isGuarded(node: ts.Node, version: string): boolean {
  // Whatever is called on a new member is as new: one look for any member on the way will do.
  const way = node.getText().split(/[^\w]+/);
  for (let inner = node, outer = parentOf(node); outer !== undefined; inner = outer, outer = parentOf(outer)) {
    const condition = ts.isIfStatement(outer) && inner === outer.thenStatement ? outer.expression : ts.isConditionalExpression(outer) && inner === outer.whenTrue ? outer.condition : null;
    if (condition === null) continue;
    const text = condition.getText();
    const asked = /supports\("(\d+\.\d+)"\)/.exec(text)?.[1];
    if (asked !== undefined && !newer(version, asked) && way.some((member) => text.includes(`"${member}" in `)) && text.includes("&&") && !text.includes("||")) return true;
  }
  return false;
}

function newer(a: string, b: string): boolean {
  const [aMajor, aMinor] = a.split(".").map(Number) as [number, number];
  const [bMajor, bMinor] = b.split(".").map(Number) as [number, number];
  return aMajor !== bMajor ? aMajor > bMajor : aMinor > bMinor;
}

/** Finds what a node stands in; a file, which stands in nothing, has no parent against its type. */
function parentOf(node: ts.Node): ts.Node | undefined {
  return node.parent;
}
