import { IDBDatabase as FDBDatabase, IDBFactory as FDBFactory, IDBOpenDBRequest as FDBOpenDBRequest, IDBTransaction as FDBTransaction } from "fake-indexeddb";

/** How a call of the storage goes wrong. */
export const faultKinds = ["throws", "fails", "is full", "is full at the end", "never answers"] as const;
export type FaultKind = (typeof faultKinds)[number];

/** A fault in one call of the storage, until it is mended. */
export interface StorageFault {
  /** The call that went wrong, such as `titles.getAll`; null where there were not so many calls. */
  readonly hit: () => string | null;
  mend(): void;
}

/** What this needs of the storage's own transactions. */
interface Transaction {
  _requests: unknown[];
  _state: string;
  readonly mode: string;
  _start(): void;
  _abort(name: string): void;
  _execRequestAsync(call: { readonly source: { readonly transaction: Transaction; readonly name: string } | null; operation: () => unknown }): unknown;
}

/**
 * Lets one call of the storage in memory go wrong, counted from 0 over all of them: opening it, beginning a transaction, each request, and the
 * end of each transaction that writes.
 */
export function injectFault(kind: FaultKind, failing: number): StorageFault {
  let calls = 0;
  let hit: string | null = null;
  const isNext = (name: string): boolean => {
    const fails = hit === null && calls === failing;
    calls += 1;
    if (fails) hit = name;
    return fails;
  };
  const fault = () => new DOMException("a fault", kind.startsWith("is full") ? "QuotaExceededError" : "UnknownError");
  const transactions = FDBTransaction.prototype as unknown as Transaction;
  const real = { open: FDBFactory.prototype.open, transaction: FDBDatabase.prototype.transaction, request: transactions._execRequestAsync, start: transactions._start };

  FDBFactory.prototype.open = function (...given) {
    if (!isNext("open")) return real.open.apply(this, given);
    if (kind !== "never answers") throw fault();
    return new FDBOpenDBRequest();
  };
  FDBDatabase.prototype.transaction = function (...given) {
    if (isNext("transaction")) {
      if (kind === "throws") throw fault();
      const begun = real.transaction.apply(this, given) as unknown as Transaction;
      spoil(begun);
      return begun as unknown as IDBTransaction;
    }
    return real.transaction.apply(this, given);
  };
  transactions._execRequestAsync = function (call) {
    const { source } = call;
    if (source === null || !isNext(`request of ${source.name}`)) return real.request.call(this, call);
    if (kind === "throws") throw fault();
    if (kind === "fails" || kind === "is full") {
      call.operation = () => {
        throw fault();
      };
    } else spoil(this);
    return real.request.call(this, call);
  };
  /** Lets a transaction that has begun come to no good end. */
  const stalled: Transaction[] = [];
  const spoil = (transaction: Transaction): void => {
    if (kind === "never answers") stalled.push(transaction);
    transaction._start = function () {
      if (kind === "never answers") return;
      if (kind === "is full at the end" && this._requests.length > 0) real.start.call(this);
      else if (this._state !== "finished") this._abort(kind === "fails" ? "UnknownError" : "QuotaExceededError");
    };
  };
  return {
    hit: () => hit,
    mend() {
      FDBFactory.prototype.open = real.open;
      FDBDatabase.prototype.transaction = real.transaction;
      transactions._execRequestAsync = real.request;
      // As a crash of the page would.
      for (const transaction of stalled.splice(0)) if (transaction._state !== "finished") transaction._abort("AbortError");
    },
  };
}
