import { Problem } from "../../text";

/** Runs `read` and gives null where it refuses: another rule says why. */
export function orNull<T>(read: () => T): T | null {
  try {
    return read();
  } catch (thrown) {
    if (thrown instanceof Problem) return null;
    throw thrown;
  }
}

/** Runs `read` and gives the sentence with which it refuses; null where it does not. */
export function refusalOf(read: () => unknown): string | null {
  try {
    read();
    return null;
  } catch (thrown) {
    if (thrown instanceof Problem) return thrown.sentence;
    throw thrown;
  }
}
