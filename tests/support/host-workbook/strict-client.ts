/** What a proxy stands for, so that the client is handed its own objects, and the proxy of each object, so that it is the same every time. */
const originals = new WeakMap<object, object>();
const proxies = new WeakMap<object, object>();

/**
 * Puts a proxy before an object of the host's client that refuses what the client would take in silence: setting a property that it does
 * not have, or cannot have set. Objects that come out of it have such a proxy too.
 */
export function strictClient<T extends object>(object: T): T {
  const known = proxies.get(object);
  if (known !== undefined) return known as T;
  const proxy = new Proxy(object, {
    get: (target, key) => {
      if (!(key in target) && typeof key === "string" && key !== "then") throw new TypeError(`${nameOf(target)} has no member called ${key}`);
      const member: unknown = Reflect.get(target, key, target);
      if (typeof member !== "function") return strictValue(member);
      return (...given: readonly unknown[]) => strictValue(Reflect.apply(member, target, given.map(original)));
    },
    set: (target, key, value) => {
      const property = propertyOf(target, key);
      if (property?.set === undefined) throw new TypeError(`${nameOf(target)} has no property called ${String(key)} that can be set`);
      return Reflect.set(target, key, value, target);
    },
  });
  originals.set(proxy, object);
  proxies.set(object, proxy);
  return proxy;
}

function strictValue(value: unknown): unknown {
  // The items of a collection, not the rows of a range.
  if (Array.isArray(value) && isClientObject(value[0])) return value.map(strictValue);
  return isClientObject(value) ? strictClient(value) : value;
}

function original(value: unknown): unknown {
  return typeof value === "object" && value !== null ? (originals.get(value) ?? value) : value;
}

function isClientObject(value: unknown): value is object {
  return typeof value === "object" && value !== null && "_objectPath" in value;
}

function nameOf(target: object): string {
  const name: unknown = Reflect.get(target, "_className");
  return typeof name === "string" ? name : "The request context";
}

function propertyOf(target: object, key: PropertyKey): PropertyDescriptor | undefined {
  for (let at: object | null = target; at !== null; at = Object.getPrototypeOf(at) as object | null) {
    const found = Object.getOwnPropertyDescriptor(at, key);
    if (found !== undefined) return found;
  }
  return undefined;
}
