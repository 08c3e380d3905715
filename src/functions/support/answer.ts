import { Problem } from "../../planning/text";

/**
 * Runs one function call and turns what goes wrong into what a cell can show.
 *
 * A `Problem` of kind `invalid` becomes `#VALUE!`, one of kind `no-answer` becomes `#N/A`, each with its sentence. Anything else is a
 * defect of the add-in and says so. A result that is not a finite number is a defect too, never a cell.
 */
export function answer<T>(name: string, compute: () => T): T {
  try {
    const result = compute();
    refuseNonFinite(result);
    return result;
  } catch (thrown) {
    // eslint-disable-next-line @typescript-eslint/only-throw-error -- by its types the host's error is no Error, but the host asks for it.
    throw cellError(name, thrown);
  }
}

function refuseNonFinite(result: unknown): void {
  if (typeof result === "number" && !Number.isFinite(result)) throw new RangeError("not a finite number");
  if (Array.isArray(result)) for (const one of result) refuseNonFinite(one);
}

function cellError(name: string, thrown: unknown): CustomFunctions.Error {
  const { invalidValue, notAvailable } = CustomFunctions.ErrorCode;
  if (thrown instanceof Problem) return new CustomFunctions.Error(thrown.kind === "invalid" ? invalidValue : notAvailable, thrown.sentence);
  return new CustomFunctions.Error(invalidValue, `${name} failed inside the add-in, not in your sheet.`);
}
