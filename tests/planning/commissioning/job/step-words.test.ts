import { readStepWords } from "../../../../src/planning/commissioning/job";

describe("the words of a step", () => {
  test("are read part by part: what gets hurt, what to do, what the guide says", () => {
    const words = "HOLD POINT: nothing further before this is done and signed by two.\nCAUTION: Two people lift.\nPut it into unit 4.\nThen tighten it.\nMaker's guide: Page 12.\nTwice.";
    expect(readStepWords(words)).toEqual({ caution: "Two people lift.", do: "Put it into unit 4.\nThen tighten it.", makersGuide: "Page 12.\nTwice." });
  });

  test.each([
    ["Look at the lamps.", { caution: "", do: "Look at the lamps.", makersGuide: "" }],
    ["If wanted: Look at the lamps.", { caution: "", do: "If wanted: Look at the lamps.", makersGuide: "" }],
    ["CAUTION: Hot.\nOpen it.", { caution: "Hot.", do: "Open it.", makersGuide: "" }],
    ["HOLD POINT: nothing further until two have signed. CAUTION: Hot.\nOpen it.", { caution: "Hot.", do: "Open it.", makersGuide: "" }],
    ["HOLD POINT: nothing further until it is signed.\nOpen it.", { caution: "", do: "Open it.", makersGuide: "" }],
    ["Open it.\nCAUTION: it may be hot.", { caution: "", do: "Open it.\nCAUTION: it may be hot.", makersGuide: "" }],
    ["", { caution: "", do: "", makersGuide: "" }],
  ])("%j have the parts that they have", (words, parts) => {
    expect(readStepWords(words)).toEqual(parts);
  });
});
