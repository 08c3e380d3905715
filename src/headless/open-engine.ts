import { IUniverInstanceService, UniverInstanceType, generateRandomId } from "@univerjs/core";
import type { CellGrid, WorkbookDocument } from "../workbook/document/workbook-document";
import { documentOf } from "../workbook/engine/document-of";
import { LiveWorkbook } from "../workbook/engine/live-workbook";
import { openDocument } from "../workbook/engine/open-document";
import { bootEngine } from "./open-headless";

/** An engine that computes one small workbook after the other. */
export interface SheetEngine {
  /** Computes a workbook of one sheet and answers with its cells. */
  compute(document: WorkbookDocument): Promise<CellGrid>;
  readonly dispose: () => void;
}

export function openEngine(): SheetEngine {
  let engine: { readonly live: LiveWorkbook; readonly univer: ReturnType<typeof bootEngine> } | null = null;
  return {
    async compute(document) {
      const data = openDocument(document);
      if (engine === null) {
        const univer = bootEngine(data);
        engine = { univer, live: new LiveWorkbook(univer) };
      } else {
        const { univer, live } = engine;
        const before = live.workbook.getUnitId();
        univer.createUnit(UniverInstanceType.UNIVER_SHEET, { ...data, id: generateRandomId() });
        univer.__getInjector().get(IUniverInstanceService).disposeUnit(before);
        live.wake();
      }
      await engine.live.settle();
      return documentOf(engine.live.store()).sheets[0]!.cells;
    },
    dispose() {
      engine?.live.dispose();
    },
  };
}
