import type { IWorkbookData } from "@univerjs/core";
import { noAnswer, Problem, quote } from "../planning/text";
import { bringUpNotes } from "../workbook/engine/stored-notes";
import { emptyWorkbook } from "../workbook/engine/stored-sheet";
import type { LiveWorkbook } from "../workbook/engine/live-workbook";
import type { SavedFile } from "../workbook/engine/workbook-file";
import type { Grid } from "./grid/open-grid";
import type { KeptPlanTitle, PlanStore } from "./plan-store";
import { meetWindows, type Windows } from "./windows";

/** How long after the first change that is not kept the plan is kept, in milliseconds, however one types on. */
const keepAfter = 1_500;
/** How long after a refusal it is tried again, in milliseconds. */
const tryAgainAfter = 15_000;
/** Stands among the sheets that changed for what is being typed into an open cell. */
const inCell = "in cell";
/** How long plan after plan is tried when the page is opened, in milliseconds: a storage that hangs must not keep the page from coming up. */
const longestReading = 8_000;

/** A workbook to be opened, and under which name. */
interface Opened {
  readonly id: string;
  readonly name: string;
  readonly data: Partial<IWorkbookData>;
  readonly original?: Uint8Array;
  /** True where the storage has it as it is. */
  readonly isKept?: true;
}

/** How it stands with keeping the plan. */
export type Keeping = "kept" | "changed" | "refused" | "passing";

/** What the desk needs of the grid. */
export type DeskGrid = Pick<Grid, "live" | "openCell" | "endTyping" | "show">;

/** What the desk tells the page: that name or state changed, and sentences for the person. */
export interface DeskDisplay {
  readonly refresh: () => void;
  readonly say: (sentence: string) => void;
}

/** The one plan on the desk: opened, kept in the browser's storage as it changes, saved as a file. */
export class Desk {
  private constructor(
    private readonly store: PlanStore,
    private current: Opened,
    private readonly windows: Windows,
    private readonly display: DeskDisplay,
  ) {
    windows.note(current.id);
  }

  private grid: DeskGrid | null = null;
  private timer: ReturnType<typeof setTimeout> | null = null;
  /** Sheets that changed since they were last kept, by id; "" for what names no sheet, and `inCell` for what is being typed. */
  private touched = new Set<string>();
  /** What is being written at the moment. */
  private writing: Promise<void> | null = null;
  private refusal: string | null = null;
  /** True while something is being typed into a cell that is still open. */
  private isTyping = false;
  /** Ids of plans in which there is something that no saved file has. */
  private readonly unfiled = new Set<string>();

  /** Sets the desk up with the plan that this window had, else the one last kept, else the sample; a plan that cannot be read is passed over, and said. */
  static async open(store: PlanStore, display: DeskDisplay): Promise<Desk> {
    const said = new Set(store.passing === null ? [] : [`${store.passing} Plans are gone when this page is closed: save them as files.`]);
    const say = (sentence: string) => void said.add(sentence);
    const windows = meetWindows(() => {
      display.say("Another window works on a copy of this plan: what is typed there does not come here.");
    });
    const plan = (await latestPlan(store, windows, say)) ?? (await samplePlan(windows));
    if (said.size > 0) display.say([...said].join(" "));
    return new Desk(store, plan, windows, display);
  }

  /** The workbook that is to be shown. */
  get data(): Partial<IWorkbookData> {
    return this.current.data;
  }

  get name(): string {
    return this.current.name;
  }

  get keeping(): Keeping {
    if (this.store.passing !== null) return "passing";
    if (this.refusal !== null) return "refused";
    return this.touched.size > 0 || this.writing !== null ? "changed" : "kept";
  }

  /** True where closing the page would lose something. */
  get wouldLose(): boolean {
    if (this.isTyping) return true;
    return this.store.passing !== null ? this.unfiled.size > 0 : this.unfiled.has(this.current.id) && this.keeping !== "kept";
  }

  /** Joins the desk to the grid that shows its workbook. */
  attach(grid: DeskGrid): void {
    this.grid = grid;
    // The sample and a copy are kept before anything is typed into them: another window must find them.
    if (this.current.isKept !== true) this.touch("");
    void this.store.closed.then(() => { this.touch(""); });
    grid.openCell.onChange(() => {
      const [before, isTyping] = [this.isTyping, grid.openCell.read() !== null];
      this.isTyping = isTyping;
      if (before || isTyping) this.touch(inCell);
    });
    grid.live.onChange(({ id, sheetId, isFigure }) => {
      // Heights that rows find for themselves while they are drawn, and frozen columns that give way to a narrow grid, are nobody's change.
      if (id === "sheet.mutation.set-worksheet-row-auto-height" || (id === "sheet.mutation.set-frozen" && grid.live.isOurs)) return;
      // A figure that was computed is kept like anything else, but the next program computes it anyway.
      if (!isFigure) this.unfiled.add(this.current.id);
      this.touch(sheetId);
    });
  }

