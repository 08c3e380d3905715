import { Refusal, type HostObject } from "./host-object";
import { Computing } from "./host-sheet";

/** One piece of a request, as the host's client sends it. */
interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: Arguments;
  readonly QueryInfo?: { readonly Select?: readonly string[] };
}

interface Arguments {
  readonly Arguments?: readonly unknown[];
  readonly ReferencedObjectPathIds?: readonly unknown[] | null;
}

/** How an object of a request is come by. */
interface ObjectPath {
  readonly Id: number;
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: Arguments;
}

export interface RequestBody {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
}

interface Result {
  readonly ActionId: number;
  readonly Value: unknown;
}

export interface ResponseBody {
  readonly Results: readonly Result[];
  readonly Error?: { readonly Code: string; readonly Message: string; readonly Location: string; readonly ActionIndex: number };
}

const [instantiate, query, call, set, trace] = [1, 2, 3, 4, 5];
const [rootPath, newPath, methodPath, propertyPath, indexerPath, referencePath, nullPath] = [1, 2, 3, 4, 5, 6, 7];

/** Tells an action that changes the workbook from one that reads it, listens to it or speeds the request up. */
export function isChange({ ActionType: type, Name: name }: Action): boolean {
  return type === set || (type === call && !/^(_|Suspend|GetCount$)/.test(name));
}

/** Says what an action does, such as `set Formulas` or `call CopyFrom`. */
export function actionKind({ ActionType: type, Name: name }: Action): string {
  return type === set ? `set ${name}` : type === call ? `call ${name}` : type === query ? "load" : type === instantiate ? "find" : "trace";
}

/** Objects the client asked to be kept from one request to the next, by the reference they were given. */
export type References = Map<string, HostObject>;

/**
 * Carries out the actions of a request in their order, `stopAfter` of them at most, and answers as the host does.
 *
 * An object is found when the first action needs it, and once a request. What was done before a refusal stays done. An action that needs
 * what formulas come to waits until they are computed.
 */
export async function execute({ Actions: actions, ObjectPaths: paths }: RequestBody, root: HostObject, references: References, stopAfter = Infinity): Promise<ResponseBody> {
  const found = new Map<number, HostObject | null>();
  const kept = new Map<number, string>();
  const results: Result[] = [];

  const values = (info: Arguments = {}): unknown[] =>
    (info.Arguments ?? []).map((value, index) => {
      const path = info.ReferencedObjectPathIds?.[index];
      return typeof path === "number" && path > 0 ? find(path) : value;
    });

  const find = (id: number): HostObject | null => {
    const known = found.get(id);
    if (known !== undefined) return known;
    const object = resolve(paths[id]!);
    found.set(id, object);
    return object;
  };

  const resolve = ({ ObjectPathType: type, Name: name, ParentObjectPathId: parentId, ArgumentInfo: info }: ObjectPath): HostObject | null => {
    if (type === rootPath) return root;
    if (type === nullPath) return null;
    if (type === newPath) return memberOf(root.parts, root, name)();
    if (type === referencePath) {
      const object = references.get(name);
      if (object === undefined) throw new Refusal("ItemNotFound");
      return object;
    }
    if (type !== methodPath && type !== propertyPath && type !== indexerPath) throw new Error(`The stand-in does not know object paths of type ${type}`);
    const parent = find(parentId!);
    return parent === null ? null : memberOf(parent.parts, parent, type === indexerPath ? "getItem" : name)(...values(info));
  };

  const carryOut = ({ ActionType: type, Name: name, ObjectPathId: id, ArgumentInfo: info, QueryInfo: asked }: Action): unknown => {
    if (type === trace) return null;
    const object = find(id);
    switch (type) {
      case instantiate:
        return object === null ? null : { ...(object.id === undefined ? {} : { Id: object.id }), ...(kept.has(id) ? { _ReferenceId: kept.get(id) } : {}) };
      case query:
        return object === null ? null : loaded(object, asked?.Select ?? []);
      case set:
        // A null object takes nothing and says nothing.
        if (object !== null) memberOf(object.writes, object, name)(values(info)[0]);
        return null;
      case call: {
        if (object === null) return { _IsNull: true };
        if (name === "_KeepReference") {
          const reference = `reference-${references.size}`;
          references.set(reference, object);
          kept.set(id, reference);
          return null;
        }
        if (name === "_RemoveReference") return null;
        return memberOf(object.calls, object, name)(...values(info)) ?? null;
      }
      default:
        throw new Error(`The stand-in does not know actions of type ${type}`);
    }
  };

  for (const [index, action] of actions.slice(0, stopAfter).entries()) {
    try {
      results.push({ ActionId: action.Id, Value: await onceComputed(() => carryOut(action)) });
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      return { Results: results, Error: { Code: thrown.code, Message: thrown.message, Location: action.Name, ActionIndex: index } };
    }
  }
  return { Results: results };
}

/** Does something that may need what formulas come to; where they are not computed yet it waits and begins again, as nothing of it was done. */
export async function onceComputed<T>(work: () => T): Promise<T> {
  for (;;) {
    try {
      return work();
    } catch (thrown) {
      if (!(thrown instanceof Computing)) throw thrown;
      await thrown.done;
    }
  }
}

/** Reads the paths of a query, such as `protection/protected`; keys come back as the host writes them, in PascalCase. */
function loaded(object: HostObject, paths: readonly string[]): Record<string, unknown> {
  if (object.items !== undefined) return { _Items: object.items().map((item) => ({ Id: item.id, ...loaded({ ...item, items: undefined }, paths) })) };
  if (paths.length === 0 || paths.includes("*")) throw new Error(`All of a ${object.type} was loaded, not what is needed of it`);
  const answer: Record<string, unknown> = {};
  for (const path of paths) {
    const [name, ...rest] = path.split("/");
    if (rest.length === 0) answer[pascal(name!)] = memberOf(object.reads, object, name!)();
    else {
      const part = memberOf(object.parts, object, name!)();
      answer[pascal(name!)] = part === null ? null : { ...(answer[pascal(name!)] as object | undefined), ...loaded(part, [rest.join("/")]) };
    }
  }
  return answer;
}

function memberOf<Member>(members: Readonly<Record<string, Member>> | undefined, { type }: HostObject, name: string): Member {
  const member = members?.[camel(name)];
  if (member === undefined) throw new Error(`The stand-in knows no ${camel(name)} of a ${type} that is used like this`);
  return member;
}

function pascal(name: string): string {
  return name.slice(0, 1).toUpperCase() + name.slice(1);
}

function camel(name: string): string {
  return name.slice(0, 1).toLowerCase() + name.slice(1);
}
