import { cutSentence } from "../../../text";
import { remarkOn, type Rule } from "../../finding";

export const assumedAndReliedOn: Rule = {
  name: "assumed-and-relied-on",
  family: "intent",
  weight: "stop",
  meaning: "Nothing is installed on a guess of what people or data depend on: voltage, phases and breaker of a feed, prefix and gateway of a network.",
  check: (model) =>
    [...model.assumptions.reliedOn()].map(({ by, cell, header }) =>
      remarkOn(model, cell, cutSentence(`${header} of ${by.named} is assumed: ${by.value}. Write what is so, or tick Settled in Assumptions, before an installation is built.`)),
    ),
};
