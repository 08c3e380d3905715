/** The codes under which a cell can show a sentence: `#VALUE!` and `#N/A`. */
const errorCodes = { invalidValue: "#VALUE!", notAvailable: "#N/A" } as const;

/** An error that a custom function answers with: a code and the sentence shown with it. */
export class CellFault extends Error {
  constructor(
    readonly code: string,
    override readonly message: string,
  ) {
    super(message);
  }
}

/**
 * Puts a `CustomFunctions` global in place where the spreadsheet host has not: in the browser workbook, on the command line, in tests.
 *
 * Adapters then throw the same error everywhere. Does nothing where the host's own global is there.
 */
export function installCustomFunctions(): void {
  const scope = globalThis as { CustomFunctions?: unknown };
  scope.CustomFunctions ??= { Error: CellFault, ErrorCode: errorCodes, associate: () => undefined };
}
