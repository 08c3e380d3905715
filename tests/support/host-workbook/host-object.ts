/** An answer of the spreadsheet host that it will not do something, by its code. */
export class Refusal extends Error {
  constructor(
    readonly code: string,
    message = `The host refused: ${code}`,
  ) {
    super(message);
  }
}

/**
 * One object of the workbook as the host's client asks for it: what can be loaded, set, called and gone on to, by name.
 *
 * Members that are not listed are unknown to the stand-in, and asking for one fails the test.
 */
export interface HostObject {
  /** What the vendor calls it, such as Range. */
  readonly type: string;
  /** By which its collection gives it out again. */
  readonly id?: string;
  readonly reads?: Readonly<Record<string, () => unknown>>;
  readonly writes?: Readonly<Record<string, (value: unknown) => void>>;
  /** Methods that answer a value, or nothing. */
  readonly calls?: Readonly<Record<string, (...values: readonly unknown[]) => unknown>>;
  /** Properties and methods that answer an object; null makes it a null object. */
  readonly parts?: Readonly<Record<string, (...values: readonly unknown[]) => HostObject | null>>;
  readonly items?: () => readonly HostObject[];
  /** For objects that are handed to methods: the area of a range. */
  readonly place?: unknown;
}

/** Reads an argument of a method, or the value of a property, as text. */
export function text(value: unknown): string {
  if (typeof value !== "string") throw new Refusal("InvalidArgument");
  return value;
}

export function truth(value: unknown): boolean {
  if (typeof value !== "boolean") throw new Refusal("InvalidArgument");
  return value;
}

/** Reads a number between two bounds, both of which may be had. */
export function numberIn(value: unknown, least: number, most: number): number {
  if (typeof value !== "number" || !(value >= least && value <= most)) throw new Refusal("InvalidArgument");
  return value;
}

export function oneOf<Choice extends string>(value: unknown, choices: readonly Choice[]): Choice {
  const found = choices.find((choice) => choice === value);
  if (found === undefined) throw new Refusal("InvalidArgument");
  return found;
}

/** A tree of things that can only be set: a check for each property, a tree for each part. */
export interface Settable {
  readonly type: string;
  readonly set: Readonly<Record<string, (value: unknown) => unknown>>;
  readonly parts?: Readonly<Record<string, Settable>>;
  /** Parts that are got by a name, such as the lines round a cell: `getItem(name)` and `item` as the indexer. */
  readonly items?: { readonly names: readonly string[]; readonly each: Settable };
}

/** Makes an object of the host that takes settings; `note` is told each of them by its path, such as `font.bold`, and `recall` tells it again. */
export function settable(tree: Settable, note: (path: string, value: unknown) => void, recall: (path: string) => unknown = () => null, path = ""): HostObject {
  const under = (name: string) => (path === "" ? name : `${path}.${name}`);
  const { items } = tree;
  return {
    type: tree.type,
    reads: Object.fromEntries(Object.keys(tree.set).map((name) => [name, () => recall(under(name))])),
    writes: Object.fromEntries(Object.entries(tree.set).map(([name, check]) => [name, (value: unknown) => { check(value); note(under(name), value); }])),
    parts: {
      ...Object.fromEntries(Object.entries(tree.parts ?? {}).map(([name, part]) => [name, () => settable(part, note, recall, under(name))])),
      ...(items === undefined ? {} : { getItem: (name: unknown) => settable(items.each, note, recall, under(oneOf(name, items.names))) }),
    },
  };
}
