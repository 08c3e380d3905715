import fc from "fast-check";
import { fromFileFormula, toFileFormula } from "../../../src/workbook/xlsx/formula-text";

test.each([
  ['=BAY.USABLE("RAID 6",12,4)', '_xldudf_BAY_USABLE("RAID 6",12,4)'],
  ["=bay.usable(A1,B1,C1)*2", "_xldudf_BAY_USABLE(A1,B1,C1)*2"],
  ["=SUM(BAY.HOSTCOUNT(A1),1)", "SUM(_xldudf_BAY_HOSTCOUNT(A1),1)"],
  ['=TEXTJOIN(", ",TRUE,A1:A3)', '_xlfn.TEXTJOIN(", ",TRUE,A1:A3)'],
  ["=FILTER(A1:A3,B1:B3)", "_xlfn._xlws.FILTER(A1:A3,B1:B3)"],
  ['=LET(x,A1,y,x*2,x+y&"x")', '_xlfn.LET(_xlpm.x,A1,_xlpm.y,_xlpm.x*2,_xlpm.x+_xlpm.y&"x")'],
  ["=LAMBDA(a,[b],a+SUM(b))(1,2)+a", "_xlfn.LAMBDA(_xlpm.a,[_xlpm.b],_xlpm.a+SUM(_xlpm.b))(1,2)+a"],
  ["=LET(f,LAMBDA(n,n+1),f(f(1)))", "_xlfn.LET(_xlpm.f,_xlfn.LAMBDA(_xlpm.n,_xlpm.n+1),_xlpm.f(_xlpm.f(1)))"],
  ["=MAP(A1:A3,LAMBDA(v,IF(v>rate,v,0)))", "_xlfn.MAP(A1:A3,_xlfn.LAMBDA(_xlpm.v,IF(_xlpm.v>rate,_xlpm.v,0)))"],
  ["=SUM('BAY.USABLE(x)'!A1)", "SUM('BAY.USABLE(x)'!A1)"],
  ['="BAY.USABLE(1) and ""IFS(""" & A1', '"BAY.USABLE(1) and ""IFS(""" & A1'],
])("%s is stored as %s and read back", (typed, stored) => {
  expect(toFileFormula(typed)).toBe(stored);
  expect(fromFileFormula(stored)).toBe(typed.replace("bay.usable", "BAY.USABLE"));
});

test.each([
  ['BAY.USABLE("RAID 6",12,4)', '=BAY.USABLE("RAID 6",12,4)'],
  ["[2]!_xldudf_BAY_USABLE(A1,2,3)", "=BAY.USABLE(A1,2,3)"],
  ["_XLDUDF_bay_usable (A1)", "=BAY.USABLE (A1)"],
  ["_xlfn.LET(_xlpm.x,1,_xlpm.x+1)", "=LET(x,1,x+1)"],
])("the stored form %s is read as %s", (stored, typed) => {
  expect(fromFileFormula(stored)).toBe(typed);
});

test("a formula without functions of ours or young ones is stored as it is", () => {
  fc.assert(
    fc.property(fc.stringMatching(/^(SUM|IF|INDEX|"a""b"|'x y'![A-Z]\d|[A-Z]\d|[+*(),&]){1,12}$/), (text) => {
      expect(toFileFormula(`=${text}`)).toBe(text);
      expect(fromFileFormula(text)).toBe(`=${text}`);
    }),
    { seed: 9, numRuns: 300 },
  );
});
