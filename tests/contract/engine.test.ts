import { openHeadless } from "../../src/headless/open-headless";
import { describePort } from "./port-contract";

describePort("the browser workbook", async () => {
  const { port, dispose } = await openHeadless();
  return { port, hasTables: true, close: dispose };
});

// What was written, saved as a file and opened again must read as if it had never left.
describePort("a workbook that goes through a file before every reading", async () => {
  let current = await openHeadless();
  const reopened = async () => {
    const bytes = await current.save();
    current.dispose();
    current = await openHeadless(bytes);
    return current.port;
  };
  return {
    hasTables: true,
    close: () => {
      current.dispose();
    },
    port: {
      read: async (sheets) => (await reopened()).read(sheets),
      apply: (edits) => current.port.apply(edits),
      spillAreas: async (cells) => (await reopened()).spillAreas(cells),
      selection: () => current.port.selection(),
      watch: (listener) => current.port.watch(listener),
    },
  };
});
