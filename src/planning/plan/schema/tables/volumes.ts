import { choice, named, share, size, text } from "../column";
import { table } from "../table";

export const volumes = table("Volumes", "One row a volume that hosts see as a disk.", {
  volume: text("Volume", "Name of the volume.", named),
  pool: text("Pool", "Pool that it is in.", { from: "pools" }),
  size: size("Size", "Its size as hosts see it, such as 40 TB."),
  provisioning: choice("Provisioning", "full: all of its size is set aside; thin: only what is written takes space. Blank is full.", ["full", "thin"]),
  snapshotShare: share("Snapshot share", "Space kept for its snapshots, as a share of its size."),
  purpose: text("Purpose", "What it is for."),
});
