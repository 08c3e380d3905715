import { memoise } from "../quantity";
import { foldName, invalid, quote } from "../text";

const most = 1024;

/** Reads how many controllers an array has, or their names: 2 and "A,B" both mean A and B. The same value gives the same list. */
export function parseControllerNames(value: string | number, argument = "controllers"): string[] {
  return controllerNames(value, argument);
}

/** Reads how many ports a controller has, or their names: 4 and "0,1,2,3" both mean 0 to 3. The same value gives the same list. */
export function parsePortNames(value: string | number, argument = "ports"): string[] {
  return portNames(value, argument);
}

const controllerNames = memoise((value: string | number, argument) => parseNames(value, argument, letters, 'a count such as 2, or names such as "A,B"'));
const portNames = memoise((value: string | number, argument) => parseNames(value, argument, String, 'a count such as 4, or names such as "0,1,2,3"'));

function parseNames(value: string | number, argument: string, nameOf: (index: number) => string, example: string): string[] {
  const text = String(value).trim();
  if (typeof value === "number" || /^-?\d+(\.\d+)?$/.test(text)) {
    const count = Number(text);
    if (!Number.isInteger(count) || count < 1 || count > most) {
      throw invalid(argument, value, `${argument} is ${quote(value)}. Write ${example} (at most ${most}).`);
    }
    return Array.from({ length: count }, (_, index) => nameOf(index));
  }
  const names = text.split(",").map((name) => name.trim());
  const folded = names.map(foldName);
  const twice = names.find((name, index) => folded.indexOf(foldName(name)) !== index);
  if (names.includes("") || names.length > most) throw invalid(argument, value, `${argument} ${quote(value)} has an empty name. Write ${example}.`);
  if (twice !== undefined) throw invalid(argument, value, `${argument} ${quote(value)} names ${quote(twice)} twice. Write ${example}.`);
  return names;
}

/** Names things by letters as sheet columns are: A to Z, then AA. */
function letters(index: number): string {
  const rest = Math.floor(index / 26);
  return (rest > 0 ? letters(rest - 1) : "") + String.fromCharCode(65 + (index % 26));
}
