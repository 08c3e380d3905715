// The writer counts on the byte arrays of Node being there by name; a page has none. Imported before it.
import { Buffer } from "buffer";

if (!("Buffer" in globalThis)) Object.assign(globalThis, { Buffer });