  /** Takes the plan off the desk, as the grid cannot show it, and puts the sample there; what is kept of the plan stays as it is. */
  async setAside(): Promise<void> {
    this.display.say(`"${this.name}" cannot be shown. It stays in this browser as it is; here is the sample. Open the file it was last saved as.`);
    this.windows.release(this.current.id);
    this.current = await samplePlan(this.windows);
  }

  startNew(): Promise<KeptPlanTitle> {
    return this.put(() => fresh({ name: "New plan", data: emptyWorkbook() }, this.windows));
  }

  openSample(): Promise<KeptPlanTitle> {
    return this.put(() => samplePlan(this.windows));
  }

  openFile(name: string, bytes: Uint8Array): Promise<KeptPlanTitle> {
    return this.put(async () => {
      const { readWorkbook } = await import(/* webpackChunkName: "xlsx" */ "../workbook/engine/workbook-file");
      return fresh({ name: name.replace(/\.xlsx$/i, ""), data: readWorkbook(bytes), original: bytes }, this.windows);
    });
  }

  openKept(id: string): Promise<KeptPlanTitle> {
    return this.put(() => (id === this.current.id ? Promise.resolve(null) : readBack(this.store, this.windows, id, this.display.say)));
  }

  /** The plans that are kept, without the one on the desk. */
  async others(): Promise<KeptPlanTitle[]> {
    return (await this.store.titles()).filter(({ id }) => id !== this.current.id);
  }

  /** Removes a plan that is not on a desk from the browser's storage, for good. */
  async forget({ id, name }: KeptPlanTitle): Promise<void> {
    if (!(await this.windows.hold(id))) throw noAnswer("plan", name, `Another window has ${quote(name)} open: open another plan there, then remove it.`);
    await this.store.forget(id).finally(() => { this.windows.release(id); });
    this.unfiled.delete(id);
    if (this.refusal !== null) await this.keepNow();
  }

