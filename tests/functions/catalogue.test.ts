import { readdirSync } from "node:fs";
import { join } from "node:path";
import { catalogue, families } from "../../src/functions/catalogue";
import { cellAnswer } from "../support/cell-answer";
import { parseCall } from "../support/formula-call";

const folder = join(__dirname, "..", "..", "src", "functions");

/** What a cell shows for a formula. */
function shown(formula: string): unknown {
  const { id, args } = parseCall(formula);
  return cellAnswer(() => catalogue.find((one) => one.id === id)!.call(...args));
}

describe("the catalogue", () => {
  test("holds every module of the folder but itself and the entry, so that no family is forgotten", () => {
    const modules = readdirSync(folder).filter((name) => name.endsWith(".ts") && !["catalogue.ts", "main.ts"].includes(name));
    expect(modules).toHaveLength(families.length);
    expect(new Set(families.map(({ functions }) => functions)).size).toBe(families.length);
  });

  test("is made of worksheet functions only: a family module exports nothing else", () => {
    const isFunction = (one: { readonly declaration?: { readonly id: string } }): boolean => one.declaration?.id !== undefined;
    const others = families.flatMap(({ functions }) => Object.entries(functions).filter(([, one]) => !isFunction(one)).map(([name]) => name));
    expect(others).toEqual([]);
  });

  test("gives every id once", () => {
    expect(new Set(catalogue.map(({ id }) => id)).size).toBe(catalogue.length);
  });

  test.each(catalogue.map((one) => [one.id, one] as const))("%s: what must be given comes first, and every line of help is whole", (_, { parameters }) => {
    const firstOptional = parameters.findIndex(({ optional }) => optional);
    expect(parameters.slice(firstOptional < 0 ? parameters.length : firstOptional).every(({ optional }) => optional)).toBe(true);
    for (const { description } of parameters) expect(description).toEqual(expect.not.stringMatching(/\{[a-z]+\}|[^.]$/));
  });

  test.each(catalogue.flatMap(({ id, examples }) => examples.map((formula) => [formula, id] as const)))("answers its example %s", (formula, id) => {
    expect(parseCall(formula).id).toBe(id);
    expect(shown(formula)).toEqual(expect.not.stringMatching(/^#/));
  });

  test.each(catalogue.flatMap(({ id, mistakes }) => mistakes.map((formula) => [formula, id] as const)))("answers the mistake %s with a sentence of one line", (formula, id) => {
    expect(parseCall(formula).id).toBe(id);
    const sentence = String(shown(formula));
    expect(sentence).toMatch(/^#(VALUE!|N\/A) .*[.]$/);
    expect(sentence.replace(/^#\S+ /, "").length).toBeLessThanOrEqual(160);
  });

  const offering = catalogue.flatMap(({ id, parameters }) => parameters.filter(({ offers }) => offers.length > 0).map((parameter) => [id, parameter.name, parameter] as const));

  test("offers what to choose from for schemes, units and every argument of a few words", () => {
    const offered = new Set(offering.map(([id, name]) => `${id} ${name}`));
    for (const one of ["USABLE scheme", "USABLE unit", "SURVIVES failureCase", "DRIVEBYTES kind", "DRIVEBYTES sector", "PORTPLAN sharing", "HEAT unit"]) expect(offered).toContain(one);
  });

  test.each(offering)("%s reads every %s that it offers, each of one type and none twice", (_id, _name, { offers, read }) => {
    for (const { value } of offers) expect(() => read(value)).not.toThrow();
    expect(new Set(offers.map(({ value }) => typeof value)).size).toBe(1);
    expect(new Set(offers.map(({ value }) => value)).size).toBe(offers.length);
  });

  test("shows an example of every function", () => {
    expect(catalogue.filter(({ examples }) => examples.length === 0).map(({ id }) => id)).toEqual([]);
  });

  test("heads the answer with the columns that its declaration names", () => {
    const tables = catalogue.flatMap(({ answers, examples }) => (answers.columns === null ? [] : [[answers.columns, (shown(examples[0]!) as unknown[][])[0]] as const]));
    expect(tables.length).toBeGreaterThan(10);
    for (const [columns, first] of tables) expect(first).toEqual(columns);
  });
});
