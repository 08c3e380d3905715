import { invalid } from "../../../src/planning/text/problem";
import { explain, Stopped } from "../../../src/taskpane/elements/work";

describe("explaining a failure", () => {
  afterEach(() => jest.restoreAllMocks());

  test("says the sentence of a problem as it is", () => {
    expect(explain(invalid("Sites", null, "Sites is empty. Write one row a site."), "Build")).toEqual({ sentence: "Sites is empty. Write one row a site.", tone: "trouble" });
  });

  test("calls a defect of ours by its name and never shows its text", () => {
    jest.spyOn(console, "error").mockImplementation(() => undefined);
    const { sentence, tone } = explain(new TypeError("x is undefined"), "Build");
    expect(sentence).toContain("inside the add-in");
    expect(sentence).not.toContain("undefined");
    expect(tone).toBe("trouble");
  });

  test("says after Stop that what was finished stays", () => {
    expect(explain(new Stopped(), "Build").sentence).toContain("What was finished stays");
  });
});