  /** Makes an .xlsx file of the workbook as it is now, with what a person is to know of it. */
  async saveFile(): Promise<{ readonly file: Blob } & Omit<SavedFile, "bytes">> {
    const { writeWorkbook } = await import(/* webpackChunkName: "xlsx" */ "../workbook/engine/workbook-file");
    const live = await this.atRest();
    const { bytes, ...told } = writeWorkbook(live.store(), this.current.original);
    this.unfiled.delete(this.current.id);
    return { file: new Blob([bytes as Uint8Array<ArrayBuffer>], { type: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet" }), ...told };
  }

  /** Keeps what changed in the browser's storage now; a refusal is said once, and tried again later. */
  async keepNow(): Promise<void> {
    this.stopWaiting();
    // One after the other: what is written last must be what is latest.
    while (this.writing !== null) await this.writing;
    if (this.touched.size === 0 || this.grid === null) return;
    const { touched } = this;
    this.touched = new Set();
    const writing = this.write(touched).then(
      () => {
        this.refusal = null;
      },
      (thrown: unknown) => {
        for (const sheet of touched) this.touched.add(sheet);
        const refusal = sentenceOf(thrown, "The plan cannot be kept: save it as a file, then reload the page.");
        if (refusal !== this.refusal) this.display.say(refusal);
        this.refusal = refusal;
        this.keepSoon(tryAgainAfter);
      },
    );
    this.writing = writing.finally(() => (this.writing = null));
    await this.writing;
    this.display.refresh();
  }

  /** Waits until what is being typed stands in its cell and all is computed; a cell left open would be typed into the next workbook. */
  private async atRest(): Promise<LiveWorkbook> {
    const grid = this.grid!;
    await grid.endTyping();
    await grid.live.settle();
    return grid.live;
  }

  private touch(sheetId: string): void {
    this.touched.add(sheetId);
    this.keepSoon(keepAfter);
    this.display.refresh();
  }

  private keepSoon(wait: number): void {
    this.timer ??= setTimeout(() => void this.keepNow(), wait);
  }

  private stopWaiting(): void {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
  }

  /** Keeps these sheets with all that is no sheet; every one where a change named none. */
  private async write(touched: ReadonlySet<string>): Promise<void> {
    const { id, name, original } = this.current;
    const { live, openCell } = this.grid!;
    const { data } = live.store();
    const typing = openCell.read();
    await this.store.keep({ id, name, data, ...(original && { original }), ...(typing && { typing }) }, touched.has("") ? new Set(Object.keys(data.sheets)) : touched);
  }

  /** Puts another plan on the desk; the one that was there is kept, and its title is returned, so that it can be brought back. */
  private async put(open: () => Promise<Opened | null>): Promise<KeptPlanTitle> {
    const before = { id: this.current.id, name: this.current.name, keptAt: Date.now() };
    const next = await open();
    if (next === null) return before;
    try {
      await this.leave();
      this.show(next);
    } catch (thrown) {
      this.windows.release(next.id);
      throw thrown;
    }
    this.windows.release(before.id);
    this.touch("");
    await this.keepNow();
    return before;
  }

  /** Keeps all of the plan on the desk, so that another can take its place. */
  private async leave(): Promise<void> {
    this.touched.add("");
    // Somebody may type while it is being kept: what is then in an open cell belongs to this plan too.
    do {
      await this.atRest();
      await this.keepNow();
    } while (this.touched.size > 0 && this.refusal === null);
    if (this.refusal !== null && this.unfiled.has(this.current.id)) throw noAnswer("plan", this.name, `${this.refusal} Then do that again.`);
    this.stopWaiting();
  }

  private show(next: Opened): void {
    try {
      this.grid!.show(next.data);
    } catch (thrown) {
      console.error(thrown);
      throw noAnswer("plan", next.name, `${quote(next.name)} cannot be shown. It stays in this browser as it is; open the file it was last saved as.`);
    }
    this.current = next;
    this.touched = new Set();
    this.windows.note(next.id);
  }
}

/** Reads the plan that this window had, or else the one last kept, of those that can be read. */
async function latestPlan(store: PlanStore, windows: Windows, say: (sentence: string) => void): Promise<Opened | null> {
  const saySafely = (thrown: unknown) => {
    say(sentenceOf(thrown, "What this browser keeps cannot be read now: reload the page, or open a file."));
    return null;
  };
  const titles = (await store.titles().catch(saySafely)) ?? [];
  const had = windows.plan();
  const end = performance.now() + longestReading;
  for (const { id } of [...titles.filter((title) => title.id === had), ...titles.filter((title) => title.id !== had)]) {
    const plan = await readBack(store, windows, id, say).catch(saySafely);
    if (plan !== null || performance.now() > end) return plan;
  }
  return null;
}

/**
 * Reads a kept plan for this window. Two windows that keep the same plan would undo each other's work, and what cannot be read now may be
 * read another day: where another window has the plan, or only a part of it comes back, this window works on a copy, and the plan stays.
 */
async function readBack(store: PlanStore, windows: Windows, id: string, say: (sentence: string) => void): Promise<Opened> {
  const isFree = await windows.hold(id);
  try {
    const { plan: { typing, ...stored }, missing } = await store.load(id);
    const plan = { ...stored, data: bringUpNotes(stored.data) };
    if (isFree && typing !== undefined) say(`When this page was left, this was being typed into ${typing.place} and stands in no cell: ${typing.text}`);
    if (isFree && missing.length === 0) return { ...plan, isKept: true };
    if (!isFree) windows.tellOfCopy(id);
    say([...missing, isFree ? "This is a copy of what could be read; the plan stays under Recent." : `Another window has ${quote(plan.name)} open. This window works on a copy.`].join(" "));
    const copy = await fresh({ ...plan, name: `${plan.name} (${isFree ? "what could be read" : "copy"})` }, windows);
    if (isFree) windows.release(id);
    return copy;
  } catch (thrown) {
    if (isFree) windows.release(id);
    throw thrown;
  }
}

/** What a person is told of a fault. */
function sentenceOf(thrown: unknown, otherwise: string): string {
  if (thrown instanceof Problem) return thrown.sentence;
  console.error(thrown);
  return otherwise;
}

async function samplePlan(windows: Windows): Promise<Opened> {
  const { sampleWorkbook } = await import(/* webpackChunkName: "sample" */ "./sample-workbook");
  return fresh({ name: "Thornmere sample", data: sampleWorkbook() }, windows);
}

/** Makes a plan that no window has had yet, and holds it for this one. */
async function fresh(plan: Omit<Opened, "id">, windows: Windows): Promise<Opened> {
  const id = crypto.randomUUID();
  await windows.hold(id);
  return { ...plan, id };
}
