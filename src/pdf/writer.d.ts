// What we use of the writer and of its fonts: their own types would bring those of Node into the page.
declare module "pdfmake/js/Printer" {
  /** A document that hands out its bytes piece by piece once it is ended. */
  interface WrittenDocument {
    on(event: "data", listener: (piece: Uint8Array) => void): void;
    on(event: "end", listener: () => void): void;
    on(event: "error", listener: (fault: unknown) => void): void;
    end(): void;
  }

  export default class Printer {
    /** Fonts by family and look: the bytes of each. */
    constructor(fonts: Readonly<Record<string, Readonly<Record<string, Uint8Array>>>>, files: null, addresses: null, mayRead: (path: string) => boolean);
    createPdfKitDocument(definition: object): Promise<WrittenDocument>;
    /** Fetches what a definition names by address. */
    resolveUrls(definition: object): Promise<void>;
  }
}

declare module "fontkit" {
  interface Font {
    hasGlyphForCodePoint(code: number): boolean;
    /** What the font says of itself under a key of its table of names. */
    getName(key: string): string | null;
  }

  export function create(font: Uint8Array): Font;
  /** Under Node alone. */
  export function openSync(path: string): Font;
}

declare module "*.woff" {
  const bytes: Uint8Array;
  export default bytes;
}
