import {
  CommandType, EDITOR_ACTIVATED, FOCUSING_UNIVER_EDITOR, ICommandService, IUniverInstanceService, RANGE_DIRECTION, UniverInstanceType,
  type DocumentDataModel, type IContextService, type Univer,
} from "@univerjs/core";
import { DocSelectionManagerService } from "@univerjs/docs";
import { IShortcutService, MetaKeys } from "@univerjs/ui";
import { keys } from "./desk-keys";

/** What parts lines in the text that the engine has in an open cell; its last one, with a mark behind it, ends the text. */
const lineEnd = "\r";

/** Where a key leads in a text that is being typed; `at` counts from 0. */
interface TypingMove {
  readonly id: string;
  readonly key: number;
  readonly to: (text: string, at: number) => number;
}

const moves: readonly TypingMove[] = [
  { id: "line-begin", key: keys.home, to: (text, at) => text.slice(0, at).lastIndexOf(lineEnd) + 1 },
  { id: "line-end", key: keys.end, to: (text, at) => text.indexOf(lineEnd, at) },
  { id: "text-begin", key: keys.home | MetaKeys.CTRL_COMMAND, to: () => 0 },
  { id: "text-end", key: keys.end | MetaKeys.CTRL_COMMAND, to: (text) => text.lastIndexOf(lineEnd) },
];

/** Lets Home and End lead to the ends of the line that is being typed, with Ctrl to those of the text, and select as far with Shift; the engine knows only arrows there. */
export function addTypingKeys(univer: Univer): void {
  const injector = univer.__getInjector();
  const [commands, shortcuts] = [injector.get(ICommandService), injector.get(IShortcutService)];
  for (const { id, key, to } of moves) {
    for (const [suffix, held, selects] of [["", 0, false], ["-selecting", MetaKeys.SHIFT, true]] as const) {
      const command = `baywright.operation.${id}${suffix}`;
      commands.registerCommand({ id: command, type: CommandType.OPERATION, handler: () => move(to, selects) });
      shortcuts.registerShortcut({ id: command, binding: key | held, preconditions: isTyping });
    }
  }

  function move(to: TypingMove["to"], selects: boolean): boolean {
    const caret = injector.get(DocSelectionManagerService);
    const text = injector.get(IUniverInstanceService).getCurrentUnitOfType<DocumentDataModel>(UniverInstanceType.UNIVER_DOC)?.getBody()?.dataStream;
    const range = caret.getActiveTextRange();
    if (text === undefined || !range) return false;
    const { startOffset, endOffset, direction, style } = range;
    const [from, at] = direction === RANGE_DIRECTION.BACKWARD ? [endOffset, startOffset] : [startOffset, endOffset];
    const target = to(text, at);
    caret.replaceDocRanges([{ startOffset: selects ? from : target, endOffset: target, style }], undefined, false);
    return true;
  }
}

function isTyping(context: IContextService): boolean {
  return context.getContextValue(FOCUSING_UNIVER_EDITOR) && context.getContextValue(EDITOR_ACTIVATED);
}
