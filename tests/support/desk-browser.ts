import { type IWorkbookData, IUniverInstanceService, UniverInstanceType } from "@univerjs/core";
import { bootEngine } from "../../src/headless/open-headless";
import { Desk, type DeskGrid } from "../../src/standalone/desk";
import type { OpenCell, Typing } from "../../src/standalone/grid/open-cell";
import { openPlanStore, type PlanStore } from "../../src/standalone/plan-store";
import { createBrowserPort } from "../../src/workbook/engine/browser-port";
import { type EngineChange, LiveWorkbook } from "../../src/workbook/engine/live-workbook";

/** A grid without a screen. */
export interface BareGrid {
  readonly grid: DeskGrid;
  type(row: number, text: string): void;
  /** The first column of the sheet in front. */
  texts(): Promise<unknown[]>;
  settle(): Promise<void>;
  dispose(): void;
}

/** A grid that only holds texts; something can be typed into its first cell that is not ended, until it is null. */
export interface PlainGrid extends BareGrid {
  typeInto(text: string | null): void;
}

const closedCell: OpenCell = { read: () => null, onChange: () => undefined };

/** A window of a browser, without a screen: a desk, the grid under it, and what the page was told. */
export interface DeskPage {
  readonly desk: Desk;
  readonly said: string[];
  readonly type: BareGrid["type"];
  readonly texts: BareGrid["texts"];
  /** Ends the window as a crash would: nothing more is kept, and what it held is free. */
  close(): void;
  isClosed(): boolean;
}

/** A browser whose windows know of each other. */
export interface DeskBrowser {
  /** Opens a window; one that is loaded anew has the `notes` of before. */
  open(given?: { readonly store?: PlanStore; readonly notes?: Map<string, string>; readonly makeGrid?: (data: Partial<IWorkbookData>) => BareGrid; readonly refusesChannel?: true }): Promise<DeskPage>;
}

/** Makes a browser with the locks, channels and notes of its windows. */
export function deskBrowser(): DeskBrowser {
  const locked = new Set<string>();
  const channels = new Set<EventTarget>();
  /** What windows say to each other. */
  class Channel extends EventTarget {
    constructor() {
      super();
      channels.add(this);
    }
    postMessage(data: unknown): void {
      for (const other of channels) if (other !== this) other.dispatchEvent(new MessageEvent("message", { data }));
    }
  }
  class NoChannel extends EventTarget {
    constructor() {
      super();
      throw new DOMException("no", "SecurityError");
    }
  }
  return {
    async open({ store, notes = new Map<string, string>(), makeGrid = engineGrid, refusesChannel } = {}) {
      const own = new Set<string>();
      const locks = {
        async request(name: string, _: unknown, work: (lock: object | null) => Promise<void> | undefined) {
          if (locked.has(name)) return work(null);
          own.add(name);
          locked.add(name);
          await work({});
          own.delete(name);
          locked.delete(name);
          return undefined;
        },
      };
      const sessionStorage = { getItem: (name: string) => notes.get(name) ?? null, setItem: (name: string, text: string) => void notes.set(name, text) };
      for (const [name, value] of Object.entries({ navigator: { locks }, BroadcastChannel: refusesChannel ? NoChannel : Channel, sessionStorage })) {
        Object.defineProperty(globalThis, name, { value, configurable: true, writable: true });
      }
      const said: string[] = [];
      const others = new Set(channels);
      const desk = await Desk.open(store ?? (await openPlanStore()), { refresh: () => undefined, say: (sentence) => said.push(sentence) });
      const mine = [...channels].filter((one) => !others.has(one));
      const bare = makeGrid(desk.data);
      desk.attach(bare.grid);
      await bare.settle();
      let isClosed = false;
      return {
        desk,
        said,
        type: (row, text) => { bare.type(row, text); },
        texts: () => bare.texts(),
        isClosed: () => isClosed,
        close() {
          if (isClosed) return;
          isClosed = true;
          for (const name of own) locked.delete(name);
          for (const channel of mine) channels.delete(channel);
          bare.dispose();
        },
      };
    },
  };
}

/** A grid with the real engine behind it. */
function engineGrid(data: Partial<IWorkbookData>): BareGrid {
  const univer = bootEngine(data);
  const live = new LiveWorkbook(univer);
  let port = createBrowserPort(univer, live);
  const front = () => live.workbook.getSheets()[0]!;
  return {
    grid: {
      live,
      openCell: closedCell,
      endTyping: () => Promise.resolve(),
      show(next) {
        const before = live.workbook.getUnitId();
        univer.createUnit(UniverInstanceType.UNIVER_SHEET, { ...next, id: `${before}+` });
        univer.__getInjector().get(IUniverInstanceService).disposeUnit(before);
        live.wake();
        port = createBrowserPort(univer, live);
      },
    },
    type: (row, text) => void live.run("sheet.mutation.set-range-values", { subUnitId: front().getSheetId(), cellValue: { [row]: { 0: { v: text } } } }),
    async texts() {
      const { sheets } = await port.read([front().getName()]);
      return sheets[0]!.values.map(([first]) => first);
    },
    settle: () => live.settle(),
    dispose: () => { live.dispose(); },
  };
}

/** A grid that only holds texts, for what is tried many times over. */
export function plainGrid(data: Partial<IWorkbookData>): PlainGrid {
  let shown = structuredClone(data);
  let typing: Typing | null = null;
  let tellTyping: () => void = () => undefined;
  let tell: (change: Partial<EngineChange>) => void = () => undefined;
  const front = () => shown.sheets![shown.sheetOrder![0]!]!;
  const write = (row: number, text: string) => {
    front().cellData = { ...front().cellData, [row]: { 0: { v: text } } };
    tell({ id: "sheet.mutation.set-range-values", sheetId: front().id!, isFigure: false });
  };
  const live = {
    isOurs: false,
    settle: () => Promise.resolve(),
    store: () => ({ data: structuredClone(shown), spills: {} }),
    onChange: (listener: typeof tell) => void (tell = listener),
  };
  return {
    grid: {
      live: live as unknown as LiveWorkbook,
      openCell: { read: () => typing, onChange: (listener) => void (tellTyping = listener) },
      endTyping() {
        const { text } = typing ?? {};
        typing = null;
        if (text !== undefined) write(0, text);
        return Promise.resolve();
      },
      show: (next) => void (shown = structuredClone(next)),
    },
    typeInto(text) {
      typing = text === null ? null : { place: "Sheet1!A1", text };
      tellTyping();
    },
    type: write,
    texts: () => Promise.resolve(Object.values(front().cellData ?? {}).map((row: Record<number, { v?: unknown }>) => row[0]?.v)),
    settle: () => Promise.resolve(),
    dispose: () => undefined,
  };
}
