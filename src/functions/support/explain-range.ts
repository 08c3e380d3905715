import { invalid, type Problem } from "../../planning/text";
import type { Parameter } from "./parameter";
import { asTyped } from "./reader";
import { isRange } from "./rows";
import { isBlank } from "../../sheet";

/** What there is to know of the function that was asked. */
interface Asked {
  readonly id: string;
  readonly parameters: readonly Pick<Parameter, "name">[];
  readonly answers: { readonly spills: boolean };
}

/** Most characters a sentence may have. */
const most = 160;

/**
 * Explains a range where one cell belongs: with the formula that asks about each of its cells, where an answer is one cell.
 *
 * The formula holds what the other arguments hold, or their names where that is a range or would make the sentence too long; where the names
 * would too, there is no formula.
 */
export function explainRange({ id, parameters, answers }: Asked, received: readonly unknown[], place: number): Problem {
  const { name } = parameters[place]!;
  const start = `${name} is a range of several cells.`;
  const plain = `${start} Give one cell, and the formula once for each.`;
  if (answers.spills) return invalid(name, received[place], plain);
  let last = received.length;
  while (isBlank(received[last - 1])) last--;
  const given = parameters.slice(0, last);
  const formula = (written: (value: unknown, name: string) => string): string => {
    const inner = given.map((one, index) => (index === place ? "x" : written(received[index], one.name)));
    return `${start} Ask for each: =MAP(A2:A9,LAMBDA(x,BAY.${id}(${inner.join(",")}))).`;
  };
  const fitting = [formula(literalOr), formula((_, called) => called)].find(({ length }) => length <= most);
  return invalid(name, received[place], fitting ?? plain);
}

/** Writes a value as it stands in a formula; what is no single value by the name of its argument. */
function literalOr(value: unknown, name: string): string {
  if (isBlank(value)) return "";
  if (isRange(value)) return name;
  const one: unknown = Array.isArray(value) ? (value as readonly unknown[]).flat()[0] : value;
  if (typeof one === "number" || typeof one === "boolean") return asTyped(one);
  return typeof one === "string" ? `"${one.replaceAll('"', '""')}"` : name;
}
