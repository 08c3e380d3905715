import { gather } from "../../../plan/model";
import { cutSentence } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const volumeOpenToStrangers: Rule = {
  name: "volume-open-to-strangers",
  family: "intent",
  weight: "stop",
  meaning: "Hosts that open one volume, where one of them may write, are in one group: hosts that do not know of each other destroy what is on it.",
  check: (model) =>
    gather(model.rows("volumes"), ({ volume }): Remark[] => {
      const openings = model.volumes.openingsOf(volume);
      const hosts = openings.length === 1 ? openings[0]!.hosts : [...new Set(openings.flatMap((opening) => opening.hosts))];
      if (hosts.length < 2 || !openings.some(({ writes }) => writes) || model.volumes.areOneGroup(hosts)) return [];
      const last = openings.filter((opening) => opening.hosts.length > 0).at(-1)!;
      const names = `${hosts[0]!.host} and ${hosts.length === 2 ? hosts[1]!.host : `${hosts.length - 1} more`}`;
      return [remarkAt(model, "access", last.row, "to", cutSentence(`${names} open ${volume} and are in no group together: they destroy what is on it. Name their group, or close it to one.`))];
    }),
};
