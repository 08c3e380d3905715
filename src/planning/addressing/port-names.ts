import { memoise } from "../quantity";
import { foldName, invalid, quote } from "../text";

const most = 1024;

/** Reads how many controllers an array has, or their names: 2, "A,B" and "A/B" all mean A and B. The same value gives the same list. */
export function parseControllerNames(value: string | number, argument = "controllers"): string[] {
  return controllerNames(value, argument);
}

/** Reads how many ports a controller has, or their names: 4, "0,1,2,3" and "0-3" all mean 0 to 3. The same value gives the same list. */
export function parsePortNames(value: string | number, argument = "ports"): string[] {
  return portNames(value, argument);
}

/** How the names of one kind of thing are written. */
interface Naming {
  /** Name of the nth, counted from 0, where only their number is given. */
  readonly nameOf: (index: number) => string;
  readonly separator: RegExp;
  /** What one part between separators stands for: itself, or a run of names. */
  readonly expand: (part: string, argument: string, value: string) => string[];
  readonly example: string;
}

const controllerNames = memoise((value: string | number, argument) =>
  parseNames(value, argument, { nameOf: letters, separator: /[,/]/, expand: (part) => [part], example: 'a count such as 2, or names such as "A,B"' }),
);
const portNames = memoise((value: string | number, argument) =>
  parseNames(value, argument, { nameOf: String, separator: /,/, expand: expandRun, example: 'a count such as 4, or names such as "0,1,2,3"' }),
);

function parseNames(value: string | number, argument: string, { nameOf, separator, expand, example }: Naming): string[] {
  const text = String(value).trim();
  if (typeof value === "number" || /^-?\d+(\.\d+)?$/.test(text)) {
    const count = Number(text);
    if (!Number.isInteger(count) || count < 1 || count > most) {
      throw invalid(argument, value, `${argument} is ${quote(value)}. Write ${example} (at most ${most}).`);
    }
    return Array.from({ length: count }, (_, index) => nameOf(index));
  }
  const names = text.split(separator).flatMap((part) => expand(part.trim(), argument, text));
  const folded = new Set<string>();
  const twice = names.find((name) => folded.size === folded.add(foldName(name)).size);
  if (names.includes("")) throw invalid(argument, value, `${argument} ${quote(value)} has an empty name. Write ${example}.`);
  if (names.length > most) throw invalid(argument, value, `${argument} ${quote(value)} are ${names.length} names. Write ${example} (at most ${most}).`);
  if (twice !== undefined) throw invalid(argument, value, `${argument} ${quote(value)} names ${quote(twice)} twice. Write ${example}.`);
  return names;
}

/** Spells out a run of numbers, both ends included: 0-3 is 0, 1, 2, 3. Anything else is one name. */
function expandRun(part: string, argument: string, value: string): string[] {
  const run = /^(\d{1,5})\s*[-–]\s*(\d{1,5})$/.exec(part);
  if (run === null) return [part];
  const [first, last] = [Number(run[1]), Number(run[2])];
  if (last < first) {
    const turned = value.replace(part, `${last}-${first}`);
    throw invalid(argument, value, `${argument} ${quote(value)} runs backwards. Write ${turned}.`, turned);
  }
  return Array.from({ length: last - first + 1 }, (_, index) => String(first + index));
}

/** Names things by letters as sheet columns are: A to Z, then AA. */
function letters(index: number): string {
  const rest = Math.floor(index / 26);
  return (rest > 0 ? letters(rest - 1) : "") + String.fromCharCode(65 + (index % 26));
}
