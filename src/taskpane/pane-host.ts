import type { SheetPlan, WorkbookSnapshot } from "../sheet";
import type { SelfTest } from "../workbook/self-test";

/** How the host looks: the pane follows it. */
export type Theme = "light" | "dark" | "contrast";

/** A file that a person chose, read whole. */
export interface ChosenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The mark in the workbook that has the host load the add-in with it, pane shown or not. */
export interface Loading {
  isOn(): Promise<boolean>;
  turn(on: boolean): Promise<void>;
}

/** What can be found out about the spreadsheet program that the pane lives in. */
export interface ProgramTest {
  readonly run: SelfTest;
  /** What the program says of itself: platform, version, newest set of its interface. */
  readonly program: () => Readonly<Record<string, string>>;
}

/**
 * What differs between the places in which the pane lives, and is not a matter of the workbook.
 *
 * A method that cannot do its work refuses with a `Problem` whose sentence says what the person can do.
 */
export interface PaneHost {
  /** What people call the place, such as "the browser workbook"; stands in About. */
  readonly name: string;
  /** Release of the add-in. */
  readonly version: string;
  /** True where formulas typed before the add-in was loaded stay at #NAME? until they are entered again. */
  readonly formulasMayStick: boolean;

  /** Whether the add-in loads with this workbook; null where there is nothing to load. */
  readonly loading: Loading | null;

  /** The self-test of the program; null where the program is ours. */
  readonly selfTest: ProgramTest | null;

  /** What the workbook is called here, such as plan.xlsx; "" where it has no name yet. Tabs say from what plan they were built. */
  workbookName(): string;

  theme(): Theme;
  /** Calls `listener` after each change of the theme until the returned function is called. */
  watchTheme(listener: (theme: Theme) => void): () => void;

  /** Lets the person choose a file of one of the kinds, such as ".xlsx"; null when nothing was chosen. */
  chooseFile(kinds: readonly string[]): Promise<ChosenFile | null>;
  /** Reads the bytes of an .xlsx file as a workbook. */
  readSnapshot(bytes: Uint8Array): Promise<WorkbookSnapshot>;
  /** Makes the bytes of an .xlsx file in which some planned sheets stand, and nothing else. */
  writeWorkbook(sheets: readonly SheetPlan[]): Promise<Uint8Array<ArrayBuffer>>;
  /** Address of a help page, such as `functions/USABLE.html`. */
  helpAddress(page: string): string;
  /** Address of the page on which a tab is filled one step at a time. */
  readonly stepAddress: string;

  /** Gives the keyboard to the sheet, so that what is typed goes into the selected cell, where the place lets a pane do that. */
  enterSheet(): void;

  /** The present moment: planning has no clock. */
  now(): Date;
}
