import { cellToken, RowCodes, tokens } from "../../../../src/planning/commissioning/seal";
import type { CellValue } from "../../../../src/sheet";

const codes = new RowCodes(["no", "step", "found", "note"]);
const row = (cells: Readonly<Record<string, string>>): ReadonlyMap<string, string> => new Map(Object.entries(cells));

describe("what a cell holds", () => {
  test.each<[CellValue | undefined, boolean, string]>([
    [4, false, "n4"], ["4", false, "t4"], [true, false, "bTRUE"], ["TRUE", false, "tTRUE"], [{ error: "#N/A" }, false, "e#N/A"], ["#N/A", false, "t#N/A"],
    [null, false, ""], [undefined, false, ""], ["", false, ""], [" \u00a0", false, ""], [4, true, "fn4"], ["", true, "f"], [null, true, "f"],
    [0.999999999999999, true, "fn1"], [0.9999999999, true, "fn0.9999999999"],
    // 15 digits are what other programs keep of a number; a time of day is in them.
    [0.1 + 0.2, false, "n0.3"], [46_083.5, false, "n46083.5"], [" a\r\nb ", false, "ta\nb"], ["e\u0301", false, "t\u00e9"],
  ])("%j, as a formula %s, is %j", (value, hasFormula, token) => {
    expect(cellToken(value, hasFormula)).toBe(token);
  });
});

describe("the codes of a row", () => {
  test("tell for every cell whether it holds what it held", () => {
    const code = codes.read(codes.write(row({ no: "n1", found: tokens.entry, note: tokens.formula, "+Mine": "tx" })))!;
    expect([code.holds("no", "n1"), code.holds("no", "n2"), code.holds("no", "")]).toEqual([true, false, false]);
    expect([code.holds("step", ""), code.holds("step", "tx")]).toEqual([true, false]);
    expect([code.holds("found", tokens.entry), code.holds("found", "tx"), code.isFormula("found")]).toEqual([true, false, false]);
    expect([code.holds("note", tokens.formula), code.isFormula("note"), code.isFormula("no"), code.isFormula("+Mine")]).toEqual([true, true, false, false]);
    expect([code.holds("+Mine", "tx"), code.holds("+Mine", "ty"), code.holds("+Other", ""), code.holds("+Other", "tx"), code.others]).toEqual([true, false, true, false, 1]);
  });

  test("are short: five characters a cell that holds something, one a cell that does not or need not be told apart", () => {
    expect(codes.write(row({ no: "n1", note: tokens.formula }))).toMatch(/^[A-Z2-7]{5}\.\.=$/);
    expect([codes.write(row({})), codes.write(row({ no: tokens.entry })), codes.write(row({ no: "n1" })).length]).toEqual(["", tokens.entry, 5]);
    expect(codes.write(row({ "+Mine": "tx", "+Yours": "ty" }))).toMatch(/^(\+[A-Z2-7]{10}){2}$/);
  });

  // FNV-1a over 32 bits of these texts, as published in draft-eastlake-fnv, appendix C; the alphabet is that of RFC 4648, section 6.
  test.each([["a", 0xe40c292c], ["b", 0xe70c2de5], ["foobar", 0xbf9cf968]])("are written of the FNV-1a hash of %j that draft-eastlake-fnv publishes, its upper half folded in", (text, published) => {
    const folded = BigInt(published) ^ (BigInt(published) >> 15n);
    const digits = [0n, 5n, 10n, 15n, 20n].map((shift) => "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"[Number((folded >> shift) % 32n)]);
    expect(codes.write(row({ no: text }))).toBe(digits.join(""));
  });

  test("tell 100,000 texts from the one before, but for as many as chance allows", () => {
    const code = codes.read(codes.write(row({ no: "t0" })))!;
    const alike = Array.from({ length: 100_000 }, (_, index) => `t${index + 1}`).filter((token) => code.holds("no", token));
    expect(alike.length).toBeLessThanOrEqual(1);
  });

  test.each(["", "a", "ABCD", "ABCDE!", "AAAAABBBBBCCCCCDDDDDEEEEE", ".....", "+AAAAA", "AAAAA AAAAA", "HELLO THERE"])("are not read out of %j", (text) => {
    expect(codes.read(text)).toBeNull();
  });
});
