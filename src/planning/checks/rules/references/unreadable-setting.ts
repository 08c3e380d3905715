import { remarkAt, type Rule } from "../../finding";

export const unreadableSetting: Rule = {
  name: "unreadable-setting",
  family: "references",
  weight: "warn",
  meaning: "Every threshold can be read; one that cannot is taken at its initial value.",
  check: (model) =>
    model.settingFaults.filter(({ kind }) => kind === "unreadable").map(({ row, sentence }) => remarkAt(model, "settings", row, "value", sentence)),
};
