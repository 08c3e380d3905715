import { remarkAt, type Rule } from "../../finding";

export const unknownSetting: Rule = {
  name: "unknown-setting",
  family: "references",
  weight: "note",
  meaning: "A row of the Settings table that no check reads changes nothing.",
  check: (model) =>
    model.settingFaults.filter(({ kind }) => kind === "unknown").map(({ row, sentence }) => remarkAt(model, "settings", row, "setting", sentence)),
};
