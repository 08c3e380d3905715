import { OfficeMockObject } from "office-addin-mock";

/** An error as the spreadsheet host throws it. */
export class HostError extends Error {
  constructor(readonly code: string) {
    super(`The mock workbook refused: ${code}`);
  }
}

/** One piece of a request: what it does to the workbook when its turn comes, and how many bytes it adds. */
export interface Action {
  readonly act: () => void;
  readonly bytes: number;
}

/** The requests of one `run`: actions wait here for the next sync. */
export class Batch {
  actions: Action[] = [];

  queue(act: () => void, sent: unknown = null): void {
    this.actions.push({ act, bytes: 150 + new TextEncoder().encode(JSON.stringify(sent)).length });
  }
}

/** Makes something once and gives it out again. */
export type Once = <T>(make: () => T) => T;

interface Description<State> {
  /** Finds the object in the workbook when its turn in the request comes; null makes it a null object. */
  readonly find: () => State | null;
  /** Properties that can be loaded, by path. `once` keeps what several of them need while they are loaded together. */
  readonly read?: Readonly<Record<string, (state: State, once: Once) => unknown>>;
  /** Properties that can be set. */
  readonly write?: Readonly<Record<string, (state: State, value: never) => void>>;
  /** Methods and child objects. `state` throws before the object was found. */
  readonly members?: (object: { readonly found: () => State | null; readonly later: (act: (state: State) => void, sent?: unknown) => void }) => object;
}

/**
 * Makes one object of the host's library: found, loaded and changed only when the request is synchronised, in the order of the calls.
 *
 * Loading stands on office-addin-mock, so that a property read before load and sync is the text of an error.
 */
export function clientObject<State>(batch: Batch, { find, read = {}, write = {}, members }: Description<State>): never {
  const base = new OfficeMockObject(placeholders(Object.keys(read)), "excel" as never) as unknown as Record<string, unknown> & {
    load(path: string): void;
    sync(): Promise<void>;
    setValue(name: string, value: unknown): void;
  };
  let found: State | null = null;
  batch.queue(() => {
    found = find();
    base["isNullObject"] = found === null;
  });
  const later = (act: (state: State) => void, sent?: unknown) => {
    batch.queue(() => {
      if (found !== null) act(found);
    }, sent);
  };
  const own: Record<string, unknown> = {
    ...members?.({ found: () => found, later }),
    load: (paths: string) => {
      later((state) => {
        const kept: { value?: unknown } = {};
        const once: Once = (make) => ("value" in kept ? kept : Object.assign(kept, { value: make() })).value as ReturnType<typeof make>;
        for (const path of paths.split(",")) {
          const value = read[path];
          if (value === undefined) throw new Error(`The mock workbook cannot load "${path}"`);
          const parts = path.split("/");
          const parent = parts.slice(0, -1).reduce<typeof base>((object, part) => object[part] as typeof base, base);
          parent.setValue(parts.at(-1)!, value(state, once));
          base.load(path);
        }
        void base.sync();
      }, paths);
      return proxy;
    },
  };
  const proxy = new Proxy(base, {
    get: (target, key: string) => (Object.hasOwn(own, key) ? own[key] : Reflect.get(target, key)),
    has: (target, key: string) => Object.hasOwn(own, key) || key in target,
    set: (_target, key: string, value) => {
      const change = write[key];
      if (change === undefined) throw new Error(`The mock workbook cannot set "${key}"`);
      later((state) => { change(state, value as never); }, value);
      return true;
    },
  });
  return proxy as never;
}

/** A part of the host's library that is only written to: any path of properties and methods ends in one call of `set`. */
export function recorder(set: (path: string, value: unknown) => void, path = ""): never {
  const join = (key: string) => (path === "" ? key : `${path}.${key}`);
  return new Proxy((() => undefined) as never, {
    get: (_target, key: string) => recorder(set, join(key)),
    apply: (_target, _this, args: readonly unknown[]) => recorder(set, `${path}(${args.map(String).join()})`),
    set: (_target, key: string, value) => {
      set(join(key), value);
      return true;
    },
  });
}

function placeholders(paths: readonly string[]): object {
  const tree: Record<string, unknown> = {};
  for (const path of paths) {
    const [first, second] = path.split("/") as [string, string?];
    if (second === undefined) tree[first] = "";
    else tree[first] = { ...(tree[first] as object | undefined), [second]: "" };
  }
  return tree;
}
