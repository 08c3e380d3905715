import { gather } from "../../../plan/model";
import { andMore, cutSentence } from "../../../text";
import { remarkAt, type Rule } from "../../finding";

export const pathsNotKnown: Rule = {
  name: "paths-not-known",
  family: "intent",
  weight: "note",
  meaning: "How many paths a host has is known: each of its addresses lies in a network of its site, and these say what they are for. Else nothing tells that one lacks.",
  check: (model) => {
    const unknown = new Set(
      gather(model.rows("arrays"), (array) => (model.ports.of(array).length === 0 ? [] : model.hostPaths.to(array).filter(({ paths }) => paths === null).map(({ host }) => host))),
    );
    const [first, ...others] = unknown;
    if (first === undefined) return [];
    const sentence = `How many paths ${andMore(first.host, others.length)} ${others.length === 0 ? "has" : "have"} is not known, so one that lacks is not told. Give each port an address of its site.`;
    return [remarkAt(model, "hosts", first, "address", cutSentence(sentence))];
  },
};
