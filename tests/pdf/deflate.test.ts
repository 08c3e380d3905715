import { inflateSync } from "node:zlib";
import deflate from "../../src/pdf/deflate";

test("what stands in a page for the compression of Node gives bytes that Node reads back, of the kind that the writer takes for bytes", () => {
  const text = new TextEncoder().encode("BT /F1 9 Tf (Handover) Tj ET\n".repeat(200));
  const small = deflate.deflateSync(text);
  expect(Buffer.isBuffer(small)).toBe(true);
  expect(small.length).toBeLessThan(text.length / 10);
  expect(inflateSync(small).equals(text)).toBe(true);
});
