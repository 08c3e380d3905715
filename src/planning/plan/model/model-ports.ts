import { foldName } from "../../text";
import type { PlanRow } from "../read";
import { groupBy } from "./group-by";
import { once } from "./once";
import type { PlanRows } from "./plan-rows";
import { socketOf, type PortName } from "./port-facts";

/** What the ports of the models of a plan are for. */
export class ModelPorts {
  private readonly byModel = once(
    () => new Map([...groupBy(this.rows.rows("modelPorts"), ({ model }) => foldName(model))].map(([model, rows]) => [model, new Map([...rows].reverse().map((row) => [socketOf(row), row]))])),
  );

  constructor(private readonly rows: PlanRows) {}

  /** Finds the row that says what a port of an array is for: that of its controller, else that of every controller; null where its model has none. */
  of(array: PlanRow<"arrays">, name: PortName): PlanRow<"modelPorts"> | null {
    const ports = this.byModel().get(foldName(array.model));
    return ports?.get(socketOf(name)) ?? ports?.get(socketOf({ ...name, controller: "" })) ?? null;
  }
}
