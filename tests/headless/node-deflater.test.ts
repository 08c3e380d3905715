import { nodeDeflater } from "../../src/headless/node-deflater";
import { anywhereDeflater, pack, unpack } from "../../src/workbook/xlsx/zip-archive";

const both = { "of Node": nodeDeflater, "of anywhere": anywhereDeflater };
const plain = new TextEncoder().encode(Array.from({ length: 2_000 }, (_, row) => `<row r="${row}"><c><v>${row ** 2}</v></c></row>`).join(""));

test.each(Object.keys(both) as (keyof typeof both)[])("what the deflater %s packs either unpacks, and an empty part too", (name) => {
  for (const content of [plain, new Uint8Array(0)]) {
    const entry = pack("a.xml", content, both[name]);
    for (const other of Object.values(both)) expect([...unpack(entry, other)]).toEqual([...content]);
  }
});

test.each(Object.keys(both) as (keyof typeof both)[])("the deflater %s refuses a part that is cut, that yields more or less than it declares, or that is something else", (name) => {
  const deflater = both[name];
  const entry = pack("a.xml", plain, deflater);
  const flipped = entry.packed.slice();
  flipped[flipped.length >> 1]! ^= 4;
  const wrong = [
    { ...entry, packed: entry.packed.slice(0, -40) },
    { ...entry, packed: new Uint8Array(0) },
    { ...entry, bytes: entry.bytes - 1 },
    { ...entry, bytes: entry.bytes + 1 },
    { ...entry, bytes: 0 },
    { ...entry, packed: flipped },
    { ...entry, method: 9 },
  ];
  for (const one of wrong) expect(() => unpack(one, deflater)).toThrow("damaged");
});
