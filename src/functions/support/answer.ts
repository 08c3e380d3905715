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
    if (thrown instanceof Problem) {
      const { invalidValue, notAvailable } = CustomFunctions.ErrorCode;
      throw new CustomFunctions.Error(thrown.kind === "invalid" ? invalidValue : notAvailable, thrown.sentence);
    }
    throw new CustomFunctions.Error(
      CustomFunctions.ErrorCode.invalidValue,
      `${name} failed inside the add-in, not in your sheet.`,
    );
  }
}

function refuseNonFinite(result: unknown): void {
  if (typeof result === "number" && !Number.isFinite(result)) throw new RangeError("not a finite number");
  if (Array.isArray(result)) for (const one of result) refuseNonFinite(one);
}
