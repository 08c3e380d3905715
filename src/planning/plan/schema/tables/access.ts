import { choice, count, named, text } from "../column";
import { table } from "../table";

export const access = table("Access", "One row a host, or a group of hosts, that may open a volume.", {
  volume: text("Volume", "Volume that is opened.", { ...named, from: "volumes" }),
  to: text("Host or group", "Host that opens it, or a group of hosts that open it together."),
  right: choice("Right", "read and write, or read alone. Blank is read and write.", ["read and write", "read"]),
  number: count("Number", "Number under which the host sees it (LUN)."),
});
