import { containsAddress, formatAddress, formatPrefix, specialPurposeOf, specialPurposeOfAddress, type SpecialPurpose } from "../../../addressing";
import { gather } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, remarkOn, type Remark, type Rule } from "../../finding";

export const unusableRange: Rule = {
  name: "unusable-range",
  family: "addresses",
  weight: "stop",
  meaning: "Networks and addresses lie in no range that is set aside for loopback, multicast, documentation, tests of equipment, or other use that rules devices out.",
  check: (model) => [
    ...gather(model.networks.all(), ({ row, prefix }): Remark[] => {
      const purpose = prefix === null ? null : specialPurposeOf(prefix);
      if (prefix === null || purpose === null || isUsable(purpose)) return [];
      const sentence = `${formatPrefix(prefix)} is set aside: ${purpose.name} (${purpose.source}). Choose a private range, such as one in 10.0.0.0/8.`;
      return [remarkAt(model, "networks", row, "prefix", cutSentence(sentence))];
    }),
    ...gather(model.addresses.all(), ({ table, row, column, address, network }): Remark[] => {
      // An address in its network shares the fate of the network, which is told once.
      if (network?.prefix && containsAddress(network.prefix, address)) return [];
      const purpose = specialPurposeOfAddress(address);
      if (purpose === null || isUsable(purpose)) return [];
      const sentence = `${formatAddress(address)} is set aside: ${purpose.name} (${purpose.source}). No device can have it.`;
      return [remarkOn(model, { table, row: row.row, column }, sentence)];
    }),
  ],
};

/** What a router may forward can be a device's; the range for tests of equipment (RFC 2544) is forwarded, but must be free for them. */
function isUsable({ isSource, isDestination, isForwardable, name }: SpecialPurpose): boolean {
  return isSource === true && isDestination === true && isForwardable === true && name !== "Benchmarking";
}
