import type { Univer } from "@univerjs/core";
import { IDialogService } from "@univerjs/ui";
import { type Observable, defer, startWith } from "rxjs";

/** What of the engine's dialogs is private. */
interface Dialogs {
  readonly _dialogOptions: readonly object[];
  getDialogs$(): Observable<readonly object[]>;
}

/**
 * Shows dialogs that were opened before the engine had drawn what shows them.
 *
 * Left alone it tells of each once, when it is opened: a search that somebody asks for in the first moments counts as open from then on, and is never seen.
 */
export function showEarlyDialogs(univer: Univer): void {
  const dialogs = univer.__getInjector().get(IDialogService) as unknown as Dialogs;
  const later = dialogs.getDialogs$.bind(dialogs);
  dialogs.getDialogs$ = () => defer(() => later().pipe(startWith([...dialogs._dialogOptions])));
}
