import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from "idb";
import type { Entry } from "./job-file";

/** What the list of files from last time shows of one. */
export interface KeptTitle {
  /** Digest of its bytes: the same file chosen twice is one. */
  readonly id: string;
  readonly name: string;
  /** Milliseconds since 1970 at which something was last kept of it. */
  readonly keptAt: number;
  /** How many answers it has, and how many of them it had when it was last given back. */
  readonly answers: number;
  readonly givenBack: number;
}

/** A file as it was chosen, with every answer since. */
export interface KeptFile {
  readonly title: KeptTitle;
  readonly bytes: Uint8Array;
  /** The cells of each answer, in the order in which they were given. */
  readonly answers: readonly (readonly Entry[])[];
}

/** Names that were last written on this device. */
export interface DeviceNames {
  readonly by: string;
  readonly witness: string;
}

/** The browser's own storage of files and answers. */
export interface StepStore {
  /** Why answers are gone when the page is closed; null where the browser keeps them. */
  readonly passing: string | null;
  /** What is kept, latest first. */
  titles(): Promise<KeptTitle[]>;
  /** Reads a file back; null where it is not kept. */
  load(id: string): Promise<KeptFile | null>;
  /** Keeps a file with its title; answers that it has stay. */
  keepFile(title: KeptTitle, bytes: Uint8Array): Promise<void>;
  /** Keeps answers of a file from the one of number `first` on, with its title: all of them or none, and then a sentence is thrown. */
  keepAnswers(title: KeptTitle, first: number, answers: readonly (readonly Entry[])[]): Promise<void>;
  /** Removes a file and its answers for good. */
  forget(id: string): Promise<void>;
  names(): Promise<DeviceNames>;
  keepNames(names: DeviceNames): Promise<void>;
}

interface Records extends DBSchema {
  titles: { key: string; value: KeptTitle };
  files: { key: string; value: { readonly id: string; readonly bytes: Uint8Array } };
  answers: { key: [string, number]; value: { readonly id: string; readonly number: number; readonly cells: readonly Entry[] } };
  device: { key: string; value: DeviceNames };
}

type Change = IDBPTransaction<Records, typeof ofFile, "readwrite">;

const ofFile = ["titles", "files", "answers"] as const;
const noNames: DeviceNames = { by: "", witness: "" };

/** Opens the storage. Where the browser has none or refuses it, files and answers live as long as the page, and `passing` says so. */
export async function openStepStore(): Promise<StepStore> {
  try {
    const database = await openDB<Records>("baywright steps", 1, {
      upgrade(fresh) {
        fresh.createObjectStore("titles", { keyPath: "id" });
        fresh.createObjectStore("files", { keyPath: "id" });
        fresh.createObjectStore("answers", { keyPath: ["id", "number"] });
        fresh.createObjectStore("device");
      },
      blocking: (_, __, event) => {
        (event.target as IDBDatabase).close();
      },
    });
    return storeIn(database);
  } catch {
    return storeInMemory();
  }
}

function storeIn(database: IDBPDatabase<Records>): StepStore {
  /** Writes a title and what belongs to it as one, and answers once the browser has written all of it. */
  const write = async (title: KeptTitle, bytes: Uint8Array | null, first: number, answers: readonly (readonly Entry[])[]): Promise<void> => {
    let change: Change | undefined;
    try {
      change = database.transaction(ofFile, "readwrite", { durability: "strict" });
      const { id } = title;
      await Promise.all([
        change.objectStore("titles").put(title),
        bytes !== null && change.objectStore("files").put({ id, bytes }),
        ...answers.map((cells, index) => change!.objectStore("answers").put({ id, number: first + index, cells })),
        change.done,
      ]);
    } catch (thrown) {
      const why = whyRefused(change?.error ?? thrown);
      // What one request could not take must not leave the others half written.
      abort(change);
      throw new Error(why, { cause: thrown });
    }
  };
  return {
    passing: null,
    titles: async () => (await database.getAll("titles")).sort((a, b) => b.keptAt - a.keptAt),
    async load(id) {
      const reading = database.transaction(ofFile);
      const [title, file, answers] = await Promise.all([
        reading.objectStore("titles").get(id),
        reading.objectStore("files").get(id),
        reading.objectStore("answers").getAll(answersOf(id)),
      ]);
      return title === undefined || file === undefined ? null : { title, bytes: file.bytes, answers: answers.map(({ cells }) => cells) };
    },
    keepFile: (title, bytes) => write(title, bytes, 0, []),
    keepAnswers: (title, first, answers) => write(title, null, first, answers),
    async forget(id) {
      const transaction = database.transaction(ofFile, "readwrite");
      await Promise.all([transaction.objectStore("titles").delete(id), transaction.objectStore("files").delete(id), transaction.objectStore("answers").delete(answersOf(id)), transaction.done]);
    },
    names: async () => (await database.get("device", "names")) ?? noNames,
    keepNames: (names) => database.put("device", names, "names").then(() => undefined),
  };
}

function abort(change: Change | undefined): void {
  try {
    change?.done.catch(() => undefined);
    change?.abort();
  } catch {
    // It had come to its end by itself.
  }
}

function answersOf(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id, 0], [id, Infinity]);
}

function storeInMemory(): StepStore {
  const files = new Map<string, KeptFile>();
  let names = noNames;
  return {
    passing: "This browser gives the page no storage: what is typed is gone when the page is closed. Give the file back before that.",
    titles: () => Promise.resolve([...files.values()].map(({ title }) => title)),
    load: (id) => Promise.resolve(files.get(id) ?? null),
    keepFile: (title, bytes) => Promise.resolve(void files.set(title.id, { title, bytes, answers: files.get(title.id)?.answers ?? [] })),
    keepAnswers(title, first, answers) {
      const file = files.get(title.id);
      if (file !== undefined) files.set(title.id, { ...file, title, answers: [...file.answers.slice(0, first), ...answers] });
      return Promise.resolve();
    },
    forget: (id) => Promise.resolve(void files.delete(id)),
    names: () => Promise.resolve(names),
    keepNames: (given) => Promise.resolve(void (names = given)),
  };
}

function whyRefused(thrown: unknown): string {
  const name = typeof thrown === "object" && thrown !== null && "name" in thrown ? thrown.name : "";
  if (name === "QuotaExceededError") return "The storage of this browser is full: this answer is not kept. Give the file back now, then remove files from last time, and go on.";
  return "The storage of this browser refuses to keep this answer. Give the file back now; then reload the page.";
}
