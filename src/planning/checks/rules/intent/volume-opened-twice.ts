import { gather } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const volumeOpenedTwice: Rule = {
  name: "volume-opened-twice",
  family: "intent",
  weight: "warn",
  meaning: "A host opens a volume by one row of Access, its own or that of its group: by a second it would see the volume twice, or keep it when one is taken away.",
  check: (model) =>
    gather(model.rows("volumes"), ({ volume }): Remark[] => {
      const openings = model.volumes.openingsOf(volume);
      if (openings.length < 2) return [];
      const seen = new Map<object, { readonly at: number; readonly writes: boolean }>();
      return openings.flatMap(({ row, hosts, writes }): Remark[] => {
        const twice = hosts.find((host) => seen.get(host)?.writes === writes);
        const earlier = twice === undefined ? undefined : seen.get(twice);
        for (const host of hosts) if (!seen.has(host)) seen.set(host, { at: row.row, writes });
        // Two rows that differ in the right are told by a rule of their own.
        if (twice === undefined || earlier === undefined) return [];
        return [remarkAt(model, "access", row, "to", cutSentence(`${twice.host} opens ${volume} by row ${earlier.at + 1} already. Delete one of the two rows.`))];
      });
    }),
};
