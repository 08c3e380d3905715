import { answer } from "./answer";
import type { Answer } from "./answers";
import { explainRange } from "./explain-range";
import type { Parameter, ValuesOf } from "./parameter";
import { isRange } from "./rows";

/** All there is to know of one worksheet function: help, signature, help page and the sheet's description of it are made of this. */
export interface Declaration {
  /** Name after `BAY.`, such as `USABLE`. Stored in people's workbooks: it never changes once released. */
  readonly id: string;
  /** What it does, in one sentence for the sheet's help that begins with a verb. */
  readonly description: string;
  /** In order; later releases only append to them. */
  readonly parameters: readonly Parameter[];
  readonly answers: Pick<Answer<unknown, unknown>, "returns" | "type" | "spills" | "columns">;
  /** Formulas that show it at work. Ranges are written out, so that each runs alone. */
  readonly examples: readonly string[];
  /** Formulas with a typical mistake: the help page shows the sentence that answers each. */
  readonly mistakes: readonly string[];
}

/** A worksheet function: what the host calls with whatever stands in the cells, and the declaration behind it. */
export interface WorksheetFunction<Cells = unknown> {
  (...received: readonly unknown[]): Cells;
  readonly declaration: Declaration;
  /** Answers the same, but throws the `Problem` itself, with what may be written instead. */
  readonly evaluate: (...received: readonly unknown[]) => Cells;
}

/**
 * Declares a worksheet function: reads every argument by its parameter, hands the values to `compute`, and shows the answer as cells.
 *
 * What cannot be read or answered becomes an error with its sentence (see `answer`).
 */
export function worksheetFunction<const Parameters extends readonly Parameter[], Computed, Cells>(declaration: {
  readonly id: string;
  readonly description: string;
  readonly parameters: Parameters;
  readonly answers: Answer<Computed, Cells>;
  readonly examples: readonly string[];
  readonly mistakes?: readonly string[];
  readonly compute: (...values: ValuesOf<Parameters>) => Computed;
}): WorksheetFunction<Cells> {
  const { id, parameters, answers, mistakes = [], compute } = declaration;
  const evaluate = (...received: readonly unknown[]): Cells => {
    const values = new Array<unknown>(parameters.length);
    for (let place = 0; place < values.length; place++) {
      if (!parameters[place]!.range && isRange(received[place])) throw explainRange(declaration, received, place);
      values[place] = parameters[place]!.read(received[place]);
    }
    // Reading and computing have one type between them; what stands in an array that grows cannot be told so.
    return answers.toCells(compute(...(values as unknown as ValuesOf<Parameters>)));
  };
  const call = (...received: readonly unknown[]): Cells => answer(id, () => evaluate(...received));
  return Object.assign(call, { declaration: { ...declaration, mistakes }, evaluate });
}
