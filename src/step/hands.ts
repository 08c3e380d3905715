import type { StepRecord } from "../planning/commissioning/record";
import type { Entry } from "./job-file";
import type { DeviceNames } from "./step-store";
import type { Turn } from "./walk";

/** What the screens can ask to be done. */
export interface Hands {
  readonly turn: (to: Turn) => void;
  /** Types into the tab and shows what came of it. Sentences that are thrown while it is worked out are said. */
  readonly record: (entries: () => readonly Entry[], names?: Partial<DeviceNames>) => Promise<void>;
  readonly giveBack: () => Promise<void>;
  readonly say: (sentence: string) => void;
  /** Goes to the choice of another job of the file; null where it has but one. */
  readonly otherJob: (() => void) | null;
  /** Goes back to the choice of the file. */
  readonly leave: () => void;
  /** Names that were last written on this device. */
  readonly names: DeviceNames;
  /** The day, as a sheet counts it. */
  readonly today: () => number;
  /** How many answers stand on this device alone. */
  readonly notGivenBack: number;
  /** What the cell of a step offers to be chosen. */
  readonly choices: (step: StepRecord) => readonly string[];
}
