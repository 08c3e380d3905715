import type { WorkbookPort } from "../workbook/port";

/** Makes a port that can be handed out before its workbook is there: every call waits for it. */
export function deferredPort(port: Promise<WorkbookPort>): WorkbookPort {
  return {
    read: async (sheets, only) => (await port).read(sheets, only),
    apply: async (edits) => (await port).apply(edits),
    spillAreas: async (cells) => (await port).spillAreas(cells),
    selection: async () => (await port).selection(),
    watch: async (listener) => (await port).watch(listener),
  };
}
