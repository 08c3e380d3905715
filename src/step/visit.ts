import { fileWith, JobFile, type Entry, type JobTab } from "./job-file";
import type { KeptTitle, StepStore } from "./step-store";

/** A file at hand, with what was typed into it: every answer stands in the browser's storage before the next one is asked. */
export class Visit {
  private constructor(
    private readonly store: StepStore,
    private title: KeptTitle,
    private readonly bytes: Uint8Array,
    readonly file: JobFile,
    private readonly answers: (readonly Entry[])[],
    private kept: number,
    private readonly release: () => void,
    private readonly now: () => number,
  ) {}

  /** Why the latest answer is not kept; null where all are. */
  refusal: string | null = null;

  /** Opens a file that was chosen; the same one as last time with the answers that it has. */
  static async choose(store: StepStore, name: string, bytes: Uint8Array, now: () => number): Promise<Visit> {
    // What is no file of ours is not kept.
    JobFile.open(bytes);
    const id = await digestOf(bytes);
    const before = await store.load(id);
    if (before === null) await store.keepFile({ id, name, keptAt: now(), answers: 0, givenBack: 0 }, bytes);
    return Visit.open(store, id, now);
  }

  /** Opens a file from last time. Refuses one that another window has open, and one that the browser has cleared. */
  static async open(store: StepStore, id: string, now: () => number): Promise<Visit> {
    const release = await hold(id);
    if (release === null) throw new Error("Another window of this browser has this file open. Go on there, or close it and open the file here again.");
    try {
      const kept = await store.load(id);
      if (kept === null) throw new Error("This browser keeps that file no longer. Choose it again, or the one that was last given back.");
      const file = JobFile.open(kept.bytes);
      await file.write(kept.answers.flat());
      return new Visit(store, kept.title, kept.bytes, file, [...kept.answers], kept.answers.length, release, now);
    } catch (thrown) {
      release();
      throw thrown;
    }
  }

  get name(): string {
    return this.title.name;
  }

  /** How many answers no file that was given back has. */
  get notGivenBack(): number {
    return this.answers.length - this.title.givenBack;
  }

  /** Types an answer into the file and keeps it; answers with the tab as it is then. A refusal of the storage leaves the answer in the file at hand. */
  async record(sheet: string, entries: readonly Entry[]): Promise<JobTab> {
    await this.file.write(entries);
    this.answers.push(entries);
    await this.keep();
    return this.file.read(sheet);
  }

  /** Makes the file that is given back. */
  async giveBack(): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
    const bytes = await fileWith(this.bytes, this.answers.flat());
    this.title = { ...this.title, givenBack: this.answers.length };
    await this.keep();
    return { name: this.name.replace(/( filled)?(\.xlsx)?$/i, " filled.xlsx"), bytes };
  }

  close(): void {
    this.release();
  }

  /** Keeps every answer that is not kept yet, so that what was refused once is tried again with the next one. */
  private async keep(): Promise<void> {
    try {
      this.title = { ...this.title, keptAt: this.now(), answers: this.answers.length };
      await this.store.keepAnswers(this.title, this.kept, this.answers.slice(this.kept));
      this.kept = this.answers.length;
      this.refusal = null;
    } catch (thrown) {
      this.refusal = thrown instanceof Error ? thrown.message : String(thrown);
    }
  }
}

async function digestOf(bytes: Uint8Array): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", bytes as Uint8Array<ArrayBuffer>);
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Holds a file for this window until it is released; null where another window of this browser holds it. */
function hold(id: string): Promise<(() => void) | null> {
  if (!("locks" in navigator)) return Promise.resolve(() => undefined);
  return new Promise((resolve, reject) => {
    const held = navigator.locks.request(`baywright steps ${id}`, { ifAvailable: true }, (lock) => {
      if (lock === null) {
        resolve(null);
        return undefined;
      }
      return new Promise<void>((release) => {
        resolve(release);
      });
    });
    held.catch(reject);
  });
}
