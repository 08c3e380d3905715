import { IUndoRedoService, type IUndoRedoItem, type Univer } from "@univerjs/core";

/** What of the engine's list of steps is private: how it joins what is done next to the step before. */
interface Steps {
  _tryBatchingElements(step: IUndoRedoItem, next: IUndoRedoItem): void;
}

/**
 * Lets several edits that were made in one step be taken back from the last to the first.
 *
 * The engine takes them back in the order in which they were made: a sheet is gone before what was written into it, which then fails, and from there on
 * nothing is undone any more.
 */
export function undoFromTheLast(univer: Univer): void {
  const steps = univer.__getInjector().get(IUndoRedoService) as unknown as Steps;
  steps._tryBatchingElements = (step, next) => {
    step.redoMutations.push(...next.redoMutations);
    step.undoMutations.unshift(...next.undoMutations);
  };
}
