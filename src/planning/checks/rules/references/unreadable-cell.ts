import type { Rule } from "../../finding";

export const unreadableCell: Rule = {
  name: "unreadable-cell",
  family: "references",
  weight: "stop",
  meaning: "Every cell can be read as its column asks; one that cannot counts as blank, so figures that need it are missing.",
  check: ({ plan }) => plan.faults.map(({ sheet, row, column, problem }) => ({ sheet, row, column, sentence: problem.sentence })),
};
