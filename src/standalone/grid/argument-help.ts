import type { Univer } from "@univerjs/core";
import { IFunctionService } from "@univerjs/engine-formula";

/** The help of a function's arguments, whose examples, put together, end with the last one that is written. */
class ArgumentHelp<One> extends Array<One> {
  override join(separator?: string): string {
    const written = [...this].map(String);
    while (written.at(-1) === "") written.pop();
    return written.join(separator);
  }
}

/** Lets examples in the help of functions end with their last argument: the engine goes on with a comma for each that may be left out. */
export function endExamples(univer: Univer): void {
  for (const help of univer.__getInjector().get(IFunctionService).getDescriptions().values()) help.functionParameter = ArgumentHelp.from(help.functionParameter);
}
