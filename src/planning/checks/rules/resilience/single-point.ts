import type { HostPath, PlanModel } from "../../../plan/model";
import { andMore } from "../../../text";
import { remarkAt, type Remark, type Rule } from "../../finding";

export const singlePoint: Rule = {
  name: "single-point",
  family: "resilience",
  weight: "warn",
  meaning: "No switch, controller or link alone parts an array from a host of its site; hosts and arrays on one switch are told by rules of their own.",
  check: (model) => {
    // One remark a point and array, however many hosts it parts from it.
    const parted = new Map<string, { readonly path: HostPath; readonly point: string; hosts: number }>();
    for (const path of model.paths.weak()) {
      if (path.points === null || dependsOnOneSwitch(model, path)) continue;
      for (const { name } of path.points) {
        const key = `${path.array.row} ${name}`;
        const earlier = parted.get(key);
        if (earlier === undefined) parted.set(key, { path, point: name, hosts: 1 });
        else earlier.hosts += 1;
      }
    }
    return [...parted.values()].map(({ path: { array, host }, point, hosts }): Remark => {
      return remarkAt(model, "arrays", array, "array", `Loss of ${point} alone parts ${array.array} from ${andMore(host.host, hosts - 1)}. Add a way around it.`);
    });
  },
};

function dependsOnOneSwitch(model: PlanModel, { array, host }: HostPath): boolean {
  return model.paths.onlySwitchOf(array) !== null || model.paths.onlySwitchOfHost(host) !== null;
}
