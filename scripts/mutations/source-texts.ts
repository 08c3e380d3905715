import type { Mutant } from "./find-mutants";

/** The files of a room, as they stand on disk. */
export type SourceTexts = ReadonlyMap<string, string>;

/** Writes the text of a mutant's file with its one change. */
export function mutated({ file, start, end, replacement }: Mutant, texts: SourceTexts): string {
  const text = texts.get(file)!;
  return text.slice(0, start) + replacement + text.slice(end);
}
