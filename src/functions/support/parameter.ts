import type { Offer, Reader } from "./reader";

/** One parameter of a worksheet function: everything its help, its signature and its reading need. */
export interface Parameter<Value = unknown> {
  readonly name: string;
  /** One sentence or two for the sheet's help. */
  readonly description: string;
  readonly optional: boolean;
  /** Takes a range of cells. */
  readonly range: boolean;
  /** What the sheet offers while somebody types; empty where nothing is to choose from. */
  readonly offers: readonly Offer[];
  readonly read: (received: unknown) => Value;
}

/** What a function is given, argument by argument, once its parameters have read it. */
export type ValuesOf<Parameters extends readonly Parameter[]> = {
  readonly [Place in keyof Parameters]: Parameters[Place] extends Parameter<infer Value> ? Value : never;
};

/** Declares a parameter that must be given. In `description`, `{example}` stands for the example of the reader, `{default}` for what a blank means. */
export function parameter<Value>(name: string, description: string, reader: Reader<Value>): Parameter<Value> {
  return declare(name, description, reader, false);
}

/** Declares a parameter that may be left out; its reader knows what a blank means. */
export function optional<Value>(name: string, description: string, reader: Reader<Value>): Parameter<Value> {
  return declare(name, description, reader, true);
}

function declare<Value>(name: string, description: string, reader: Reader<Value>, isOptional: boolean): Parameter<Value> {
  const filled = description.replace(/\{(example|default)\}/g, (_, key: "example" | "default") => {
    const shown = reader[key];
    if (shown === undefined) throw new Error(`${name}: the help speaks of ${key}, which its reader does not have`);
    return shown;
  });
  return { name, description: filled, optional: isOptional, range: reader.range === true, offers: reader.range === true ? [] : (reader.offers ?? []), read: (received) => reader.read(received, name) };
}
