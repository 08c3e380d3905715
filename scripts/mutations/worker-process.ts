import { fork, type ChildProcess } from "node:child_process";
import { join } from "node:path";
import type { Outcome, Task } from "./worker";

/** One worker in a process of its own, begun anew after it had to be ended or ended by itself. */
export class WorkerProcess {
  private child: ChildProcess | undefined;

  /** Runs one test file; undefined when it took longer than `limit` milliseconds, four times that in a new process, or brought the process down. */
  run(task: Task, limit: number): Promise<Outcome | undefined> {
    // A process that has just begun loads and compiles everything first: on a busy machine that alone may take the limit.
    const patience = this.child === undefined ? 4 * limit : limit;
    const child = (this.child ??= fork(join(__dirname, "..", "run.mjs"), ["scripts/mutations/worker.ts"], { stdio: ["ignore", "ignore", "ignore", "ipc"] }));
    return new Promise((resolve) => {
      const timer = setTimeout(() => child.kill("SIGKILL"), patience);
      const settle = (outcome: Outcome | undefined): void => {
        clearTimeout(timer);
        child.removeAllListeners();
        if (!outcome) this.child = undefined;
        resolve(outcome);
      };
      child.once("message", (outcome: Outcome) => {
        settle(outcome);
      });
      child.once("exit", () => {
        settle(undefined);
      });
      child.send(task);
    });
  }

  end(): void {
    this.child?.kill();
  }
}

/** Hands `items` to two workers, each to the first that is free, and returns the answers in the order of the items. */
export async function shareOut<Item, Answer>(items: readonly Item[], work: (item: Item, worker: WorkerProcess) => Promise<Answer>): Promise<Answer[]> {
  const answers: Answer[] = [];
  let next = 0;
  const workOff = async (): Promise<void> => {
    const worker = new WorkerProcess();
    while (next < items.length) {
      const index = next;
      next += 1;
      answers[index] = await work(items[index]!, worker);
    }
    worker.end();
  };
  await Promise.all([workOff(), workOff()]);
  return answers;
}
