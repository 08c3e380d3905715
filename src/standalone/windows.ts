/** This window among the others of its browser: which plan it has, and which plans others have. */
export interface Windows {
  /** Holds a plan for this window until it is released or the window is gone, crashed or closed; answers false where another window holds it. */
  hold(plan: string): Promise<boolean>;
  release(plan: string): void;
  /** Tells the window that holds a plan that this one works on a copy of it. */
  tellOfCopy(plan: string): void;
  /** The plan that this window had before it was loaded anew; null where it had none. */
  plan(): string | null;
  /** Notes which plan this window has. */
  note(plan: string): void;
}

const noteName = "baywright plan";

/**
 * Meets the other windows of this browser; `copied` is called when one of them works on a copy of a plan that this window holds.
 *
 * Where the browser refuses locks every plan counts as free: the storage itself still refuses what would undo another window's work.
 */
export function meetWindows(copied: () => void): Windows {
  const held = new Map<string, () => void>();
  const channel = openChannel();
  channel?.addEventListener("message", ({ data }) => {
    if (held.has(String(data))) copied();
  });
  return {
    hold(plan) {
      if (held.has(plan) || !("locks" in navigator)) return Promise.resolve(true);
      return new Promise((resolve) => {
        const asked = navigator.locks.request(`baywright plan ${plan}`, { ifAvailable: true }, (lock) => {
          resolve(lock !== null);
          if (lock === null) return undefined;
          return new Promise<void>((release) => {
            held.set(plan, release);
          });
        });
        asked.catch(() => { resolve(true); });
      });
    },
    release(plan) {
      held.get(plan)?.();
      held.delete(plan);
    },
    tellOfCopy(plan) {
      channel?.postMessage(plan);
    },
    plan: () => withNotes((notes) => notes.getItem(noteName)),
    note: (plan) => void withNotes((notes) => { notes.setItem(noteName, plan); }),
  };
}

/** Opens the way to the other windows, which a browser may lack or refuse. */
function openChannel(): BroadcastChannel | null {
  try {
    return new BroadcastChannel("baywright plans");
  } catch {
    return null;
  }
}

/** Uses what the browser keeps for this window alone, which it may refuse. */
function withNotes<T>(use: (notes: Storage) => T): T | null {
  try {
    return use(sessionStorage);
  } catch {
    return null;
  }
}
